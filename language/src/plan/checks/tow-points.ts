import { nearest } from '../../units/nearest.ts';
import type { Finding } from '../finding.ts';
import type { Boat, From, SpreadLine } from '../model.ts';
import type { Said } from '../origin.ts';
import { shorten } from '../wording.ts';
import { ownPlace } from './own.ts';
import { instead, problem } from './problem.ts';
import { choices } from './words.ts';

/** A line that is said to be towed from what the boat does not have. */
export function checkTowPoint(line: SpreadLine, boat: Said<Boat>, uri: string): Finding[] {
    const { from } = line;
    if (!from || from.origin.voice === 'default') return [];
    const missing = missingFrom(from, line, boat.value);
    const at = missing && ownPlace(uri, from.origin, boat.origin);
    if (!at) return [];
    const { near, what, remedy } = missing;
    const atPoint = at.start === from.origin.place.start && at.uri === from.origin.place.uri;
    return [
        problem('unknown-name', at, {
            what,
            why: `So nobody can tell where the line of the ${line.position.name} runs.`,
            remedy,
            related: atPoint
                ? [{ at: boat.value.origin.place, what: 'The boat is described here.' }]
                : [{ at: from.origin.place, what: 'The tow point is said here.' }],
            fixes: near && atPoint ? [instead(at, near)] : [],
        }),
    ];
}

interface Missing {
    readonly what: string;
    readonly remedy: string;
    readonly near?: string | undefined;
}

function missingFrom(from: From, { position }: SpreadLine, boat: Boat): Missing | undefined {
    const { title } = boat;
    switch (from.kind) {
        case 'rod tip':
            return undefined;
        case 'flat clip':
            if (boat.flatClip) return undefined;
            return {
                what: `${title} has no flat clip.`,
                remedy: 'Add `flat clip { ahead …  out …  up … }` to the boat, or choose another tow point.',
            };
        case 'halyard': {
            const central = position.side === 'centre';
            const poles = central ? boat.centreRigger : boat.outriggers;
            if (poles?.refused?.halyards || (poles && poles.halyards.length >= from.number)) return undefined;
            const name = central ? 'centre rigger' : 'outriggers';
            if (!poles || poles.halyards.length === 0) {
                return {
                    what: `${title} has no ${poles ? `halyards on her ${name}` : name}, so there is no halyard ${from.number}.`,
                    remedy: `Describe her \`${name}\` with their \`halyards\`, or choose another tow point.`,
                };
            }
            const count = poles.halyards.length;
            const numbers = poles.halyards.map((_, index) => `${index + 1}`);
            return {
                what: `${title} has ${count === 1 ? 'one halyard' : `${count} halyards`} on her ${name}, and no halyard ${from.number}.`,
                remedy: `Use halyard ${choices(numbers)}, or add it to the \`halyards\` of the boat.`,
            };
        }
        case 'point': {
            const known = [...boat.points.keys(), ...boat.positions.keys()];
            if (known.includes(from.name)) return undefined;
            const near = nearest(from.name, known);
            return {
                what: `${title} has no point called \`${shorten(from.name)}\`.`,
                remedy: near
                    ? `Did you mean \`${near}\`?`
                    : known.length > 0
                      ? `It can be ${choices(known)}, or add \`point ${shorten(from.name)} { … }\` to the boat.`
                      : `Add \`point ${shorten(from.name)} { ahead …  out …  up … }\` to the boat.`,
                near,
            };
        }
    }
}
