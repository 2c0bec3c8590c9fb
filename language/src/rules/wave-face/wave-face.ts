import type { WavePlace } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import { replaceValue } from '../fixes.ts';
import { rule } from '../rule.ts';
import { listed, say } from '../say.ts';
import { physics } from '../standing.ts';
import { luresOnWaves } from '../waves.ts';

/** A lure runs on a crest, a back face or in a trough. */
export const waveFace = rule({
    name: 'wave-face',
    group: 'waves and speed',
    standing: physics(
        "The waves that keep pace with the boat, linear theory, from Kelvin's wake.",
        'The first crest, unless the boat has measured ones.',
    ),
    severity: 'warning',
    summary: "A lure runs on a crest, a back face or in a trough at the plan's speed.",
    settings: {},

    check(analysis, _, report) {
        for (const { line, wave, astern } of luresOnWaves(analysis)) {
            // What is written as a wave stands on its face at whatever speed.
            const { back } = line;
            if (wave.onFace || back?.kind !== 'distance') continue;
            const at = say.speed(analysis.plan.speed!);
            const faces = nearestTwo(wave.faces, astern);
            const moves = remedyFor(faces, back.distance);
            report({
                at: [back, ...(analysis.plan.speed ? [analysis.plan.speed] : [])],
                what: `${line.position.name} runs ${partInWords(wave)} at ${at}.`,
                why: 'A lure works on the front face, in clean water.',
                remedy: moves,
                fixes: faces.map((face) => moveTo(face, back.distance)),
                positions: [line],
                together: {
                    kind: 'speed',
                    name: line.position.name,
                    what: (names) => `${names} are off their wave faces at ${at}.`,
                    remedy: 'Move each to a face of this speed, or tow at the speed that they were laid out for.',
                    fixes: [],
                    each: {
                        at: back,
                        what: `${line.position.name} runs ${partInWords(wave)}. ${moves}`,
                    },
                },
            });
        }
    },
});

type Faces = WavePlace['faces'];

function partInWords({ part, wave }: WavePlace): string {
    if (part === 'trough') return `in the trough at wave ${wave}`;
    return part === 'crest' ? `on the crest of wave ${wave}` : `on the back of wave ${wave}`;
}

function nearestTwo(faces: Faces, astern: number): Faces {
    const off = ({ astern: ideal }: Faces[number]) => Math.abs(ideal - astern);
    const nearest = [...faces].sort((a, b) => off(a) - off(b)).slice(0, 2);
    return nearest.sort((a, b) => a.astern - b.astern);
}

function remedyFor(faces: Faces, like: Measure): string {
    const ways = faces.map(({ wave, astern }) => `${say.length(astern, like)} (wave ${wave})`);
    return `Move it to ${listed(ways, 'or')}.`;
}

function moveTo({ wave, astern }: Faces[number], distance: Measure) {
    return replaceValue((text) => `Move it to ${text}, on wave ${wave}`, distance, astern);
}
