import { lerp, type Vec } from './vector.ts';

/** The least distance between two things, and where it lies on each. */
export interface Gap {
    /** m */
    readonly distance: number;
    /** On the first and on the second thing. */
    readonly at: readonly [Vec, Vec];
}

/** The least distance between two lines, and how far along each it lies. */
export interface LineGap extends Gap {
    /** From start to end: index of the segment plus the share of it, on the first and on the second line. */
    readonly along: readonly [number, number];
}

/**
 * Least distance between two segments.
 *
 * @param a, b, c, d  the first segment runs from a to b, the second from c to d; either may be a point
 * @returns along: shares of the two segments, 0 to 1; of several nearest pairs, one; distance Infinity when a
 * coordinate is not a number
 *
 * The least of at most five candidates, each a pair of points on the segments: the four ends against the other
 * segment, and the nearest points of the two carrying lines when the one on the first lies inside. So the answer is
 * never below the true distance, and parallel segments need no case of their own.
 */
export function segmentGap(a: Vec, b: Vec, c: Vec, d: Vec): LineGap {
    const distance = Math.sqrt(segmentSquare(a, b, c, d));
    const [s, t] = [shareOfFirst, shareOfSecond];
    return { distance, along: [s, t], at: [lerp(a, b, s), lerp(c, d, t)] };
}

/** What the last call of `segmentSquare` found besides the distance. */
export let shareOfFirst = 0;
export let shareOfSecond = 0;

/**
 * The square of `segmentGap`, m², for loops that cannot afford to allocate; `shareOfFirst` and `shareOfSecond` hold
 * where it lies until the next call.
 */
export function segmentSquare(a: Vec, b: Vec, c: Vec, d: Vec): number {
    const ux = b[0] - a[0];
    const uy = b[1] - a[1];
    const uz = b[2] - a[2];
    const vx = d[0] - c[0];
    const vy = d[1] - c[1];
    const vz = d[2] - c[2];
    const wx = a[0] - c[0];
    const wy = a[1] - c[1];
    const wz = a[2] - c[2];
    const uu = ux * ux + uy * uy + uz * uz;
    const vv = vx * vx + vy * vy + vz * vz;
    const uv = ux * vx + uy * vy + uz * vz;
    const uw = ux * wx + uy * wy + uz * wz;
    const vw = vx * wx + vy * wy + vz * wz;

    let least = Number.POSITIVE_INFINITY;
    shareOfFirst = 0;
    shareOfSecond = 0;
    const determinant = uu * vv - uv * uv;
    for (let candidate = 0; candidate < 5; candidate++) {
        let s = candidate === 2 ? 1 : 0;
        let t = candidate === 4 ? 1 : 0;
        if (candidate === 0) {
            // Where it lies on the first segment, the nearest place on the second, and of that again on the first, are
            // the answer; for lines nearly parallel the quotient is rough, and set right so.
            s = (uv * vw - vv * uw) / determinant;
            if (!(s >= 0 && s <= 1)) continue;
            t = share(vw + uv * s, vv);
            s = share(uv * t - uw, uu);
        } else if (candidate < 3) t = share(vw + uv * s, vv);
        else s = share(uv * t - uw, uu);
        const x = wx + ux * s - vx * t;
        const y = wy + uy * s - vy * t;
        const z = wz + uz * s - vz * t;
        const square = x * x + y * y + z * z;
        if (square < least) {
            least = square;
            shareOfFirst = s;
            shareOfSecond = t;
        }
        // Nothing is nearer, once the carrying lines are known well.
        if (candidate === 0 && determinant > WELL_APART * uu * vv) break;
    }
    return least;
}

/** Of directions: the square of the sine between them, above which rounding cannot hide the nearest points. */
const WELL_APART = 1e-6;

/** Where a projection falls on a segment: 0 for a segment that is a point. */
function share(projection: number, squaredLength: number): number {
    if (!(squaredLength > 0)) return 0;
    return Math.min(1, Math.max(0, projection / squaredLength));
}

/**
 * Least distance between two lines of straight pieces.
 *
 * @returns `undefined` for a line of fewer than two points
 */
export function lineGap(first: readonly Vec[], second: readonly Vec[]): LineGap | undefined {
    let least: LineGap | undefined;
    for (let i = 0; i + 1 < first.length; i++) {
        for (let j = 0; j + 1 < second.length; j++) {
            const gap = segmentGap(first[i]!, first[i + 1]!, second[j]!, second[j + 1]!);
            if (least && gap.distance >= least.distance) continue;
            least = { ...gap, along: [i + gap.along[0], j + gap.along[1]] };
        }
    }
    return least;
}
