import { stiffness } from './coefficients.ts';
import { isNotNegative, isPositive, isSound } from './sound.ts';
import type { Vec } from './vector.ts';

/** A stretch of line or leader of one kind. */
export interface Section {
    /** Unstretched, m. */
    readonly length: number;
    /** m */
    readonly diameter: number;
    /** kg/m³ */
    readonly density: number;
    /** Young's modulus, Pa; a line without one does not stretch at rest and counts as nylon in motion. */
    readonly modulus?: number;
}

export interface TowedLure {
    /** Drag coefficient × area, m² (see `lurePull`). */
    readonly dragArea: number;
    /** kg */
    readonly mass: number;
    /** N; negative when it floats (see `lureWeight`). */
    readonly weightInWater: number;
    /** Of a lip or a paravane that pulls down, coefficient × area, m²: ½·ρ·diveArea·speed². None by default. */
    readonly diveArea?: number;
}

/** What is towed, and through what. */
export interface Tow {
    /** From the lure up; the last reaches on to the tow point however long it says it is. */
    readonly sections: readonly [Section, ...Section[]];
    readonly lure: TowedLure;
    /** Across the line, on diameter × length, in water and air alike; by Reynolds number when absent. */
    readonly normalDrag?: number;
    /** Along the line, on π × diameter × length. 0.005 by default. */
    readonly tangentialDrag?: number;
    /** Velocity of the air over the water, m/s, in the axes of the answer. Still air by default. */
    readonly wind?: Vec;
    /** Whether the air holds the line back. It does by default. */
    readonly airDrag?: boolean;
}

/** Why a tow cannot be computed with, or `undefined` where it can. */
export function faultOf({ sections, lure, normalDrag, tangentialDrag, wind }: Tow): string | undefined {
    for (const { length, diameter, density, modulus } of sections) {
        if (!isPositive(length)) return 'A piece of line has no length.';
        if (!isPositive(diameter)) return 'A piece of line has no thickness.';
        if (!isPositive(density)) return 'A piece of line has no density.';
        if (modulus !== undefined && !isPositive(stiffness(diameter, modulus))) {
            return 'A piece of line has no stiffness.';
        }
    }
    if (sections.length === 0) return 'There is no line.';
    if (!isPositive(lure.dragArea)) return 'The lure has no drag.';
    if (!isPositive(lure.mass)) return 'The lure has no weight.';
    if (!isSound(lure.weightInWater) || !isNotNegative(lure.diveArea ?? 0)) {
        return 'The lure’s weight in water, or its pull downwards, is out of range.';
    }
    if (!isNotNegative(normalDrag ?? 0, tangentialDrag ?? 0)) return 'A drag coefficient is below zero.';
    if (!isSound(...(wind ?? []))) return 'The wind is out of range.';
    return undefined;
}
