import type { Standing } from './coefficients.ts';
import { SEA_WATER_DENSITY, STANDARD_GRAVITY } from './constants.ts';
import { isNotNegative, isPositive, isSound } from './sound.ts';

/** What is known of a lure's weight. */
export interface LureWeightSource {
    /** kg */
    readonly mass: number;
    /** As weighed under water, kg; negative when it floats. Goes before the displaced volume. */
    readonly submerged?: number;
    /** m³ */
    readonly displaced?: number;
}

export type LureWeight =
    | {
          readonly kind: 'weight';
          /** N */
          readonly inAir: number;
          /** N; negative when the lure floats. */
          readonly inWater: number;
          /** m³ */
          readonly displaced: number;
          readonly standing: Standing;
      }
    | { readonly kind: 'unknown'; readonly reason: string };

/** Weight in water ÷ weight in air where nobody weighed it: half. Estimate. */
export const SHARE_IN_WATER = 0.5;

/** The same of a natural bait, which is nearly as light in water as a fish: a twentieth. Estimate. */
export const BAIT_SHARE_IN_WATER = 0.05;

/**
 * Weight of a lure in air and in water.
 *
 * @param shareInWater  where it was never weighed under water
 */
export function lureWeight(
    { mass, submerged, displaced }: LureWeightSource,
    shareInWater = SHARE_IN_WATER,
): LureWeight {
    if (!isPositive(mass)) {
        return { kind: 'unknown', reason: 'The lure’s weight is not above zero.' };
    }
    const inAir = mass * STANDARD_GRAVITY;
    if (submerged !== undefined) {
        if (!isSound(submerged) || submerged > mass) {
            return { kind: 'unknown', reason: 'The lure weighs more in water than in air.' };
        }
        const volume = (mass - submerged) / SEA_WATER_DENSITY;
        return {
            kind: 'weight',
            inAir,
            inWater: submerged * STANDARD_GRAVITY,
            displaced: volume,
            standing: 'measured',
        };
    }
    if (displaced !== undefined) {
        if (!isNotNegative(displaced)) {
            return { kind: 'unknown', reason: 'The displaced volume is below zero.' };
        }
        const inWater = inAir - SEA_WATER_DENSITY * displaced * STANDARD_GRAVITY;
        return { kind: 'weight', inAir, inWater, displaced, standing: 'measured' };
    }
    const volume = (mass * (1 - shareInWater)) / SEA_WATER_DENSITY;
    return {
        kind: 'weight',
        inAir,
        inWater: inAir * shareInWater,
        displaced: volume,
        standing: 'estimated',
    };
}
