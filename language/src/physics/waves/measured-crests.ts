import { STANDARD_GRAVITY } from '../constants.ts';
import { USUAL_HABIT, type WaveHabit } from './train.ts';
import { wavelength } from './wavelength.ts';

/** A crest as a crew found it, on the centreline. */
export interface MeasuredCrest {
    /** Counted from 1 at the transom. */
    readonly number: number;
    /** m astern of the transom. */
    readonly astern: number;
}

export interface FittedHabit {
    readonly habit: WaveHabit;
    /** Of crest 1 at the measured speed, m. */
    readonly firstCrest: number;
    /** Crest to crest at the measured speed, m: the fit's, or theory's for a single crest. */
    readonly spacing: number;
    /** Fitted spacing over theory's, less one. Zero for a single crest. */
    readonly offTheory: number;
    /** Whether the spacing is so far off that the speed was probably not through the water. */
    readonly doubtful: boolean;
    /** Root mean square of what the fit leaves over, m. */
    readonly residual: number;
}

/** A spacing further off theory than this is doubtful: estimate. */
export const DOUBTFUL_SPACING = 0.15;

/**
 * A boat's wave habit from crests measured at one speed.
 *
 * @param crests  one crest, or several with at least two different numbers
 * @param speed   through the water, m/s, > 0
 * @returns `undefined` without crests, where no transverse wave keeps pace, or for crests that fit no train (one
 * number measured at several distances is averaged)
 *
 * One crest places the train, several are fitted by least squares for first crest and spacing.
 */
export function habitFromCrests(
    crests: readonly MeasuredCrest[],
    speed: number,
    depth = Number.POSITIVE_INFINITY,
    gravity = STANDARD_GRAVITY,
): FittedHabit | undefined {
    const theory = wavelength(speed, depth, gravity);
    const sound = crests.every((crest) => Number.isInteger(crest.number) && Number.isFinite(crest.astern));
    if (theory === undefined || crests.length === 0 || !sound) return undefined;

    const meanIndex = mean(crests.map((crest) => crest.number - 1));
    const meanAstern = mean(crests.map((crest) => crest.astern));
    let spread = 0;
    let slant = 0;
    for (const { number, astern } of crests) {
        spread += (number - 1 - meanIndex) ** 2;
        slant += (number - 1 - meanIndex) * (astern - meanAstern);
    }
    const spacing = spread === 0 ? theory * USUAL_HABIT.spacingShare : slant / spread;
    if (!(spacing > 0)) return undefined;
    const firstCrest = meanAstern - spacing * meanIndex;
    const leftOver = crests.map(({ number, astern }) => (astern - firstCrest - (number - 1) * spacing) ** 2);
    const offTheory = spacing / theory - 1;
    return {
        habit: { firstCrestShare: firstCrest / spacing, spacingShare: spacing / theory },
        firstCrest,
        spacing,
        offTheory,
        doubtful: Math.abs(offTheory) > DOUBTFUL_SPACING,
        residual: Math.sqrt(mean(leftOver)),
    };
}

function mean(figures: readonly number[]): number {
    return figures.reduce((sum, figure) => sum + figure, 0) / figures.length;
}
