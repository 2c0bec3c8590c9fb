import type { Steps } from '../steps.ts';
import { CONTACT_DISTANCE } from '../sway.ts';
import { type Envelope, envelopeInSteps, type JudgedLine, type Looked } from './envelope.ts';

/** What the tightest clean turns to one side hang on. */
export interface Sensitivity {
    /** As it is, found as finely as the changes are. */
    readonly now: Envelope;
    /** One thing changed at a time, the others held; changes that leave a figure's range are left out. */
    readonly changes: readonly Changed[];
}

export interface Changed {
    readonly change: Change;
    readonly envelope: Envelope;
}

/** Lines are named by their place in the list. */
export type Change =
    | { readonly what: 'sway' | 'contact' | 'speed'; readonly by: number }
    /** One line further out, or in. */
    | { readonly what: 'layback'; readonly line: number; readonly by: number }
    /** One line left at home; the limits of its envelope still name the others by their place in the whole list. */
    | { readonly what: 'without'; readonly line: number }
    /** Two lines trade distances astern. */
    | { readonly what: 'traded'; readonly lines: readonly [number, number] };

/** Changes that a day brings: 1°, 0.1 m, half a knot: estimate; and a metre of distance. */
export const USUAL_STEPS = { sway: Math.PI / 180, contact: 0.1, speed: 0.257, layback: 1 };

/** A metre of distance moves some turns by less than a metre, m. */
const REFINE = 0.1;

/**
 * What the tightest clean turns hang on: each figure a step down and a step up, every line left at home, every two
 * trading distances. As many envelopes as changes, so for when it is asked for, not for every keystroke.
 *
 * @returns `undefined` for figures out of their range; step by step, a turn at a time
 */
export function* sensitivityInSteps(
    lines: readonly JudgedLine[],
    looked: Looked,
    steps = USUAL_STEPS,
): Steps<Sensitivity | undefined> {
    const refined = { refine: REFINE, ...looked };
    const now = yield* envelopeInSteps(lines, refined);
    if (!now) return undefined;
    const changes: Changed[] = [];
    for (const change of changesOf(lines.length, steps)) {
        const after = linesAfter(lines, change);
        const envelope = after && (yield* envelopeInSteps(after, lookedAfter(refined, change)));
        if (!envelope) continue;
        changes.push({
            change,
            envelope: change.what === 'without' ? renamed(envelope, change.line) : envelope,
        });
    }
    return { now, changes };
}

function changesOf(count: number, steps: typeof USUAL_STEPS): Change[] {
    const both = (step: number) => [-step, step];
    const all = Array.from({ length: count }, (_, line) => line);
    return [
        ...all.flatMap((line) => both(steps.layback).map((by): Change => ({ what: 'layback', line, by }))),
        ...all.map((line): Change => ({ what: 'without', line })),
        ...all.flatMap((one) =>
            all
                .filter((other) => other > one)
                .map((other): Change => ({ what: 'traded', lines: [one, other] })),
        ),
        ...(['speed', 'sway', 'contact'] as const).flatMap((what) =>
            both(steps[what]).map((by): Change => ({ what, by })),
        ),
    ];
}

/** `undefined` where nothing would be left. */
function linesAfter(lines: readonly JudgedLine[], change: Change): readonly JudgedLine[] | undefined {
    switch (change.what) {
        case 'sway':
            return lines.map((line) => ({ ...line, sway: line.sway + change.by }));
        case 'layback':
            return lines.map((line, index) =>
                index === change.line ? { ...line, layback: line.layback + change.by } : line,
            );
        case 'without':
            return lines.length > 1 ? lines.filter((_, index) => index !== change.line) : undefined;
        case 'traded':
            return traded(lines, change.lines);
        default:
            return lines;
    }
}

/** Behind the transom, not behind the tow point: that is what a crew trades. */
function traded(lines: readonly JudgedLine[], [a, b]: readonly [number, number]): readonly JudgedLine[] {
    const astern = ({ layback, towPoint: [ahead] }: JudgedLine) => layback - ahead;
    const [one, other] = [lines[a]!, lines[b]!];
    const at = (line: JudgedLine, distance: number) => ({ ...line, layback: distance + line.towPoint[0] });
    return lines.map((line, index) =>
        index === a ? at(line, astern(other)) : index === b ? at(line, astern(one)) : line,
    );
}

function lookedAfter(looked: Looked, change: Change): Looked {
    if (change.what === 'contact')
        return { ...looked, contact: (looked.contact ?? CONTACT_DISTANCE) + change.by };
    if (change.what !== 'speed') return looked;
    const { turnSpeed } = looked;
    return {
        ...looked,
        speed: looked.speed + change.by,
        ...(turnSpeed !== undefined && { turnSpeed: turnSpeed + change.by }),
    };
}

/** Places in a list with one line less become those in the whole one. */
function renamed(envelope: Envelope, without: number): Envelope {
    const named = (part: Envelope['noFoul']): Envelope['noFoul'] =>
        part.outcome === 'free'
            ? part
            : {
                  ...part,
                  limit: {
                      ...part.limit,
                      lines: part.limit.lines.map((line) => (line < without ? line : line + 1)),
                  },
              };
    return { ...envelope, noFoul: named(envelope.noFoul), allWorking: named(envelope.allWorking) };
}
