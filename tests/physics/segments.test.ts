import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
    lineGap,
    pointTriangleGap,
    segmentGap,
    type Triangle,
    triangleGap,
} from '../../language/src/physics/segments.ts';
import { dot, lerp, norm, scale, subtract, type Vec } from '../../language/src/physics/vector.ts';
import reference from './reference/segment-distance.json' with { type: 'json' };

const vec = (point: number[]) => point as unknown as Vec;
const coordinate = fc.double({ min: -60, max: 60, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate);
const triangle = fc.tuple(point, point, point);

/** Shapes that trouble such code: corners shared, sides parallel, everything in a plane, no area. */
const awkwardPoint = fc.tuple(
    fc.integer({ min: -2, max: 2 }),
    fc.integer({ min: -2, max: 2 }),
    fc.integer({ min: 0, max: 1 }),
);
const awkwardTriangle = fc.tuple(awkwardPoint, awkwardPoint, awkwardPoint);

const ROOT_OF_ROUNDING = 60 * Math.sqrt(Number.EPSILON);

/**
 * Two points are the nearest of two convex bodies just when the planes through them, square to the line between,
 * keep each body on its own side. The largest breach of that, in metres. Where distances agree to the last digit
 * the points may differ by the root of that, so a breach up to 60 m times √ε is rounding.
 */
function breach(first: readonly Vec[], second: readonly Vec[], at: readonly [Vec, Vec]): number {
    const between = subtract(at[1], at[0]);
    const across = scale(between, 1 / norm(between));
    return Math.max(
        ...first.map((corner) => dot(across, subtract(corner, at[0]))),
        ...second.map((corner) => dot(across, subtract(at[1], corner))),
    );
}

test.each(reference.segments)('segments: $name', ({ P0, P1, Q0, Q1, dist, s, t, note }) => {
    const gap = segmentGap(vec(P0), vec(P1), vec(Q0), vec(Q1));
    expect(Math.abs(gap.distance - dist)).toBeLessThanOrEqual(1e-12);
    if (note === null) {
        expect(gap.along[0]).toBeCloseTo(s, 12);
        expect(gap.along[1]).toBeCloseTo(t, 12);
    }
    expect(norm(subtract(gap.at[0], gap.at[1]))).toBeCloseTo(gap.distance, 12);
});

test.each(reference.polylines)('lines: $name', ({ A, B, dist }) => {
    const gap = lineGap(A.map(vec), B.map(vec))!;
    expect(Math.abs(gap.distance - dist)).toBeLessThanOrEqual(1e-12);
    const [i, j] = gap.along;
    const on = (line: number[][], along: number) => {
        const piece = Math.min(Math.floor(along), line.length - 2);
        return lerp(vec(line[piece]!), vec(line[piece + 1]!), along - piece);
    };
    expect(norm(subtract(on(A, i), on(B, j)))).toBeCloseTo(dist, 12);
});

test('a line of one point is no line', () => {
    expect(lineGap([[0, 0, 0]], [[1, 0, 0]])).toBeUndefined();
});

test('no pair of points on two segments is nearer than the pair found', () => {
    fc.assert(
        fc.property(point, point, point, point, (a, b, c, d) => {
            const gap = segmentGap(a, b, c, d);
            // The direction between points closer than a millimetre is known too roughly to judge by.
            fc.pre(gap.distance > 1e-3);
            expect(breach([a, b], [c, d], gap.at)).toBeLessThan(2 * ROOT_OF_ROUNDING);
        }),
        { numRuns: 2000 },
    );
});

test('nearly parallel segments come out within the rounding of their coordinates', () => {
    fc.assert(
        fc.property(
            point,
            point,
            fc.double({ min: -1e-7, max: 1e-7, noNaN: true }),
            fc.double({ min: 0.01, max: 3, noNaN: true }),
            (a, b, tilt, apart) => {
                fc.pre(norm(subtract(a, b)) > 1);
                const c: Vec = [a[0], a[1], a[2] + apart];
                const d: Vec = [b[0], b[1], b[2] + apart + tilt];
                const gap = segmentGap(a, b, c, d);
                const along = scale(subtract(b, a), 1 / norm(subtract(b, a)));
                const square = apart * Math.sqrt(1 - along[2] ** 2);
                // Ends beyond the other's foot add nothing here: both feet of one end lie inside or the ends meet.
                const bound = Math.abs(tilt) + 1e-7;
                expect(gap.distance).toBeGreaterThanOrEqual(square - bound);
                expect(gap.distance).toBeLessThanOrEqual(apart + bound);
            },
        ),
    );
});

test('a point over the face is as far as its height, beside it as far as the edge or corner', () => {
    const face: Triangle = [
        [0, 0, 0],
        [4, 0, 0],
        [0, 4, 0],
    ];
    expect(pointTriangleGap([1, 1, 3], face)).toEqual({
        distance: 3,
        at: [
            [1, 1, 3],
            [1, 1, 0],
        ],
    });
    expect(pointTriangleGap([1, -2, 0], face).distance).toBe(2);
    expect(pointTriangleGap([7, -4, 0], face).distance).toBe(5);
    expect(pointTriangleGap([3, 3, 1], face).distance).toBeCloseTo(Math.sqrt(3), 12);
    const flat: Triangle = [
        [0, 0, 0],
        [4, 0, 0],
        [2, 0, 0],
    ];
    expect(pointTriangleGap([1, 2, 0], flat).distance).toBe(2);
});

test.each([
    [
        'one pierces the other',
        [
            [-1, -1, -1],
            [1, 1, 1],
            [1, 1, 2],
        ],
        0,
    ],
    [
        'they share an edge',
        [
            [0, 0, 0],
            [3, 0, 0],
            [0, 0, 5],
        ],
        0,
    ],
    [
        'they share a corner',
        [
            [0, 0, 0],
            [-3, 0, 1],
            [-3, -1, 1],
        ],
        0,
    ],
    [
        'they lie in one plane, overlapping',
        [
            [0.5, 0.5, 0],
            [9, 9, 0],
            [9, 8, 0],
        ],
        0,
    ],
    [
        'one lies inside the other',
        [
            [0.5, 0.5, 0],
            [1, 0.5, 0],
            [0.5, 1, 0],
        ],
        0,
    ],
    [
        'they lie in parallel planes',
        [
            [0, 0, 2],
            [3, 0, 2],
            [0, 3, 2],
        ],
        2,
    ],
    [
        'a corner stands over a face',
        [
            [1, 1, 0.5],
            [1, 1, 9],
            [2, 2, 9],
        ],
        0.5,
    ],
    [
        'they lie in one plane, apart',
        [
            [-3, 0, 0],
            [-3, 1, 0],
            [-4, 0, 0],
        ],
        3,
    ],
] as const)('triangles: %s', (_, other, distance) => {
    const face: Triangle = [
        [0, 0, 0],
        [4, 0, 0],
        [0, 4, 0],
    ];
    expect(triangleGap(face, other).distance).toBeCloseTo(distance, 12);
    expect(triangleGap(other, face).distance).toBeCloseTo(distance, 12);
});

test.each([
    ['of any shape', triangle],
    ['of awkward shape', awkwardTriangle],
])('triangles %s: no pair of points is nearer than the pair found', (_, shape) => {
    fc.assert(
        fc.property(shape, shape, (first, second) => {
            const { distance, at } = triangleGap(first, second);
            expect(norm(subtract(at[0], at[1]))).toBeCloseTo(distance, 9);
            expect(pointTriangleGap(at[0], first).distance).toBeLessThan(2 * ROOT_OF_ROUNDING);
            expect(pointTriangleGap(at[1], second).distance).toBeLessThan(2 * ROOT_OF_ROUNDING);
            if (distance > 1e-3) expect(breach(first, second, at)).toBeLessThan(2 * ROOT_OF_ROUNDING);
        }),
        { numRuns: 5000 },
    );
});

test('distances do not care about order, side or scale', () => {
    fc.assert(
        fc.property(triangle, triangle, fc.double({ min: 0.1, max: 10, noNaN: true }), (a, b, factor) => {
            const { distance } = triangleGap(a, b);
            const mirrored = (t: Triangle) => t.map(([x, y, z]) => [x, -y, z]) as unknown as Triangle;
            const scaled = (t: Triangle) => t.map((corner) => scale(corner, factor)) as unknown as Triangle;
            expect(triangleGap(b, a).distance).toBeCloseTo(distance, 6);
            expect(triangleGap(mirrored(a), mirrored(b)).distance).toBeCloseTo(distance, 6);
            expect(triangleGap(scaled(a), scaled(b)).distance / factor).toBeCloseTo(distance, 5);
        }),
    );
});

test('coordinates that are no numbers give an infinite distance, not a wrong one', () => {
    const bad: Vec = [Number.NaN, 0, 0];
    expect(segmentGap(bad, [1, 0, 0], [0, 1, 0], [1, 1, 0]).distance).toBe(Number.POSITIVE_INFINITY);
});
