import { isPositive } from './sound.ts';

/** One piece between rod and hook: line, knot, double, swivel, crimp, leader. */
export interface Link {
    readonly name: string;
    /** Strength of the piece, or of what it joins, N. */
    readonly rated: number;
    /** Share of it that holds, above 0 up to 1; the whole by default. */
    readonly fraction?: number;
}

export type WeakestLink<L extends Link = Link> =
    | {
          readonly kind: 'weakest';
          readonly link: L;
          readonly fraction: number;
          /** N */
          readonly holds: number;
          /** Every link with what it holds, the weakest first. */
          readonly ranked: readonly { readonly link: L; readonly holds: number }[];
      }
    | { readonly kind: 'no-links' }
    | { readonly kind: 'bad-link'; readonly link: L; readonly reason: string };

/** How far a shock loads the links above the mean pull: a load put on suddenly doubles (undamped spring, textbook). */
export const SHOCK = 2;

/** Finds where the tackle parts first. Of two that hold alike, the one nearer the start of the list. */
export function weakestLink<L extends Link>(links: readonly L[]): WeakestLink<L> {
    const ranked: { link: L; holds: number }[] = [];
    for (const link of links) {
        const { rated, fraction = 1 } = link;
        if (!isPositive(rated)) return { kind: 'bad-link', link, reason: 'Its strength is not above zero.' };
        if (!isPositive(fraction) || fraction > 1) {
            return { kind: 'bad-link', link, reason: 'Its share is not above 0 and at most 1.' };
        }
        ranked.push({ link, holds: rated * fraction });
    }
    ranked.sort((a, b) => a.holds - b.holds);
    const [first] = ranked;
    if (!first) return { kind: 'no-links' };
    return {
        kind: 'weakest',
        link: first.link,
        fraction: first.link.fraction ?? 1,
        holds: first.holds,
        ranked,
    };
}
