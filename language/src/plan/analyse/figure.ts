import type { Figure, Known, Silent } from '../figures.ts';
import type { Standing } from '../origin.ts';

export function known<T>(
    value: T,
    standing: Standing = 'computed',
    leaning: readonly string[] = [],
): Known<T> {
    return { known: true, value, standing: leaning.length > 0 ? 'estimated' : standing, leaning };
}

export function silent(reason: string): Silent {
    return { known: false, reason };
}

/** A figure from a figure: silent with the same reason, or as good as what it comes from. */
export function from<A, B>(figure: Figure<A>, compute: (value: A) => B): Figure<B> {
    return figure.known ? { ...figure, value: compute(figure.value) } : figure;
}

/** The estimates that several figures lean on, each once. */
export function leaningOf(...figures: readonly Figure<unknown>[]): readonly string[] {
    let leaning: readonly string[] = none;
    for (const figure of figures) {
        if (!figure.known || figure.leaning.length === 0) continue;
        leaning = leaning.length === 0 ? figure.leaning : [...new Set([...leaning, ...figure.leaning])];
    }
    return leaning;
}

/** Most figures lean on nothing. */
const none: readonly string[] = [];
