import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lineGap, segmentGap } from '../../language/src/physics/segments.ts';
import { lerp, norm, scale, subtract, type Vec } from '../../language/src/physics/vector.ts';
import { gainLeft, point, roundingLeaves } from './nearest.ts';
import reference from './reference/segment-distance.json' with { type: 'json' };

const vec = (point: number[]) => point as unknown as Vec;

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

test('where the carrying lines meet beyond both, the end that comes nearest is found, whichever it is', () => {
    // The second one’s line meets the first one’s a metre beyond its end, and three beyond its own.
    const [a, b, c, d]: [Vec, Vec, Vec, Vec] = [
        [0, 0, 0],
        [10, 0, 0],
        [5, 2, 0],
        [8, 1, 0],
    ];
    for (const [from, to] of [
        [a, b],
        [b, a],
    ] as const) {
        for (const [start, end] of [
            [c, d],
            [d, c],
        ] as const) {
            const gap = segmentGap(from, to, start, end);
            expect(gap.distance).toBeCloseTo(1, 12);
            expect(gap.at).toEqual([[8, 0, 0], d]);
            expect(segmentGap(start, end, from, to).distance).toBeCloseTo(1, 12);
        }
    }
});

test('a line of one point is no line', () => {
    expect(lineGap([[0, 0, 0]], [[1, 0, 0]])).toBeUndefined();
});

test('no pair of points on two segments is nearer than the pair found', () => {
    fc.assert(
        fc.property(point, point, point, point, (a, b, c, d) => {
            const gap = segmentGap(a, b, c, d);
            // Nearer than rounding there is no direction between the two to judge by.
            fc.pre(gap.distance > 1e-9);
            expect(gainLeft([a, b], [c, d], gap.at)).toBeLessThanOrEqual(
                roundingLeaves([a, b], [c, d], gap.distance),
            );
        }),
        { numRuns: 2000 },
    );
});

test('the nearest points of a segment and one that ends a millimetre beside its end are known to a micrometre', () => {
    const [a, b]: [Vec, Vec] = [
        [0, 0, -0.6767256432146658],
        [0, 0.0000018003242523154398, 0],
    ];
    const [c, d]: [Vec, Vec] = [
        [0, -59.99999999992874, -59.71741055461733],
        [0, -0.0009981996757524314, 0],
    ];
    const gap = segmentGap(a, b, c, d);
    expect(gap.distance).toBeCloseTo(0.001, 12);
    expect(gainLeft([a, b], [c, d], gap.at)).toBeLessThanOrEqual(
        roundingLeaves([a, b], [c, d], gap.distance),
    );
    expect(roundingLeaves([a, b], [c, d], gap.distance)).toBeLessThan(1e-7);
});

test('the judge finds what is left to gain: points a centimetre off the nearest do not pass', () => {
    const [first, second]: [Vec[], Vec[]] = [
        [
            [0, 0, 0],
            [10, 0, 0],
        ],
        [
            [5, -5, 1],
            [5, 5, 1],
        ],
    ];
    const at = (off: number): [Vec, Vec] => [
        [5 + off, 0, 0],
        [5, 0, 1],
    ];
    expect(gainLeft(first, second, at(0))).toBeLessThanOrEqual(roundingLeaves(first, second, 1));
    expect(gainLeft(first, second, at(0.01))).toBeGreaterThan(1000 * roundingLeaves(first, second, 1));
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

test('coordinates that are no numbers give an infinite distance, not a wrong one', () => {
    const bad: Vec = [Number.NaN, 0, 0];
    expect(segmentGap(bad, [1, 0, 0], [0, 1, 0], [1, 1, 0]).distance).toBe(Number.POSITIVE_INFINITY);
});
