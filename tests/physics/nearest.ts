import fc from 'fast-check';
import { dot, norm, scale, subtract, type Vec } from '../../language/src/physics/vector.ts';

const coordinate = fc.double({ min: -60, max: 60, noNaN: true });

/** Anywhere within 60 m. */
export const point = fc.tuple(coordinate, coordinate, coordinate);

export const ROOT_OF_ROUNDING = 60 * Math.sqrt(Number.EPSILON);

/**
 * Two points are the nearest of two convex bodies just when the planes through them, square to the line between,
 * keep each body on its own side. The largest breach of that, in metres. Where distances agree to the last digit
 * the points may differ by the root of that, so a breach up to 60 m times √ε is rounding.
 */
export function breach(first: readonly Vec[], second: readonly Vec[], at: readonly [Vec, Vec]): number {
    const between = subtract(at[1], at[0]);
    const across = scale(between, 1 / norm(between));
    return Math.max(
        ...first.map((corner) => dot(across, subtract(corner, at[0]))),
        ...second.map((corner) => dot(across, subtract(at[1], corner))),
    );
}
