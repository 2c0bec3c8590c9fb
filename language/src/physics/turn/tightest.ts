import type { Steps } from '../steps.ts';

/** The tightest clean turn of one kind, with what ends it. */
export type Tightest<Limit> =
    | {
          readonly outcome: 'limited';
          /** This radius and every wider one looked at is clean, m. */
          readonly radius: number;
          /** What goes wrong in a turn just tighter. */
          readonly limit: Limit;
      }
    /** Clean down to the tightest radius looked at. */
    | { readonly outcome: 'free'; readonly radius: number }
    /** Not clean even in the widest turn looked at. */
    | { readonly outcome: 'never'; readonly radius: number; readonly limit: Limit };

/** Radii of turns, m. */
export interface Range {
    readonly tightest: number;
    readonly widest: number;
}

/** Each radius looked at is tighter than the one before by this factor; what is clean only between two is missed. */
const SCAN = 1.1;

/** No more radii than this are scanned: in a wider range they lie further apart. */
const MOST_RADII = 100;

/** A limit is found to this, m. */
export const REFINE = 1;

/** Enough for a metre out of any range, and an end where numbers lie further apart than that. */
const MOST_HALVINGS = 60;

/**
 * The tightest clean turn. Turns are not taken to get worse all the way as they tighten, so they are looked at one by
 * one from the widest on, and the answer is the end of the clean turns that begin with it. Whether a turn tighter than
 * the first fault is clean again is not looked at: a helm gets there through the fault.
 *
 * @param fault   what is wrong with a turn of a radius, if anything
 * @param limit   the same told in full, asked once for the turn just tighter than the answer
 * @param refine  the answer is found to this, m, and is a whole multiple of it: a figure that reads no finer than it is
 * @returns step by step, a radius at a time
 */
export function* tightestInSteps<Fault, Limit>(
    { tightest, widest }: Range,
    fault: (radius: number) => Fault | undefined,
    limit: (radius: number, fault: Fault) => Limit,
    refine = REFINE,
): Steps<Tightest<Limit>> {
    const wanted = Math.ceil(Math.log(widest / tightest) / Math.log(SCAN));
    const steps = Math.min(MOST_RADII, Math.max(1, wanted));
    const radii = Array.from(
        { length: steps + 1 },
        (_, step) => widest * (tightest / widest) ** (step / steps),
    );
    let clean: number | undefined;
    let faulty = widest;
    let wrong: Fault | undefined;
    for (const radius of radii) {
        [faulty, wrong] = [radius, fault(radius)];
        yield;
        if (wrong !== undefined) break;
        clean = radius;
    }
    if (wrong === undefined) return { outcome: 'free', radius: tightest };
    if (clean === undefined) return { outcome: 'never', radius: widest, limit: limit(widest, wrong) };
    for (let halving = 0; halving < MOST_HALVINGS; halving++) {
        const middle: number = Math.round((clean + faulty) / 2 / refine) * refine;
        if (!(faulty < middle && middle < clean)) break;
        const found = fault(middle);
        if (found === undefined) clean = middle;
        else [faulty, wrong] = [middle, found];
        yield;
    }
    // Where the clean end is none of the multiples it lies within one of the faulty end: the next one is clean too.
    const whole = Math.ceil(clean / refine - 1e-9) * refine;
    return {
        outcome: 'limited',
        radius: Math.min(widest, Math.max(tightest, whole)),
        limit: limit(faulty, wrong),
    };
}
