import type { Finding } from '../plan/finding.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { keptStretches } from './kept.ts';

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
 * What edits left alone, at its new place. What an edit touched is dropped: it may no longer be true, and the next
 * run will say. Several edits at once, such as a formatter's, are told apart by the lines between them.
 */
export function followEdit(late: readonly LateFinding[], before: string, after: string): LateFinding[] {
    if (before === after || late.length === 0) return [...late];
    const kept = keptStretches(before, after);
    return late.flatMap((one) => {
        const stretch = kept.find(({ start, end }) => start <= one.start && one.end <= end);
        return stretch ? [{ ...one, start: one.start + stretch.by, end: one.end + stretch.by }] : [];
    });
}
