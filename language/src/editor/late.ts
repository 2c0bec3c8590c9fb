import type { Finding } from '../plan/finding.ts';
import type { CheckedSheet } from '../rules/check.ts';

/**
 * Something about plans that takes too long for a keystroke. It runs when nobody types, gives way whenever it
 * pauses, and its findings join those of the first look.
 */
export interface LateAnalysis {
    /** Stands behind the source of its findings: `layback (turn)`. */
    readonly name: string;
    /**
     * @param pause  to be awaited every few milliseconds; it throws when the file has changed meanwhile
     */
    analyse(sheet: CheckedSheet, pause: () => Promise<void>): Promise<LateResult>;
}

export interface LateResult {
    readonly findings: readonly Finding[];
    /** One line about a plan, for a lens above it: `Tightest clean turn 38 m`. */
    readonly remarks?: readonly Remark[];
}

export interface Remark {
    readonly plan: string;
    readonly title: string;
}

/** A late finding with the text that it was found in, so that it can be followed through edits. */
export interface LateFinding {
    readonly finding: Finding;
    /** Which analysis found it. */
    readonly by: string;
    readonly start: number;
    readonly end: number;
}

/**
 * The stretches that an edit left alone, at their new places. What the edit touched is dropped: it may no longer
 * be true, and the next run will say.
 */
export function followEdit(late: readonly LateFinding[], before: string, after: string): LateFinding[] {
    if (before === after) return [...late];
    const shorter = Math.min(before.length, after.length);
    let head = 0;
    while (head < shorter && before[head] === after[head]) head++;
    let tail = 0;
    while (tail < shorter - head && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
    const by = after.length - before.length;
    return late.flatMap((one) => {
        if (one.end <= head) return [one];
        if (one.start < before.length - tail) return [];
        return [{ ...one, start: one.start + by, end: one.end + by }];
    });
}
