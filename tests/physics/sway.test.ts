import fc from 'fast-check';
import { expect, test } from 'vitest';
import { remedy } from '../../language/src/physics/remedy.ts';
import {
    clearance,
    directlyAstern,
    fan,
    type SwayingLine,
    swayAtLure,
    swayMargin,
    swayReached,
} from '../../language/src/physics/sway.ts';
import { mirror, norm, subtract, type Vec } from '../../language/src/physics/vector.ts';
import { DEGREE, linesAtRest, pairs, SPREADS } from './spreads.ts';

const swaying = (line: readonly Vec[], degrees = 4, cap?: number): SwayingLine => ({
    line,
    sway: degrees * DEGREE,
    ...(cap !== undefined && { cap }),
});
const leastGap = (astern: readonly number[], degrees: number) =>
    Math.min(
        ...pairs(linesAtRest(astern)).map(
            ([a, b]) => clearance(swaying(a, degrees), swaying(b, degrees))!.distance,
        ),
    );
const leastMargin = (astern: readonly number[]) =>
    Math.min(
        ...pairs(linesAtRest(astern)).map(([a, b]) => {
            const margin = swayMargin(swaying(a), swaying(b))!;
            return (margin.outcome === 'touch' ? margin.sway : margin.upTo) / DEGREE;
        }),
    );

test.each(SPREADS)('$name, straight: least gap and sway margin are the computed ones', (spread) => {
    expect(Math.abs(leastGap(spread.astern, 4) - spread.gap[0])).toBeLessThanOrEqual(0.02);
    expect(Math.abs(leastMargin(spread.astern) - spread.margin[0])).toBeLessThanOrEqual(0.2);
});

test('without sway all four tie at the gap of the corners’ own tow points', () => {
    for (const { astern } of SPREADS) expect(leastGap(astern, 0)).toBeCloseTo(2.8, 9);
});

test('with sway the staggered spread is the safest, as every crew holds: common practice, no source', () => {
    const margins = SPREADS.map(({ astern }) => leastMargin(astern));
    expect(Math.max(...margins)).toBe(margins[0]);
    expect(margins[0]).toBeGreaterThan(2 * Math.max(...margins.slice(1)));
});

test('a longer line from the same height passes over the shorter one’s lure, so stagger buys sway', () => {
    const short = swaying(directlyAstern([0, 1.4, 2.4], 16));
    const level = swaying(directlyAstern([0, -1.4, 2.4], 16));
    const longer = swaying(directlyAstern([0, -1.4, 2.4], 40));
    const [levelled, staggered] = [swayMargin(short, level)!, swayMargin(short, longer)!];
    expect(levelled.outcome).toBe('touch');
    expect(levelled.outcome === 'touch' && levelled.sway / DEGREE).toBeLessThan(5);
    expect(staggered.outcome === 'clear' || staggered.sway / DEGREE > 15).toBe(true);
    // Over the shorter lure the longer line is still at (1 − 16/40)·2.4 m.
    const below = norm(subtract([-16, 0, 0], [-16, 0, (1 - 16 / 40) * 2.4]));
    expect(clearance(swaying(short.line, 5), swaying(longer.line, 5))!.distance).toBeLessThan(below);
});

test('a cap in metres ends a long line’s sway', () => {
    const line = swaying(directlyAstern([0, 0, 5], 60), 4, 3);
    expect(swayAtLure(line)).toBeCloseTo(3, 12);
    expect(swayReached(line)).toBeCloseTo(Math.asin(3 / 60), 12);
    const short = swaying(directlyAstern([0, 0, 5], 20), 4, 3);
    expect(swayAtLure(short)).toBeCloseTo(20 * Math.sin(4 * DEGREE), 12);
});

test('with a cap a pair may stay clear at any sway', () => {
    const [a, b] = [directlyAstern([0, 5, 5], 60), directlyAstern([0, -5, 5], 60)] as const;
    expect(swayMargin(swaying(a, 4, 3), swaying(b, 4, 3))).toEqual({ outcome: 'clear', upTo: 30 * DEGREE });
    const open = swayMargin(swaying(a), swaying(b))!;
    // Two equal parallel lines meet at the lures when each has swayed half of what parts them.
    expect(open.outcome === 'touch' && open.sway).toBeCloseTo(Math.asin((5 - 0.125) / 60), 3);
});

const towPoint = fc.tuple(
    fc.double({ min: -1, max: 4, noNaN: true }),
    fc.double({ min: -8, max: 8, noNaN: true }),
    fc.double({ min: 0.5, max: 9, noNaN: true }),
);
const lineAtRest = fc
    .tuple(towPoint, fc.double({ min: 5, max: 90, noNaN: true }), fc.double({ min: 0, max: 8, noNaN: true }))
    .map(([point, astern, sway]) => swaying(directlyAstern(point, astern), sway));

test('at its margin a pair is at the contact distance, and at no smaller sway', () => {
    fc.assert(
        fc.property(
            lineAtRest,
            lineAtRest,
            fc.double({ min: 0, max: 0.999, noNaN: true }),
            (first, second, part) => {
                const margin = swayMargin(first, second)!;
                const at = (sway: number) => clearance({ ...first, sway }, { ...second, sway })!.distance;
                const sway = margin.outcome === 'touch' ? margin.sway : margin.upTo;
                if (margin.outcome === 'touch' && sway > 0) {
                    expect(at(sway)).toBeLessThanOrEqual(0.25);
                    expect(at(Math.max(0, sway - 0.011 * DEGREE))).toBeGreaterThan(0.25 - 1e-9);
                }
                // A wider fan's flat edge may fall 0.9 % short of a narrower one's.
                if (sway > 0) expect(at(sway * part)).toBeGreaterThan(0.25 - 0.009 * 94);
            },
        ),
        { numRuns: 100 },
    );
});

test('mirror the boat and clearance and margin stay', () => {
    fc.assert(
        fc.property(lineAtRest, lineAtRest, (first, second) => {
            const mirrored = (line: SwayingLine) => ({ ...line, line: line.line.map(mirror) });
            const [one, other] = [mirrored(first), mirrored(second)];
            expect(clearance(one, other)!.distance).toBeCloseTo(clearance(first, second)!.distance, 6);
            const [was, is] = [swayMargin(first, second)!, swayMargin(one, other)!];
            expect(is.outcome).toBe(was.outcome);
            if (is.outcome === 'touch' && was.outcome === 'touch') expect(is.sway).toBeCloseTo(was.sway, 3);
        }),
    );
});

test('a line in many pieces sweeps what the straight line sweeps', () => {
    fc.assert(
        fc.property(lineAtRest, lineAtRest, fc.integer({ min: 2, max: 6 }), (first, second, pieces) => {
            const [from, to] = [first.line[0]!, first.line[1]!];
            const cut = Array.from({ length: pieces + 1 }, (_, index): Vec => {
                const part = index / pieces;
                return [
                    from[0] + (to[0] - from[0]) * part,
                    from[1] + (to[1] - from[1]) * part,
                    from[2] + (to[2] - from[2]) * part,
                ];
            });
            const whole = clearance(first, second)!.distance;
            expect(clearance({ ...first, line: cut }, second)!.distance).toBeCloseTo(whole, 5);
        }),
    );
});

test('a wide fan keeps its edge within a hundredth of the arc', () => {
    const line = swaying(directlyAstern([0, 0, 0], 50), 30);
    const triangles = fan(line);
    for (const [, left, right] of triangles) {
        const middle = Math.hypot((left[0] + right[0]) / 2, (left[1] + right[1]) / 2);
        expect(middle / 50).toBeGreaterThan(0.99);
    }
    expect(Math.atan2(triangles[0]![1][1], -triangles[0]![1][0])).toBeCloseTo(30 * DEGREE, 9);
});

test('each remedy, taken alone, clears the pair and no smaller one does', () => {
    // Two corners nearly level with each other, swaying 8°.
    const short = swaying(directlyAstern([0, 1.4, 2.4], 16), 8);
    const other = swaying(directlyAstern([0, -1.4, 2.4], 18), 8);
    const { stagger, height, width } = remedy(short, other)!;
    const shifted = (by: { astern?: number; up?: number; out?: number }) =>
        clearance(
            short,
            swaying(
                [
                    [0, -1.4 - (by.out ?? 0), 2.4 + (by.up ?? 0)],
                    [-18 - (by.astern ?? 0), -1.4 - (by.out ?? 0), 0],
                ],
                8,
            ),
        )!.distance;
    expect(stagger).toBeGreaterThan(0);
    for (const [change, figure] of [
        ['astern', stagger!],
        ['out', width!],
    ] as const) {
        expect(shifted({ [change]: figure })).toBeGreaterThanOrEqual(0.25);
        expect(shifted({ [change]: figure - 0.02 })).toBeLessThan(0.25);
    }
    // Height helps only as far as the lines are at their lures' height already.
    if (height !== undefined) expect(shifted({ up: height })).toBeGreaterThanOrEqual(0.25);
});

test('a pair that is clear needs no remedy, and one that only width can clear says so', () => {
    const far = remedy(swaying(directlyAstern([0, 6, 6], 40)), swaying(directlyAstern([0, -6, 6], 20)));
    expect(far).toEqual({ stagger: 0, height: 0, width: 0 });
    // Two lures at one place on the water: no height parts them.
    const same = remedy(swaying(directlyAstern([0, 0.1, 3], 30)), swaying(directlyAstern([0, 0, 3], 30)))!;
    expect(same.height).toBeUndefined();
    expect(same.width).toBeGreaterThan(3);
});

test('a line without a lure has no clearance, margin or remedy', () => {
    const [none, some] = [swaying([]), swaying(directlyAstern([0, 0, 3], 30))];
    expect(clearance(none, some)).toBeUndefined();
    expect(swayMargin(some, none)).toBeUndefined();
    expect(remedy(some, none)).toBeUndefined();
});
