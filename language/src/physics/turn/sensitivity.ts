import { CONTACT_DISTANCE } from '../sway.ts';
import { type Envelope, envelope, type JudgedLine, type Looked } from './envelope.ts';

/** One thing changed, and the tightest clean turns after it. */
export interface Sensitivity {
    readonly change: Change;
    readonly envelope: Envelope;
}

export type Change =
    | { readonly what: 'sway'; readonly by: number }
    | { readonly what: 'contact'; readonly by: number }
    | { readonly what: 'speed'; readonly by: number }
    /** One line further out or in, named by its place in the list. */
    | { readonly what: 'layback'; readonly line: number; readonly by: number };

/** Changes that a day brings: 1°, 0.1 m, half a knot, 2 m: estimate. */
export const USUAL_STEPS = { sway: Math.PI / 180, contact: 0.1, speed: 0.257, layback: 2 };

/**
 * What the tightest clean turns hang on: each figure a step down and a step up, the others held. As many envelopes as
 * changes, so for when it is asked for, not for every keystroke.
 *
 * @returns one entry a change, in order; changes that leave a figure's range are left out
 */
export function sensitivity(
    lines: readonly JudgedLine[],
    looked: Looked,
    steps = USUAL_STEPS,
): Sensitivity[] {
    const both = (step: number) => [-step, step];
    const changes: Change[] = [
        ...both(steps.sway).map((by): Change => ({ what: 'sway', by })),
        ...both(steps.contact).map((by): Change => ({ what: 'contact', by })),
        ...both(steps.speed).map((by): Change => ({ what: 'speed', by })),
        ...lines.flatMap((_, line) =>
            both(steps.layback).map((by): Change => ({ what: 'layback', line, by })),
        ),
    ];
    return changes.flatMap((change) => {
        const changed = envelope(linesAfter(lines, change), lookedAfter(looked, change));
        return changed ? [{ change, envelope: changed }] : [];
    });
}

function linesAfter(lines: readonly JudgedLine[], change: Change): readonly JudgedLine[] {
    if (change.what === 'sway') return lines.map((line) => ({ ...line, sway: line.sway + change.by }));
    if (change.what !== 'layback') return lines;
    return lines.map((line, index) =>
        index === change.line ? { ...line, layback: line.layback + change.by } : line,
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
