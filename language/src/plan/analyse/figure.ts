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
export function leaningOf(...figures: readonly Figure<unknown>[]): string[] {
    return [...new Set(figures.flatMap((figure) => (figure.known ? figure.leaning : [])))];
}
