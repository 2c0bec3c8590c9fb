import { expect, test } from 'vitest';
import { remedy } from '../../language/src/physics/remedy.ts';
import {
    directlyAstern,
    fan,
    type SwayingLine,
    swayAtLure,
    swayMargin,
    swayReached,
} from '../../language/src/physics/sway.ts';
import { cross, lerp, norm, subtract, type Vec } from '../../language/src/physics/vector.ts';
import { DEGREE } from './spreads.ts';

const swaying = (line: readonly Vec[], degrees: number): SwayingLine => ({ line, sway: degrees * DEGREE });
const inPieces = ([from, to]: readonly [Vec, Vec], ...parts: readonly number[]) => [
    from,
    ...parts.map((part) => lerp(from, to, part)),
    to,
];

/** m² */
const areaOf = (line: SwayingLine) =>
    fan(line)
        .map(([a, b, c]) => norm(cross(subtract(b, a), subtract(c, a))) / 2)
        .reduce((sum, area) => sum + area, 0);

test('a line on the water sweeps the sector of a circle in triangles, in however many pieces it is given', () => {
    const line = directlyAstern([0, 1, 0], 40);
    // Six triangles of 15° each: 6 · ½ · R² · sin 15°.
    const sector = 3 * 40 ** 2 * Math.sin(15 * DEGREE);
    expect(areaOf(swaying(line, 45))).toBeCloseTo(sector, 8);
    expect(areaOf(swaying(inPieces(line, 0.3), 45))).toBeCloseTo(sector, 8);
    expect(areaOf(swaying(inPieces(line, 0.1, 0.5, 0.9), 45))).toBeCloseTo(sector, 8);
});

test('a line on any bearing sways alike to either side of it, at its own distance', () => {
    // 30 m astern and 40 m aside are 50 m.
    const line: Vec[] = [
        [2, 3, 4],
        [-28, -37, 0],
    ];
    const bearing = Math.atan2(-40, -30);
    const corners = fan(swaying(line, 10)).flat();
    const ends = corners.filter(([x, y]) => Math.hypot(x - 2, y - 3) > 1);
    const angles = ends.map(([x, y]) => (Math.atan2(y - 3, x - 2) - bearing) / DEGREE);
    for (const [x, y, z] of ends) {
        expect(Math.hypot(x - 2, y - 3)).toBeCloseTo(50, 9);
        expect(z).toBe(0);
    }
    expect(Math.min(...angles)).toBeCloseTo(-10, 9);
    expect(Math.max(...angles)).toBeCloseTo(10, 9);
});

test('how far a lure sways is measured from its own tow point', () => {
    const line = swaying(
        [
            [2, 3, 4],
            [-28, -37, 0],
        ],
        10,
    );
    expect(swayAtLure(line)).toBeCloseTo(50 * Math.sin(10 * DEGREE), 9);
    expect(swayReached({ ...line, cap: 5 })).toBeCloseTo(Math.asin(5 / 50), 12);
    const [from, to] = line.line as readonly [Vec, Vec];
    const cut = { ...line, line: inPieces([from, to], 0.1, 0.6) };
    expect(swayAtLure(cut)).toBeCloseTo(50 * Math.sin(10 * DEGREE), 9);
    expect(swayReached({ ...cut, cap: 5 })).toBeCloseTo(Math.asin(5 / 50), 12);
    expect(swayAtLure({ line: [], sway: 1 })).toBe(0);
});

test('a line turns square to its bearing at most, and no margin is looked for beyond', () => {
    const line = swaying(directlyAstern([0, 0, 3], 30), 200);
    expect(swayReached(line)).toBeCloseTo(Math.PI / 2, 12);
    expect(swayAtLure(line)).toBeCloseTo(30, 12);
    // Two lures 60 m apart, each on 30 m of line, meet only when both stand square.
    const [port, starboard] = [30, -30].map((y) => swaying(directlyAstern([0, y, 0], 30), 0)) as [
        SwayingLine,
        SwayingLine,
    ];
    const square = swayMargin(port, starboard, 0.25, 4)!;
    expect(square.outcome === 'touch' && square.sway).toBeGreaterThan(84 * DEGREE);
    expect(square.outcome === 'touch' && square.sway).toBeLessThanOrEqual(Math.PI / 2);
    expect(swayMargin(port, starboard, 0.25, 0.5)).toEqual({ outcome: 'clear', upTo: 0.5 });
});

test('a margin tells how far each of the two lures has swayed by then, and where they meet', () => {
    const [one, other] = [directlyAstern([0, 5, 5], 60), directlyAstern([0, -5, 5], 60)];
    const margin = swayMargin(swaying(one, 0), swaying(other, 0))!;
    if (margin.outcome !== 'touch') throw new Error('They do not touch.');
    // Of the 10 m between them 0.25 m are left.
    expect(margin.atLures).toHaveLength(2);
    for (const atLure of margin.atLures) expect(atLure).toBeCloseTo((10 - 0.25) / 2, 1);
    expect(margin.at[0][1]).toBeCloseTo(0.125, 1);
    expect(margin.at[1][1]).toBeCloseTo(-0.125, 1);
});

test('a remedy changes the longer of two lines, whichever of them is named first', () => {
    const [short, long] = [
        swaying(directlyAstern([0, 1.4, 2.4], 16), 8),
        swaying(directlyAstern([0, -1.4, 2.4], 18), 8),
    ];
    const told = remedy(short, long)!;
    expect(remedy(long, short)).toEqual(told);
    // Let out instead, the shorter one would have to pass the longer first.
    expect(told.stagger).toBeLessThan(4);
});

test('a remedy is the same for lines that are given in pieces', () => {
    const [short, long] = [directlyAstern([0, 1.4, 2.4], 16), directlyAstern([0, -1.4, 2.4], 18)] as const;
    const whole = remedy(swaying(short, 8), swaying(long, 8))!;
    const cut = remedy(swaying(short, 8), swaying(inPieces(long, 0.25, 0.5), 8))!;
    // The pieces are not evenly long, so the points between do not stay quite on the straight line.
    expect(remedy(swaying(short, 8), swaying(inPieces(long, 0.25, 0.5, 0.75), 8))).toEqual({
        height: expect.closeTo(whole.height!, 6),
        stagger: expect.closeTo(whole.stagger!, 6),
        width: expect.closeTo(whole.width!, 6),
    });
    expect(Math.abs(cut.stagger! - whole.stagger!)).toBeLessThan(0.5);
});

test('a higher tow point lifts a line over a lure that runs short of it, in proportion', () => {
    // Over a lure 20 m back the line of 40 m is at half its tow point's height; 0.25 m above it at 0.5 m.
    const short = swaying(directlyAstern([0, 0, 0.01], 20), 0);
    const low = directlyAstern([0, 0, 0.1], 40);
    for (const line of [low, inPieces(low, 0.5), inPieces(low, 0.25, 0.5, 0.75)]) {
        const { height } = remedy(short, swaying(line, 0))!;
        expect(height).toBeGreaterThan(0.4 - 0.02);
        expect(height).toBeLessThan(0.4 + 0.02);
    }
});
