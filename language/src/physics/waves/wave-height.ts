import { SEA_WATER_DENSITY, STANDARD_GRAVITY } from '../constants.ts';

/** What of a hull makes waves. */
export interface Hull {
    /** Length on the waterline, m. */
    readonly waterline: number;
    /** m */
    readonly beam: number;
    /** Mass afloat, kg; estimated from length and beam when it is not known. */
    readonly displacement?: number;
}

/**
 * Height, crest to trough, of a boat's own transverse wave at a distance astern: a rough estimate, good for telling
 * a wave of two hands from one of half a metre, not for more.
 *
 * The energy of a wave crest as wide as the wedge, ¼·ρ·g·a² for each metre of width, is what wave-making resistance
 * leaves behind (Lamb, Hydrodynamics, art. 249): a = √(4·R/(ρ·g·width)). The resistance is taken as a share of the
 * weight that grows with the fourth power of the Froude number to 6 % at 0.5 and stays there (estimate).
 *
 * @param speed   through the water, m/s, > 0
 * @param astern  m, > 0
 * @returns m, or `undefined` when a figure is not positive
 */
export function boatWaveHeight(
    hull: Hull,
    speed: number,
    astern: number,
    gravity = STANDARD_GRAVITY,
): number | undefined {
    const mass = hull.displacement ?? displacementEstimate(hull.waterline, hull.beam);
    if (!(mass > 0 && hull.waterline > 0 && speed > 0 && astern > 0)) return undefined;
    const froude = speed / Math.sqrt(gravity * hull.waterline);
    const resistance = 0.06 * Math.min(1, froude / 0.5) ** 4 * mass * gravity;
    const width = (2 * astern) / Math.sqrt(8);
    return 2 * Math.sqrt((4 * resistance) / (SEA_WATER_DENSITY * gravity * width));
}

/**
 * Mass of an ordinary sport-fishing hull from its length and beam, kg: block coefficient 0.42 and a draught of 0.18
 * beam (estimate).
 */
export function displacementEstimate(waterline: number, beam: number): number {
    return SEA_WATER_DENSITY * 0.42 * waterline * beam * (0.18 * beam);
}
