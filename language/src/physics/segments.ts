import { cross, dot, norm, subtract, type Vec } from './vector.ts';

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
 * segment, and the nearest points of the two carrying lines when both lie inside. So the answer is never below the
 * true distance, and parallel segments need no case of their own.
 */
export function segmentGap(a: Vec, b: Vec, c: Vec, d: Vec): LineGap {
    const u = subtract(b, a);
    const v = subtract(d, c);
    const w = subtract(a, c);
    const uu = dot(u, u);
    const vv = dot(v, v);
    const uv = dot(u, v);
    const uw = dot(u, w);
    const vw = dot(v, w);

    let least = Number.POSITIVE_INFINITY;
    let s = 0;
    let t = 0;
    const consider = (atS: number, atT: number) => {
        const x = w[0] + u[0] * atS - v[0] * atT;
        const y = w[1] + u[1] * atS - v[1] * atT;
        const z = w[2] + u[2] * atS - v[2] * atT;
        const square = x * x + y * y + z * z;
        if (square < least) {
            least = square;
            s = atS;
            t = atT;
        }
    };
    consider(0, share(vw, vv));
    consider(1, share(vw + uv, vv));
    consider(share(-uw, uu), 0);
    consider(share(uv - uw, uu), 1);
    const determinant = uu * vv - uv * uv;
    if (determinant > 0) {
        const atS = (uv * vw - vv * uw) / determinant;
        const atT = (uu * vw - uv * uw) / determinant;
        if (atS >= 0 && atS <= 1 && atT >= 0 && atT <= 1) {
            // For lines nearly parallel the quotients are rough: each is once set right against the other.
            const setT = share(vw + uv * atS, vv);
            consider(share(uv * setT - uw, uu), setT);
        }
    }
    return { distance: Math.sqrt(least), along: [s, t], at: [pointAt(a, u, s), pointAt(c, v, t)] };
}

/** Where a projection falls on a segment: 0 for a segment that is a point. */
function share(projection: number, squaredLength: number): number {
    if (!(squaredLength > 0)) return 0;
    return Math.min(1, Math.max(0, projection / squaredLength));
}

function pointAt(from: Vec, along: Vec, part: number): Vec {
    return [from[0] + along[0] * part, from[1] + along[1] * part, from[2] + along[2] * part];
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

/** Corners of a flat triangle. */
export type Triangle = readonly [Vec, Vec, Vec];

/**
 * Distance from a point to a triangle, with the nearest point on it.
 *
 * Above the triangle's face the distance is to its plane, elsewhere to the nearest edge. A triangle without area is
 * the longest of its edges.
 */
export function pointTriangleGap(point: Vec, triangle: Triangle): Gap {
    const foot = footOnFace(point, triangle);
    if (foot) return { distance: norm(subtract(point, foot)), at: [point, foot] };
    let least: Gap | undefined;
    for (const [from, to] of edges(triangle)) {
        const gap = segmentGap(point, point, from, to);
        if (!least || gap.distance < least.distance) least = { distance: gap.distance, at: gap.at };
    }
    return least!;
}

/** Narrower than this share of its length, a triangle's plane drowns in rounding and its edges say it all. */
const SLIVER = 1e-8;

/** The foot of the perpendicular from a point, when it falls on the triangle's face. */
function footOnFace(point: Vec, [a, b, c]: Triangle): Vec | undefined {
    const [ab, ac, bc] = [subtract(b, a), subtract(c, a), subtract(c, b)];
    const normal = cross(ab, ac);
    const square = dot(normal, normal);
    const longest = Math.max(dot(ab, ab), dot(ac, ac), dot(bc, bc));
    if (!(square > SLIVER ** 2 * longest ** 2)) return undefined;
    const inside = (from: Vec, to: Vec) => dot(cross(subtract(to, from), subtract(point, from)), normal) >= 0;
    if (!inside(a, b) || !inside(b, c) || !inside(c, a)) return undefined;
    return pointAt(point, normal, dot(subtract(a, point), normal) / square);
}

function edges([a, b, c]: Triangle): readonly [Vec, Vec][] {
    return [
        [a, b],
        [b, c],
        [c, a],
    ];
}

/**
 * Least distance between two triangles: 0 where they touch or pass through each other.
 *
 * The nearest points lie on two edges, or on a corner and a face, or the triangles meet; they meet where an edge of
 * one passes through the face of the other.
 */
export function triangleGap(first: Triangle, second: Triangle): Gap {
    let least: Gap = { distance: Number.POSITIVE_INFINITY, at: [first[0], second[0]] };
    for (const [a, b] of edges(first)) {
        for (const [c, d] of edges(second)) {
            const { distance, at } = segmentGap(a, b, c, d);
            if (distance < least.distance) least = { distance, at };
        }
    }
    for (const corner of first) {
        const gap = pointTriangleGap(corner, second);
        if (gap.distance < least.distance) least = gap;
    }
    for (const corner of second) {
        const { distance, at } = pointTriangleGap(corner, first);
        if (distance < least.distance) least = { distance, at: [at[1], at[0]] };
    }
    if (least.distance === 0) return least;
    const met = piercing(first, second) ?? piercing(second, first);
    return met ? { distance: 0, at: [met, met] } : least;
}

/** Where an edge of the first triangle passes through the face of the second. */
function piercing(first: Triangle, second: Triangle): Vec | undefined {
    const normal = cross(subtract(second[1], second[0]), subtract(second[2], second[0]));
    for (const [from, to] of edges(first)) {
        const before = dot(subtract(from, second[0]), normal);
        const behind = dot(subtract(to, second[0]), normal);
        if (!(before < 0 ? behind > 0 : before > 0 && behind < 0)) continue;
        const point = pointAt(from, subtract(to, from), before / (before - behind));
        if (footOnFace(point, second)) return point;
    }
    return undefined;
}
