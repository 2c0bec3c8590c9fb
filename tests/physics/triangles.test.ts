import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pointTriangleGap, type Triangle, triangleGap } from '../../language/src/physics/triangles.ts';
import { norm, scale, subtract } from '../../language/src/physics/vector.ts';
import { gainLeft, point, roundingLeaves } from './nearest.ts';

const triangle = fc.tuple(point, point, point);

/** Shapes that trouble such code: corners shared, sides parallel, everything in a plane, no area. */
const awkwardPoint = fc.tuple(
    fc.integer({ min: -2, max: 2 }),
    fc.integer({ min: -2, max: 2 }),
    fc.integer({ min: 0, max: 1 }),
);
const awkwardTriangle = fc.tuple(awkwardPoint, awkwardPoint, awkwardPoint);

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
            const rounding = roundingLeaves(first, second, distance);
            expect(pointTriangleGap(at[0], first).distance).toBeLessThanOrEqual(rounding);
            expect(pointTriangleGap(at[1], second).distance).toBeLessThanOrEqual(rounding);
            if (distance > 1e-9) expect(gainLeft(first, second, at)).toBeLessThanOrEqual(rounding);
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
            // Each is the least to what rounding leaves of its square.
            const error = (given: number) =>
                Math.sqrt(distance ** 2 + 2 * roundingLeaves(a, b, distance) ** 2) - given;
            const other = [
                triangleGap(b, a).distance,
                triangleGap(mirrored(a), mirrored(b)).distance,
                triangleGap(scaled(a), scaled(b)).distance / factor,
            ];
            for (const each of other) {
                expect(each).toBeLessThanOrEqual(distance + error(distance));
                expect(each).toBeGreaterThanOrEqual(distance - error(distance));
            }
        }),
    );
});
