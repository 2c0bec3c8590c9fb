import { SEA_WATER_DENSITY } from '../constants.ts';
import type { TowedLure } from '../towed.ts';
import type { Balance, Motion } from './motion.ts';

/**
 * How hard the surface holds down a lure that its line pulls up, N a metre that it has risen. Estimate: a lure that
 * is pulled up with twice its weight rises by a centimetre or two, and faces and suction do the rest.
 */
export const SURFACE_HOLD = 400;

/** Drag, weight, inertia and the hold of the surface on the lure, at node 0. */
export function loadLure(
    { dragArea, diveArea = 0, mass, weightInWater }: TowedLure,
    motion: Motion,
    rate: number,
    into: Balance,
) {
    const { x, v, a } = motion;
    const { missing, diagonal } = into;
    const vx = v[0]!;
    const vy = v[1]!;
    const vz = v[2]!;
    const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const drag = 0.5 * SEA_WATER_DENSITY * dragArea;
    const dive = 0.5 * SEA_WATER_DENSITY * diveArea;
    missing[0] = mass * a[0]! + drag * speed * vx;
    missing[1] = mass * a[1]! + drag * speed * vy;
    missing[2] = mass * a[2]! + drag * speed * vz + dive * speed * speed + weightInWater;

    const inertia = mass * rate * rate;
    const even = inertia + rate * drag * speed;
    const per = speed > 0 ? (rate * drag) / speed : 0;
    const down = 2 * rate * dive;
    diagonal[0] = even + per * vx * vx;
    diagonal[1] = per * vx * vy;
    diagonal[2] = per * vx * vz;
    diagonal[3] = diagonal[1]!;
    diagonal[4] = even + per * vy * vy;
    diagonal[5] = per * vy * vz;
    diagonal[6] = diagonal[2]! + down * vx;
    diagonal[7] = diagonal[5]! + down * vy;
    diagonal[8] = even + per * vz * vz + down * vz;
    if (x[2]! > 0) {
        missing[2] = missing[2]! + SURFACE_HOLD * x[2]!;
        diagonal[8] = diagonal[8]! + SURFACE_HOLD;
    }
}
