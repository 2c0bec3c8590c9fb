import { crossFlowDrag, TANGENTIAL_DRAG } from './coefficients.ts';
import {
    AIR_DENSITY,
    AIR_VISCOSITY,
    SEA_WATER_DENSITY,
    SEA_WATER_VISCOSITY,
    STANDARD_GRAVITY,
} from './constants.ts';
import type { Section, Tow } from './towed.ts';

/** Stretch per newton. */
export function compliance({ diameter, modulus }: Section): number {
    return modulus === undefined ? 0 : 4 / (modulus * Math.PI * diameter ** 2);
}

/**
 * What a metre of line at rest adds to force and position: a function of the state (force, position; six figures) that
 * fills in six of `out` from `at`. Weight, drag across and along, stretch.
 *
 * @param speed  of the boat through the water, m/s
 */
export function slopeOf(
    { normalDrag, tangentialDrag = TANGENTIAL_DRAG.value, wind = [0, 0, 0], airDrag = true }: Tow,
    speed: number,
) {
    const air = [wind[0] - speed, wind[1], wind[2]] as const;
    return (state: Float64Array, section: Section, underWater: boolean, out: Float64Array, at: number) => {
        const { diameter, density } = section;
        const tension = Math.sqrt(state[0]! ** 2 + state[1]! ** 2 + state[2]! ** 2);
        const tx = state[0]! / tension;
        const ty = state[1]! / tension;
        const tz = state[2]! / tension;

        const fluid = underWater ? SEA_WATER_DENSITY : airDrag ? AIR_DENSITY : 0;
        const vx = underWater ? -speed : air[0];
        const vy = underWater ? 0 : air[1];
        const vz = underWater ? 0 : air[2];
        const along = vx * tx + vy * ty + vz * tz;
        const nx = vx - along * tx;
        const ny = vy - along * ty;
        const nz = vz - along * tz;
        const across = Math.sqrt(nx * nx + ny * ny + nz * nz);
        const viscosity = underWater ? SEA_WATER_VISCOSITY : AIR_VISCOSITY;
        const pressure = 0.5 * fluid * diameter;
        const normal = pressure * (normalDrag ?? crossFlowDrag((across * diameter) / viscosity)) * across;
        const tangential = pressure * Math.PI * tangentialDrag * Math.abs(along) * along;
        const area = (Math.PI / 4) * diameter * diameter;
        const weight = (density - (underWater ? SEA_WATER_DENSITY : 0)) * area * STANDARD_GRAVITY;

        const stretch = 1 + tension * compliance(section);
        out[at] = -(normal * nx + tangential * tx);
        out[at + 1] = -(normal * ny + tangential * ty);
        out[at + 2] = weight - (normal * nz + tangential * tz);
        out[at + 3] = tx * stretch;
        out[at + 4] = ty * stretch;
        out[at + 5] = tz * stretch;
    };
}
