/**
 * A point or a direction in space, SI units.
 *
 * In the boat's frame x points forward, y to port, z up, from the transom's centreline on the still waterline.
 */
export type Vec = readonly [x: number, y: number, z: number];

export function add(a: Vec, b: Vec): Vec {
    return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

/** From b to a. */
export function subtract(a: Vec, b: Vec): Vec {
    return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Vec, factor: number): Vec {
    return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Vec, b: Vec): number {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec, b: Vec): Vec {
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Length of a. */
export function norm(a: Vec): number {
    return Math.hypot(a[0], a[1], a[2]);
}

/** The point a fraction of the way from a (0) to b (1). */
export function lerp(a: Vec, b: Vec, fraction: number): Vec {
    return [
        a[0] + (b[0] - a[0]) * fraction,
        a[1] + (b[1] - a[1]) * fraction,
        a[2] + (b[2] - a[2]) * fraction,
    ];
}

/** The same point on the other side of the boat. */
export function mirror(a: Vec): Vec {
    return [a[0], -a[1], a[2]];
}
