import { type Gap, segmentSquare, shareOfFirst, shareOfSecond } from './segments.ts';
import { cross, dot, lerp, norm, subtract, type Vec } from './vector.ts';

/** Corners of a flat triangle. */
export type Triangle = readonly [Vec, Vec, Vec];

/**
 * Least distance between two triangles: 0 where they touch or pass through each other.
 *
 * The nearest points lie on two edges, or on a corner and a face, or the triangles meet; they meet where an edge of
 * one passes through the face of the other. A triangle without area is the longest of its edges.
 */
export function triangleGap(first: Triangle, second: Triangle): Gap {
    let least = Number.POSITIVE_INFINITY;
    let at: readonly [Vec, Vec] = [first[0], second[0]];
    let [edge, otherEdge, s, t] = [0, 0, 0, 0];
    for (let i = 0; i < 3; i++) {
        for (let j = 0; j < 3; j++) {
            const square = segmentSquare(first[i]!, first[(i + 1) % 3]!, second[j]!, second[(j + 1) % 3]!);
            if (square >= least) continue;
            least = square;
            [edge, otherEdge, s, t] = [i, j, shareOfFirst, shareOfSecond];
        }
    }
    let distance = Math.sqrt(least);
    if (distance < Number.POSITIVE_INFINITY)
        at = [
            lerp(first[edge]!, first[(edge + 1) % 3]!, s),
            lerp(second[otherEdge]!, second[(otherEdge + 1) % 3]!, t),
        ];

    const [face, otherFace] = [faceOf(first), faceOf(second)];
    for (const [corners, opposite, swapped] of [
        [first, otherFace, false],
        [second, face, true],
    ] as const) {
        if (!opposite) continue;
        for (const corner of corners) {
            const height = heightOver(opposite, corner);
            if (!(Math.abs(height) < distance) || !stands(opposite, corner)) continue;
            distance = Math.abs(height);
            const foot = footOf(opposite, corner, height);
            at = swapped ? [foot, corner] : [corner, foot];
        }
        const met = distance > 0 ? piercing(corners, opposite) : undefined;
        if (met) return { distance: 0, at: [met, met] };
    }
    return { distance, at };
}

/** Distance from a point to a triangle, with the nearest point on it. */
export function pointTriangleGap(point: Vec, triangle: Triangle): Gap {
    return triangleGap([point, point, point], triangle);
}

/** A triangle seen square on. */
interface Face {
    readonly corners: Triangle;
    /** Of length 1. */
    readonly normal: Vec;
    /** In the plane, square to the edge from each corner to the next, pointing in. */
    readonly inward: readonly [Vec, Vec, Vec];
}

/** Narrower than this share of its length, a triangle's plane drowns in rounding and its edges say it all. */
const SLIVER = 1e-8;

/** Smaller than this, m², an area runs out of the digits of numbers near zero. */
const NO_AREA = 1e-200;

function faceOf(corners: Triangle): Face | undefined {
    const [ab, bc, ca] = [
        subtract(corners[1], corners[0]),
        subtract(corners[2], corners[1]),
        subtract(corners[0], corners[2]),
    ];
    const across = cross(ab, bc);
    const area = norm(across);
    if (!(area > Math.max(NO_AREA, SLIVER * Math.max(dot(ab, ab), dot(bc, bc), dot(ca, ca)))))
        return undefined;
    const normal: Vec = [across[0] / area, across[1] / area, across[2] / area];
    return { corners, normal, inward: [cross(normal, ab), cross(normal, bc), cross(normal, ca)] };
}

/** Of a point over the plane, m; negative on the other side. */
function heightOver({ corners: [origin], normal }: Face, point: Vec): number {
    return (
        normal[0] * (point[0] - origin[0]) +
        normal[1] * (point[1] - origin[1]) +
        normal[2] * (point[2] - origin[2])
    );
}

/** Whether a point stands over the triangle itself. */
function stands({ corners, inward }: Face, point: Vec): boolean {
    for (let i = 0; i < 3; i++) {
        const [from, into] = [corners[i]!, inward[i]!];
        const side =
            into[0] * (point[0] - from[0]) + into[1] * (point[1] - from[1]) + into[2] * (point[2] - from[2]);
        if (side < 0) return false;
    }
    return true;
}

function footOf({ normal }: Face, point: Vec, height: number): Vec {
    return [point[0] - normal[0] * height, point[1] - normal[1] * height, point[2] - normal[2] * height];
}

/** Where an edge of a triangle passes through the face of another. */
function piercing(corners: Triangle, face: Face): Vec | undefined {
    const heights = [
        heightOver(face, corners[0]),
        heightOver(face, corners[1]),
        heightOver(face, corners[2]),
    ];
    for (let i = 0; i < 3; i++) {
        const [before, behind] = [heights[i]!, heights[(i + 1) % 3]!];
        if (!(before < 0 ? behind > 0 : before > 0 && behind < 0)) continue;
        const point = lerp(corners[i]!, corners[(i + 1) % 3]!, before / (before - behind));
        if (stands(face, point)) return point;
    }
    return undefined;
}
