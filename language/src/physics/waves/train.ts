import { STANDARD_GRAVITY } from '../constants.ts';
import { wavelength } from './wavelength.ts';

/**
 * The transverse waves behind a boat. Crest n, counted from 1, lies on the centreline at
 * firstCrest + (n − 1)·length astern of the transom.
 */
export interface WaveTrain {
    /** Crest to crest on the centreline, m. */
    readonly length: number;
    /** Of crest 1, m astern of the transom. */
    readonly firstCrest: number;
}

/** What a crew knows of its own boat's waves. Both keep their value over the range of trolling speeds. */
export interface WaveHabit {
    /** First crest as a share of the wavelength. */
    readonly firstCrestShare: number;
    /** Spacing of the crests as a share of the theory's. */
    readonly spacingShare: number;
}

/** A hollow behind the transom, then a crest: common practice, no source. The spacing is theory. */
export const USUAL_HABIT: WaveHabit = { firstCrestShare: 0.5, spacingShare: 1 };

/**
 * The wave train at a speed.
 *
 * @param speed    through the water, m/s, > 0
 * @param habit    see `USUAL_HABIT`, `habitFromCrests`
 * @param depth    m, > 0; Infinity for deep water
 * @param gravity  m/s²
 * @returns `undefined` where no transverse wave keeps pace with the boat
 *
 * Shallow water only lengthens the waves here: crests keep their deep-water shape, though near the critical speed
 * the wedge opens and they straighten.
 */
export function waveTrain(
    speed: number,
    habit: WaveHabit = USUAL_HABIT,
    depth = Number.POSITIVE_INFINITY,
    gravity = STANDARD_GRAVITY,
): WaveTrain | undefined {
    const theory = wavelength(speed, depth, gravity);
    if (theory === undefined || !(habit.spacingShare > 0) || !Number.isFinite(habit.firstCrestShare))
        return undefined;
    const length = theory * habit.spacingShare;
    return { length, firstCrest: habit.firstCrestShare * length };
}
