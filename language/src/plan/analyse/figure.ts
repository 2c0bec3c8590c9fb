import type { Figure, Known, Silent } from '../figures.ts';
import type { Refused } from '../model/defined.ts';
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

/** Without a property that a figure needs: because it was written and cannot be used, or else because it is not there. */
export function without(of: { readonly refused?: Refused }, property: string, otherwise: string): Silent {
    const written = of.refused?.[property];
    return silent(written === undefined ? otherwise : `\`${written}\` cannot be used.`);
}

export function withoutSpeed(plan: { readonly refused?: Refused }): Silent {
    return without(plan, 'speed', 'The plan has no `speed`.');
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
