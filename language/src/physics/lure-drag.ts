import type { Standing } from './coefficients.ts';
import { SEA_WATER_DENSITY } from './constants.ts';
import { isPositive } from './sound.ts';

/** What is known of how hard a lure pulls. */
export interface LureDragSource {
    /** Read on a scale: N at a speed through the water in m/s. */
    readonly measured?: { readonly pull: number; readonly speed: number };
    /** Diameter of the head in m and its shape; without a shape it counts as flat-faced. */
    readonly head?: { readonly diameter: number; readonly shape?: HeadShape };
    /** A natural bait by its length, m, and its mass, kg; without a mass a fish of that length in fair condition. */
    readonly bait?: { readonly length: number; readonly mass?: number };
}

export type LurePull =
    | {
          readonly kind: 'pull';
          /** N at the speed asked. */
          readonly value: number;
          readonly low: number;
          readonly high: number;
          /** Drag coefficient × area, m²: pull = ½·ρ·dragArea·speed². */
          readonly dragArea: number;
          readonly standing: Standing;
          /** The estimate behind it, in words; absent where it was measured at this speed. */
          readonly leaning?: string;
      }
    | { readonly kind: 'unknown'; readonly reason: string };

/**
 * Drag of a lure's head on its frontal area, without the skirt.
 *
 * Flat face 0.87: blunt cylinder along the flow, 0.85 at two diameters long, 0.87 at four; cup between that and a
 * hollow hemisphere, 0.9 to 1.3 (C. Matthews, Aeronautical Engineer's Data Book, 2002, Fig. 5.13). Bullet 0.2:
 * rounded nose on a blunt base, from memory of S. F. Hoerner, Fluid-Dynamic Drag (1965), ch. 3. Slant, jet and
 * lipped diver: estimates.
 */
export const HEAD_DRAG = {
    pusher: { value: 0.87, low: 0.87, high: 0.87 },
    plunger: { value: 0.87, low: 0.87, high: 0.87 },
    slant: { value: 0.87, low: 0.7, high: 1.0 },
    chugger: { value: 1.1, low: 0.9, high: 1.3 },
    bullet: { value: 0.2, low: 0.15, high: 0.3 },
    jet: { value: 0.3, low: 0.2, high: 0.5 },
    diver: { value: 1.2, low: 0.8, high: 2.0 },
} as const;

export type HeadShape = keyof typeof HEAD_DRAG;

/** What skirt, hooks and smoke add to the head's own drag, as a factor. Estimate: the range is 1.3 to 2.5. */
export const SKIRT_FACTOR = { value: Math.sqrt(1.3 * 2.5), low: 1.3, high: 2.5 } as const;

/**
 * Drag of a towed bait on the frontal area of its body. Estimate: from a fish that swims with its hook and rigging to
 * one that skips or turns across its way.
 */
export const BAIT_DRAG = { value: 1, low: 0.4, high: 2.5 } as const;

/** Thickest over mean cross-section of a fish. Estimate: of a spindle it is about 1.9, of a cylinder 1. */
const FULLNESS = 1.5;

/**
 * Mass of a fish over the cube of its length, kg/m³: Fulton's condition factor of 1 (W. E. Ricker, Computation and
 * Interpretation of Biological Statistics of Fish Populations, 1975, from memory). Slender baits weigh less.
 */
export const BAIT_CONDITION = 10;

/** Drag grows with about the square of speed; a lure that breathes and planes strays by this much. Estimate. */
const EXPONENT = { value: 2, low: 1.8, high: 2.2 } as const;

/**
 * Towing pull of a lure.
 *
 * @param source  a measured pull goes before the head, that before the size of a bait
 * @param speed   through the water, m/s, > 0
 * @returns N with its range and standing, or why there is none
 */
export function lurePull(source: LureDragSource, speed: number): LurePull {
    if (!isPositive(speed)) return { kind: 'unknown', reason: 'The speed is not above zero.' };
    const pressure = 0.5 * SEA_WATER_DENSITY * speed ** 2;
    const { measured, head } = source;
    if (measured) {
        if (!isPositive(measured.pull, measured.speed)) {
            return { kind: 'unknown', reason: 'The measured pull, or its speed, is not above zero.' };
        }
        const ratio = speed / measured.speed;
        const [low, high] = [ratio ** EXPONENT.low, ratio ** EXPONENT.high].sort((a, b) => a - b);
        const value = measured.pull * ratio ** EXPONENT.value;
        const scaled = Math.abs(ratio - 1) > 1e-6;
        return {
            kind: 'pull',
            value,
            low: measured.pull * low!,
            high: measured.pull * high!,
            dragArea: value / pressure,
            standing: scaled ? 'computed' : 'measured',
            ...(scaled && { leaning: 'Scaled from another speed as speed squared.' }),
        };
    }
    if (head) {
        if (!isPositive(head.diameter)) {
            return { kind: 'unknown', reason: 'The head’s diameter is not above zero.' };
        }
        const drag = HEAD_DRAG[head.shape ?? 'pusher'];
        const onFace = (Math.PI / 4) * head.diameter ** 2 * pressure;
        const value = onFace * drag.value * SKIRT_FACTOR.value;
        return {
            kind: 'pull',
            value,
            low: onFace * drag.low * SKIRT_FACTOR.low,
            high: onFace * drag.high * SKIRT_FACTOR.high,
            dragArea: value / pressure,
            standing: 'estimated',
            leaning: 'From the head’s diameter, times 1.3 to 2.5 for the skirt; a scale would tell.',
        };
    }
    if (source.bait) return baitPull(source.bait, pressure);
    return { kind: 'unknown', reason: 'Neither a measured pull nor the head’s diameter is known.' };
}

/** Of a natural bait, from its size alone. */
function baitPull({ length, mass }: NonNullable<LureDragSource['bait']>, pressure: number): LurePull {
    if (!isPositive(length) || (mass !== undefined && !isPositive(mass))) {
        return { kind: 'unknown', reason: 'The bait’s length, or its weight, is not above zero.' };
    }
    const volume = (mass ?? BAIT_CONDITION * length ** 3) / SEA_WATER_DENSITY;
    const onBody = FULLNESS * (volume / length) * pressure;
    const value = onBody * BAIT_DRAG.value;
    if (!isPositive(value))
        return { kind: 'unknown', reason: 'The bait’s length, or its weight, is absurd.' };
    return {
        kind: 'pull',
        value,
        low: onBody * BAIT_DRAG.low,
        high: onBody * BAIT_DRAG.high,
        dragArea: value / pressure,
        standing: 'estimated',
        leaning: 'From the bait’s size, times 0.4 to 2.5 for how it swims; a scale would tell.',
    };
}
