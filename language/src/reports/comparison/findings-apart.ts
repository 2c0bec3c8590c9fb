import type { Finding } from '../../plan/finding.ts';

/** Findings that only one version has. */
export interface FindingsApart {
    readonly came: readonly Finding[];
    readonly went: readonly Finding[];
}

/**
 * A finding of a plan is the same one while it is of the same rule and about the same positions, wherever it stands
 * and whatever its numbers have become; one of a file while it says the same.
 */
export function findingsApart(before: readonly Finding[], after: readonly Finding[]): FindingsApart {
    return { came: without(after, before), went: without(before, after) };
}

function without(these: readonly Finding[], those: readonly Finding[]): Finding[] {
    const left = new Map<string, number>();
    for (const finding of those) left.set(keyOf(finding), (left.get(keyOf(finding)) ?? 0) + 1);
    return these.filter((finding) => {
        const key = keyOf(finding);
        const times = left.get(key) ?? 0;
        left.set(key, times - 1);
        return times <= 0;
    });
}

function keyOf({ rule, plan, positions, what }: Finding): string {
    return JSON.stringify([rule, plan === undefined ? what : [...positions].sort()]);
}
