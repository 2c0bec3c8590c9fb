import { STANDARD_GRAVITY } from '../constants.ts';
import { asternAt, centreOf, crestDistance } from './crest.ts';
import { USUAL_HABIT, type WaveHabit, type WaveTrain } from './train.ts';
import { speedFor } from './wavelength.ts';

/** Where on a wave a lure runs, in the order met going astern. Thirds are of the height from trough to crest. */
export type WavePart = 'trough' | 'front, lower' | 'front, middle' | 'front, upper' | 'crest' | 'back';

/** A lure's place in the wave train. */
export interface Ride {
    /**
     * Counted from 1. A wave runs from the trough nearer the boat over its front face and crest down its back; 0 or
     * less is ahead of the first trough.
     */
    readonly wave: number;
    readonly part: WavePart;
    /** How far before (nearer the boat than) the wave's crest, as a share of the wavelength; negative behind it. */
    readonly beforeCrest: number;
    /** The wave whose ideal point is nearest, at least 1. */
    readonly idealWave: number;
    /** How far to let the lure back (negative: take it in) to reach that point, m. */
    readonly toIdeal: number;
}

/** Where a lure works best, as a share of the wavelength before the crest: mid lower third of the front face. */
export const IDEAL_BEFORE_CREST = 0.4;

/**
 * Within this share of the wavelength of a crest a lure counts as on it; so it does within this share ahead of a
 * trough, while behind the trough the lower third of the front face begins at once: estimate.
 */
export const CREST_BAND = 0.05;

/** Below this share before the crest the surface is in the upper third by height; cos(2π·share) = 1/3. */
const UPPER_THIRD = Math.acos(1 / 3) / (2 * Math.PI);
const MIDDLE_THIRD = Math.acos(-1 / 3) / (2 * Math.PI);

/**
 * Where a lure set "back wave n" runs.
 *
 * @param n             counted from 1
 * @param lateral       the lure's own offset from the centreline, m
 * @param beforeCrest   share of a wave before the crest
 * @returns m astern of the transom, or `undefined` where that wave does not reach so far out or would be ahead of
 * the transom
 *
 * The share is of the wave where the lure runs: off the centreline the crests lie closer together along the course.
 */
export function backWave(
    train: WaveTrain,
    n: number,
    lateral = 0,
    beforeCrest = IDEAL_BEFORE_CREST,
): number | undefined {
    const centre = crestDistance(train, n) - beforeCrest * train.length;
    return centre > 0 ? asternAt(centre, lateral) : undefined;
}

/**
 * Where in the train a lure runs.
 *
 * @param astern   m astern of the transom, > 0
 * @param lateral  m
 * @returns `undefined` outside the wedge
 */
export function rideAt(train: WaveTrain, astern: number, lateral = 0): Ride | undefined {
    const centre = centreOf(astern, lateral);
    if (centre === undefined) return undefined;
    // Crest n is at n, the trough before it half a wave nearer; the trough's band belongs to the wave behind it.
    const phase = (centre - train.firstCrest) / train.length + 1;
    const wave = Math.floor(phase + 0.5 + CREST_BAND);
    const beforeCrest = wave - phase;
    const nearest = nearestIdeal(train, Math.max(1, Math.round(phase + IDEAL_BEFORE_CREST)), lateral);
    if (nearest === undefined) return undefined;
    const { idealWave, ideal } = nearest;
    return { wave, part: partOf(beforeCrest), beforeCrest, idealWave, toIdeal: ideal - astern };
}

/** The nearest wave's ideal point may be ahead of the transom or beyond that wave's end; the next ones are not. */
function nearestIdeal(train: WaveTrain, wave: number, lateral: number) {
    for (let idealWave = wave; idealWave < wave + 3; idealWave++) {
        const ideal = backWave(train, idealWave, lateral);
        if (ideal !== undefined) return { idealWave, ideal };
    }
    return undefined;
}

function partOf(beforeCrest: number): WavePart {
    if (beforeCrest > 0.5) return 'trough';
    if (beforeCrest > MIDDLE_THIRD) return 'front, lower';
    if (beforeCrest > UPPER_THIRD) return 'front, middle';
    if (beforeCrest > CREST_BAND) return 'front, upper';
    if (beforeCrest >= -CREST_BAND) return 'crest';
    return 'back';
}

/**
 * The speeds, through the water, at which a lure that stays where it is runs on the front face of wave n.
 *
 * @param n       counted from 1
 * @returns m/s from and to (to is Infinity where no speed takes the lure off the face), or `undefined` outside the
 * wedge or where no speed puts it there
 *
 * The train stretches with speed and the first crest with it, so the wavelengths at which the trough and the crest
 * reach the lure give the speeds in closed form.
 */
export function speedBand(
    n: number,
    astern: number,
    lateral = 0,
    habit: WaveHabit = USUAL_HABIT,
    depth = Number.POSITIVE_INFINITY,
    gravity = STANDARD_GRAVITY,
): { from: number; to: number } | undefined {
    const centre = centreOf(astern, lateral);
    const crestAt = n - 1 + habit.firstCrestShare;
    if (centre === undefined || !(crestAt > 0) || !(habit.spacingShare > 0)) return undefined;
    const speedPlacing = (share: number) =>
        share > 0
            ? speedFor(centre / (share * habit.spacingShare), depth, gravity)
            : Math.sqrt(gravity * depth);
    return { from: speedPlacing(crestAt), to: speedPlacing(crestAt - 0.5) };
}
