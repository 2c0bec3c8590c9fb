import { describe, expect, test } from 'vitest';
import { pointTriangleGap, type Triangle, triangleGap } from '../../language/src/physics/triangles.ts';
import type { Vec } from '../../language/src/physics/vector.ts';

/** Every order of three corners. */
const orders = [
    [0, 1, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
    [1, 0, 2],
    [0, 2, 1],
] as const;
const ordered = (corners: Triangle) =>
    orders.map(([a, b, c]): Triangle => [corners[a], corners[b], corners[c]]);

/** Shifted and turned by 3-4-5 about x, then about z: the same picture anywhere. */
const moved = ([x, y, z]: Vec): Vec => {
    const [y1, z1] = [0.6 * y - 0.8 * z, 0.8 * y + 0.6 * z];
    return [7 + 0.8 * x - 0.6 * y1, -5 + 0.6 * x + 0.8 * y1, 3 + z1];
};
const places: readonly [string, (point: Vec) => Vec][] = [
    ['as it lies', (point) => point],
    ['moved and turned', moved],
];

/** A right triangle on the ground, legs of 4 m. */
const ground: Triangle = [
    [0, 0, 0],
    [4, 0, 0],
    [0, 4, 0],
];

describe.each(places)('two triangles, %s', (_, put) => {
    const all = (corners: Triangle) => ordered(corners.map(put) as unknown as Triangle);

    /** Whichever comes first, and however the corners are listed. */
    function expectGap(other: Triangle, distance: number, at?: readonly [Vec, Vec]) {
        for (const one of all(ground)) {
            for (const two of all(other)) {
                for (const swapped of [false, true]) {
                    const gap = swapped ? triangleGap(two, one) : triangleGap(one, two);
                    expect(gap.distance).toBeCloseTo(distance, 9);
                    const [onOne, onTwo] = swapped ? [gap.at[1], gap.at[0]] : gap.at;
                    if (!at) continue;
                    for (const axis of [0, 1, 2] as const) {
                        expect(onOne[axis]).toBeCloseTo(put(at[0])[axis], 9);
                        expect(onTwo[axis]).toBeCloseTo(put(at[1])[axis], 9);
                    }
                }
            }
        }
    }

    test('one passes through the face of the other: they meet where its edges do', () => {
        // Both long edges come down to one point below the ground, on a narrow place of it.
        for (const tip of [
            [1, 1, -2],
            [0.5, 3, -1],
            [3, 0.5, -1],
        ] as const) {
            const [x, y, z] = tip;
            const needle: Triangle = [tip, [x, y, 2], [x + 1e-6, y, 2]];
            expectGap(needle, 0);
            const met = triangleGap(all(ground)[0]!, all(needle)[0]!).at;
            for (const axis of [0, 1, 2] as const) {
                expect(met[0][axis]).toBeCloseTo(put([x, y, 0])[axis], 5);
                expect(met[1][axis]).toBe(met[0][axis]);
            }
            expect(z).toBeLessThan(0);
        }
    });

    test('of a triangle that comes through the face one edge is enough, the other passing far beside it', () => {
        expectGap(
            [
                [1, 1, -2],
                [1, 1, 2],
                [50, 50, 2],
            ],
            0,
        );
    });

    test('a wall across the plane of the other, but beside it, is as far as the nearest edge', () => {
        // From (4, 4) to the long side x + y = 4.
        expectGap(
            [
                [4, 4, -1],
                [4, 4, 2],
                [9, 9, 2],
            ],
            4 / Math.SQRT2,
        );
    });

    test('a corner over the face is as far as it is high, a corner beyond an edge as far as the edge', () => {
        expectGap(
            [
                [1, 1, 0.5],
                [1, 2, 4],
                [2, 1, 4],
            ],
            0.5,
            [
                [1, 1, 0],
                [1, 1, 0.5],
            ],
        );
        expectGap(
            [
                [1, 1, -0.5],
                [1, 2, -4],
                [2, 1, -4],
            ],
            0.5,
            [
                [1, 1, 0],
                [1, 1, -0.5],
            ],
        );
        expectGap(
            [
                [-3, 2, 4],
                [-6, 2, 9],
                [-6, 3, 9],
            ],
            5,
            [
                [0, 2, 0],
                [-3, 2, 4],
            ],
        );
    });

    test('a triangle without area is the longest of its edges, and a point a point', () => {
        expectGap(
            [
                [1, 1, 2],
                [1, 1, 3],
                [1, 1, 5],
            ],
            2,
            [
                [1, 1, 0],
                [1, 1, 2],
            ],
        );
        expectGap(
            [
                [1, 1, -1],
                [1, 1, 3],
                [1, 1, 1],
            ],
            0,
        );
        const above = pointTriangleGap(put([1, 2, 3]), all(ground)[0]!);
        expect(above.distance).toBeCloseTo(3, 9);
        const beside = pointTriangleGap(put([-3, -4, 0]), all(ground)[0]!);
        expect(beside.distance).toBeCloseTo(5, 9);
    });

    test('two without area are two segments', () => {
        const pole: Triangle = [put([1, 1, 1]), put([1, 1, 3]), put([1, 1, 2])];
        const bar: Triangle = [put([0, 3, 2]), put([2, 3, 2]), put([1, 3, 2])];
        expect(triangleGap(pole, bar).distance).toBeCloseTo(2, 9);
        expect(triangleGap(bar, pole).distance).toBeCloseTo(2, 9);
    });
});

test('coordinates that are no numbers are at no distance, and nearest nowhere else than they were given', () => {
    const bad: Triangle = [
        [Number.NaN, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
    ];
    const none: Triangle = [
        [Number.NaN, 0, 0],
        [Number.NaN, 0, 0],
        [Number.NaN, 0, 0],
    ];
    expect(triangleGap(none, ground).distance).toBe(Number.POSITIVE_INFINITY);
    expect(triangleGap(ground, none)).toEqual({
        distance: Number.POSITIVE_INFINITY,
        at: [ground[0], none[0]],
    });
    expect(triangleGap(bad, ground).distance).not.toBeNaN();
});
