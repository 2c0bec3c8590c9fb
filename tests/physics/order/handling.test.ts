import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearingOrder } from '../../../language/src/physics/order/clearing.ts';
import { crossing, type HandledLine } from '../../../language/src/physics/order/crossing.ts';
import { broken } from '../../../language/src/physics/order/precedence.ts';
import { retrievingOrder, settingOrder } from '../../../language/src/physics/order/setting.ts';
import { mirror, type Vec } from '../../../language/src/physics/vector.ts';

const line = (rodTip: Vec, towPoint: Vec, astern: number): HandledLine => ({ rodTip, towPoint, astern });

/** Corners on flat clips at the transom, rigger rods inboard of the corner rods, a shotgun from the bridge. */
const SHORT_CORNER = 0;
const LONG_CORNER = 1;
const SHORT_RIGGER = 2;
const LONG_RIGGER = 3;
const SHOTGUN = 4;
const boat: readonly HandledLine[] = [
    line([0.2, 1.4, 2.3], [0, 1.3, 0.9], 16),
    line([0.2, -1.4, 2.3], [0, -1.3, 0.9], 24),
    line([0.9, -1.1, 2.4], [2, -6, 5.5], 33),
    line([0.9, 1.1, 2.4], [2, 6, 6.5], 44),
    line([2, 0, 5], [2, 0, 8], 62),
];

test('a rigger line on its way to the pole crosses a flat line already set, not the other way about', () => {
    const onTheWay = crossing(boat[LONG_RIGGER]!, boat[SHORT_CORNER]!)!;
    expect(onTheWay.distance).toBeLessThanOrEqual(0.25);
    expect(crossing(boat[SHORT_CORNER]!, boat[LONG_RIGGER]!)).toBeUndefined();
    expect(crossing(boat[LONG_RIGGER]!, boat[LONG_CORNER]!)).toBeUndefined();
});

test('rigger lines are set before flat lines, longest first: common practice, no source', () => {
    const { order, cycles, demands } = settingOrder(boat);
    expect(order).toEqual([SHOTGUN, LONG_RIGGER, SHORT_RIGGER, LONG_CORNER, SHORT_CORNER]);
    expect(cycles).toEqual([]);
    expect(demands.map(({ first, second, mover }) => [first, second, mover])).toEqual(
        expect.arrayContaining([
            [LONG_RIGGER, SHORT_CORNER, LONG_RIGGER],
            [SHORT_RIGGER, LONG_CORNER, SHORT_RIGGER],
        ]),
    );
});

test('flat lines come in first, shortest first: common practice, no source', () => {
    const { order, demands } = retrievingOrder(boat);
    expect(order).toEqual([SHORT_CORNER, LONG_CORNER, SHORT_RIGGER, LONG_RIGGER, SHOTGUN]);
    expect(demands.map(({ first, second }) => [first, second])).toContainEqual([SHORT_CORNER, LONG_RIGGER]);
});

test('however the lines are listed, the longest goes out first and the shortest comes in first', () => {
    const free = [33, 16, 62, 24].map((astern, index) => line([0, 4 * index, 3], [0, 4 * index, 3], astern));
    expect(settingOrder(free)).toEqual({ order: [2, 0, 3, 1], cycles: [], demands: [] });
    expect(retrievingOrder(free)).toEqual({ order: [1, 3, 0, 2], cycles: [], demands: [] });
});

test('geometry outdoes length: a rigger shorter than the flat line it would cross still goes first', () => {
    const lines = [
        { ...boat[SHORT_CORNER]!, astern: 40 },
        { ...boat[LONG_RIGGER]!, astern: 30 },
    ];
    expect(settingOrder(lines).order).toEqual([1, 0]);
    expect(retrievingOrder(lines).order).toEqual([0, 1]);
});

test('a stated order that sets the corner first breaks the demand that names the pair and the stage', () => {
    const { demands } = settingOrder(boat);
    const wrong = broken([SHOTGUN, SHORT_CORNER, LONG_RIGGER, SHORT_RIGGER, LONG_CORNER], demands);
    expect(wrong).toHaveLength(1);
    expect(wrong[0]).toMatchObject({ first: LONG_RIGGER, second: SHORT_CORNER });
    expect(['paying out', 'hauling to the clip']).toContain(wrong[0]!.stage);
});

test('two lines whose ways cross each other’s set places are a ring, and are told as one', () => {
    // Rods crossed: each is paid out where the other is towed.
    const crossed = [line([0, 1, 2.4], [0, -1, 2.4], 20), line([0, -1, 2.4], [0, 1, 2.4], 20)];
    expect(settingOrder(crossed).cycles).toEqual([[0, 1]]);
    expect(retrievingOrder(crossed).cycles).toEqual([[0, 1]]);
});

test('after a strike on a rigger the corner on its side is cleared first, for the line falls across it', () => {
    const { order } = clearingOrder(boat, { hooked: LONG_RIGGER })!;
    expect(order[0]!.line).toBe(SHORT_CORNER);
    expect(['release', 'run']).toContain(order[0]!.reason.kind);
    expect(order.map((entry) => entry.line).sort()).toEqual([0, 1, 2, 4]);
});

test('a running line meets the lines beside it before those further out, on either side', () => {
    const abreast = [-4, -2, 0, 2, 4].map((y) => line([0, y, 2], [0, y, 2], 30));
    const { order } = clearingOrder(abreast, { hooked: 2, run: 30 })!;
    expect(order.map((entry) => entry.line)).toEqual([1, 3, 0, 4]);
    const aside = order.map(({ reason }) => (reason.kind === 'run' ? reason.aside : Number.NaN));
    expect(order.map(({ reason }) => reason.kind === 'run' && reason.side)).toEqual([
        'starboard',
        'port',
        'starboard',
        'port',
    ]);
    expect(aside[0]).toBeCloseTo(aside[1]!, 6);
    expect(aside[2]).toBeGreaterThan(aside[0]!);
    // The running line reaches the next lure, 2 m aside and as far astern, all but the contact distance.
    expect(aside[0]!).toBeCloseTo(2 - 0.25, 2);
});

test('a fish starts at the struck lure, at its own offset: what lies straight astern of it is met first, to no side', () => {
    // Set, the long line is metres above the short one, 0.1 m beside it; its lure runs where the fish runs.
    const lines = [
        line([0.9, 0.5, 2.4], [0.9, 0.5, 2.4], 16),
        line([2, 0.4, 7], [2, 0.4, 7], 70),
        line([0.9, -3.3, 2.4], [0.9, -3.3, 2.4], 16),
    ];
    const { order } = clearingOrder(lines, { hooked: 0 })!;
    expect(order.map((entry) => [entry.line, entry.reason.kind])).toEqual([
        [1, 'astern'],
        [2, 'run'],
    ]);
    // The other lure runs 3.8 m to starboard of the struck one, and just as far back.
    expect(order[1]!.reason).toMatchObject({ kind: 'run', side: 'starboard' });
    expect(order[1]!.reason.kind === 'run' && order[1]!.reason.aside).toBeCloseTo(3.8 - 0.25, 1);
});

test('lines that the running one passes well under are left for last, shortest first', () => {
    const lines = [
        line([0, 0, 2], [0, 0, 2], 20),
        line([2, 3, 9], [2, 3, 9], 75),
        line([2, -3, 8], [2, -3, 8], 62),
    ];
    expect(clearingOrder(lines, { hooked: 0, run: 25 })!.order).toEqual([
        { line: 2, reason: { kind: 'rest' } },
        { line: 1, reason: { kind: 'rest' } },
    ]);
});

test('what is in the way of taking in a line to be cleared goes before it, and says of which', () => {
    // The rigger to port is met first; the corner beside it would be swept across on the rigger's way in.
    const lines = [
        line([0.9, -1.1, 2.4], [2, -6, 5.5], 33),
        line([0.9, 1.1, 2.4], [2, 6, 6.5], 44),
        line([0.2, 1.4, 2.3], [0, 1.3, 0.9], 16),
    ];
    const { order, demands } = clearingOrder(lines, { hooked: 0 })!;
    expect(demands.map(({ first, second }) => [first, second])).toContainEqual([2, 1]);
    const [first, second] = order;
    expect([first!.line, second!.line]).toEqual([2, 1]);
    expect(first!.reason).toEqual({ kind: 'in the way', of: 1 });
    // The two rigger lures run 12 m apart.
    expect(second!.reason).toMatchObject({ kind: 'run', side: 'port' });
    expect(second!.reason.kind === 'run' && second!.reason.aside).toBeCloseTo(12 - 0.25, 2);
});

test('a ring among the lines to be cleared is told by their places in the whole list', () => {
    const lines = [
        line([0, 1, 2.4], [0, -1, 2.4], 20),
        line([0, -1, 2.4], [0, 1, 2.4], 20),
        line([0, 8, 2.4], [0, 8, 2.4], 20),
    ];
    const { cycles } = clearingOrder(lines, { hooked: 2, run: 25 })!;
    expect(cycles).toEqual([[0, 1]]);
    expect(clearingOrder([lines[2]!, lines[0]!, lines[1]!], { hooked: 0, run: 25 })!.cycles).toEqual([
        [1, 2],
    ]);
});

test('a line that is not in the list cannot be hooked', () => {
    expect(clearingOrder(boat, { hooked: 9 })).toBeUndefined();
});

const anyLine = fc
    .tuple(
        fc.tuple(
            fc.double({ min: 0, max: 3, noNaN: true }),
            fc.double({ min: -2, max: 2, noNaN: true }),
            fc.double({ min: 1, max: 4, noNaN: true }),
        ),
        fc.tuple(
            fc.double({ min: 0, max: 3, noNaN: true }),
            fc.double({ min: -7, max: 7, noNaN: true }),
            fc.double({ min: 1, max: 9, noNaN: true }),
        ),
        fc.double({ min: 8, max: 70, noNaN: true }),
    )
    .map(([rodTip, towPoint, astern]) => line(rodTip, towPoint, astern));

test('taking in is setting backwards: the same pairs, the other way round', () => {
    fc.assert(
        fc.property(fc.array(anyLine, { minLength: 2, maxLength: 5 }), (lines) => {
            const out = settingOrder(lines).demands.map(({ first, second }) => `${first} ${second}`);
            const back = retrievingOrder(lines).demands.map(({ first, second }) => `${second} ${first}`);
            expect(back.sort()).toEqual(out.sort());
        }),
        { numRuns: 40 },
    );
});

test('mirror the boat and the orders stay', () => {
    fc.assert(
        fc.property(fc.array(anyLine, { minLength: 2, maxLength: 5 }), (lines) => {
            const mirrored = lines.map(({ rodTip, towPoint, astern }) =>
                line(mirror(rodTip), mirror(towPoint), astern),
            );
            expect(settingOrder(mirrored).order).toEqual(settingOrder(lines).order);
            const [was, is] = [clearingOrder(lines, { hooked: 0 })!, clearingOrder(mirrored, { hooked: 0 })!];
            expect(is.order.map((entry) => entry.line)).toEqual(was.order.map((entry) => entry.line));
        }),
        { numRuns: 40 },
    );
});
