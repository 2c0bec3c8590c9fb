import { directlyAstern } from '../../language/src/physics/sway.ts';
import type { Vec } from '../../language/src/physics/vector.ts';

export const DEGREE = Math.PI / 180;

/**
 * Four lines at one set of tow points and four sets of distances. Their least gaps and sway margins, straight and in
 * a half turn, were computed by a program independent of this one and again by a second: gaps to 0.01 m, margins to
 * 0.1°.
 */
export const TOW_POINTS: Record<'short corner' | 'long corner' | 'short rigger' | 'long rigger', Vec> = {
    'short corner': [0.3, 1.4, 2.4],
    'long corner': [0.3, -1.4, 2.4],
    'short rigger': [2, -6, 5.5],
    'long rigger': [2, 6, 6.5],
};

export interface Expected {
    readonly name: string;
    readonly astern: readonly [number, number, number, number];
    /** Least gap at 4° of sway, m: straight, turning to port, to starboard. */
    readonly gap: readonly [number, number, number];
    /** Sway margin, degrees, likewise. */
    readonly margin: readonly [number, number, number];
}

export const SPREADS: readonly Expected[] = [
    { name: 'staggered', astern: [16, 24, 33, 44], gap: [0.94, 0.29, 0.94], margin: [15.5, 4.8, 5.0] },
    { name: 'in pairs', astern: [20, 20, 38, 38], gap: [0, 0, 0], margin: [3.6, 3.6, 3.6] },
    { name: 'equal', astern: [30, 30, 30, 30], gap: [0, 0, 0], margin: [2.3, 2.3, 2.3] },
    { name: 'reversed', astern: [44, 33, 24, 16], gap: [0.36, 0, 0], margin: [5.7, 0, 0] },
];

/** The four lines at rest. */
export function linesAtRest(astern: readonly number[]): readonly (readonly [Vec, Vec])[] {
    return Object.values(TOW_POINTS).map((towPoint, index) => directlyAstern(towPoint, astern[index]!));
}

/** Every two of several things. */
export function pairs<T>(things: readonly T[]): [T, T][] {
    return things.flatMap((first, index) => things.slice(index + 1).map((second): [T, T] => [first, second]));
}
