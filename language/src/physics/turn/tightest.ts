import type { Steps } from '../steps.ts';

/** The tightest clean turn of one kind, with what ends it. */
export type Tightest<Limit> =
    | {
          readonly outcome: 'limited';
          /** This radius and every wider one looked at is clean, m. */
          readonly radius: number;
          /** What goes wrong in a turn just tighter. */
          readonly limit: Limit;
          /** Tighter radii that are clean again, m, widest first; none as a rule. */
          readonly cleanAgain: readonly { readonly from: number; readonly to: number }[];
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
 * The tightest clean turn. Turns are not taken to get worse all the way as they tighten, so the whole range is
 * looked at and the answer is the end of the clean turns that begin with the widest.
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
    const faults: (Fault | undefined)[] = [];
    for (const radius of radii) {
        faults.push(fault(radius));
        yield;
    }

    /** The clean and the faulty end of the last metre between two radii. */
    const edge = function* (clean: number, faulty: number, known: Fault) {
        let [good, bad, wrong] = [clean, faulty, known];
        for (let halving = 0; halving < MOST_HALVINGS; halving++) {
            const middle = Math.round((good + bad) / 2 / refine) * refine;
            if (!between(middle, good, bad)) break;
            const found = fault(middle);
            if (found === undefined) good = middle;
            else [bad, wrong] = [middle, found];
            yield;
        }
        // Where the clean end is none of the multiples it lies within one of the faulty end: the next one is clean too.
        const whole =
            (good > bad ? Math.ceil : Math.floor)(good / refine - Math.sign(good - bad) * 1e-9) * refine;
        return { clean: Math.min(widest, Math.max(tightest, whole)), limit: () => limit(bad, wrong) };
    };

    const first = faults.findIndex((found) => found !== undefined);
    if (first < 0) return { outcome: 'free', radius: tightest };
    if (first === 0) return { outcome: 'never', radius: widest, limit: limit(widest, faults[0]!) };
    const end = yield* edge(radii[first - 1]!, radii[first]!, faults[first]!);
    const cleanAgain: { from: number; to: number }[] = [];
    for (let step = first + 1; step < radii.length; step++) {
        if (faults[step] !== undefined) continue;
        const opening = faults[step - 1];
        if (opening !== undefined) {
            const { clean } = yield* edge(radii[step]!, radii[step - 1]!, opening);
            cleanAgain.push({ from: clean, to: tightest });
        }
        const closing = faults[step + 1];
        const again = cleanAgain[cleanAgain.length - 1];
        if (closing !== undefined && again) {
            const { clean } = yield* edge(radii[step]!, radii[step + 1]!, closing);
            cleanAgain[cleanAgain.length - 1] = { from: again.from, to: clean };
        }
    }
    return { outcome: 'limited', radius: end.clean, limit: end.limit(), cleanAgain };
}

/** Whether a number lies strictly between two others, however they are ordered. */
function between(number: number, one: number, other: number): boolean {
    return Math.min(one, other) < number && number < Math.max(one, other);
}
