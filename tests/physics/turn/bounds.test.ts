import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ChainLine, runChain } from '../../../language/src/physics/chain/run.ts';
import { finish } from '../../../language/src/physics/steps.ts';
import { leastSway } from '../../../language/src/physics/sway.ts';
import { courseOf } from '../../../language/src/physics/turn/course.ts';
import { envelope, type JudgedLine } from '../../../language/src/physics/turn/envelope.ts';
import { layOut } from '../../../language/src/physics/turn/manoeuvre.ts';
import {
    firstWithin,
    MOST_WORK,
    nearest,
    newTally,
    type Tally,
    workOf,
} from '../../../language/src/physics/turn/meeting.ts';
import { pairsInTurn, turnMargin } from '../../../language/src/physics/turn/pairs.ts';
import { passage } from '../../../language/src/physics/turn/passing.ts';
import { sensitivityInSteps } from '../../../language/src/physics/turn/sensitivity.ts';
import { sweep } from '../../../language/src/physics/turn/swept.ts';
import { tightestInSteps } from '../../../language/src/physics/turn/tightest.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';
import { DEGREE } from '../spreads.ts';

const line = (towPoint: Vec, astern: number): JudgedLine => ({
    towPoint,
    layback: towPoint[0] + astern,
    sway: 4 * DEGREE,
    cap: 3,
});
const staggered = [
    line([-0.3, 1.4, 2.4], 16),
    line([-0.3, -1.4, 2.4], 24),
    line([2, -6, 5.5], 33),
    line([2, 6, 6.5], 44),
];

/** A look at one moment compares one fan with another, each of at most a dozen triangles. */
const ONE_LOOK = 150;

/** Whether every number in it is one. */
function isSound(figure: unknown): boolean {
    if (typeof figure === 'number') return Number.isFinite(figure);
    return typeof figure !== 'object' || figure === null || Object.values(figure).every(isSound);
}

/** Of an envelope: its allowance is no figure. */
const figuresOf = (found: ReturnType<typeof envelope>) => found && [found.noFoul, found.allWorking];

describe('a search that may cost only so much', () => {
    const turn = layOut({ speed: 4.116, radius: 50, side: 'port' })!;
    const [one, other] = staggered.map((each) => sweep(courseOf(each, turn)!, each)) as [
        ReturnType<typeof sweep>,
        ReturnType<typeof sweep>,
    ];

    test('is broken off, and says so: what it found may not be the nearest', () => {
        const full = nearest(one, other, newTally());
        const short = newTally(10);
        const broken = nearest(one, other, short);
        if (!full || full === 'unsettled' || !broken || broken === 'unsettled') throw new Error('they meet');
        expect(full.rough).toBeUndefined();
        expect(broken.rough).toBe(true);
        expect(broken.distance).toBeGreaterThanOrEqual(full.distance);
        expect(workOf(short)).toBeLessThan(10 + ONE_LOOK);
    });

    test('that found nothing by then is unsettled, and not taken for clear', () => {
        expect(nearest(one, other, newTally(1), 0.3, true)).toBe('unsettled');
        expect(firstWithin(one, other, newTally(1), 0.3)).toBe('unsettled');
        expect(passage(one.course, other.course, newTally(1))).toBeUndefined();
        const [a, b] = staggered.map((each) => ({ ...each, course: courseOf(each, turn)! }));
        expect(finish(turnMargin(a!, b!, newTally(1)))).toEqual({ outcome: 'unsettled' });
        expect(pairsInTurn([a!, b!], turn, 0.25, 0.5, newTally(1))).toEqual({
            pairs: [],
            unsettled: [[0, 1]],
        });
    });

    test('a search may cost no more than its own share, however much is allowed to all', () => {
        const tally = newTally(Number.POSITIVE_INFINITY, 5);
        nearest(one, other, tally);
        expect(workOf(tally)).toBeLessThan(5 + ONE_LOOK);
    });

    test.each([1, 30, 300, 1000])(
        'an envelope of no more work than %i says where it could not tell',
        (most) => {
            const { noFoul, tally } = envelope(staggered, { speed: 4.116, side: 'port', most })!;
            expect(noFoul.outcome).not.toBe('free');
            const full = envelope(staggered, { speed: 4.116, side: 'port' })!.noFoul;
            expect(noFoul.radius).toBeGreaterThanOrEqual(full.radius);
            if (noFoul.outcome === 'free' || noFoul.limit.kind !== 'unsettled')
                throw new Error('enough work');
            expect(noFoul.limit.lines).toHaveLength(2);
            expect(workOf(tally)).toBeLessThan(most + ONE_LOOK);
        },
    );
});

test('however wide the range, no more than a few hundred turns are looked at', () => {
    let looked = 0;
    const fault = (radius: number) => {
        looked++;
        return radius < 1e100 ? 'foul' : undefined;
    };
    const found = finish(tightestInSteps({ tightest: 1e-300, widest: 1e300 }, fault, (radius) => radius));
    expect(found.outcome).toBe('limited');
    expect(looked).toBeLessThan(300);
});

test('however much sway, a margin is found in a few dozen looks, and none beyond square to the line', () => {
    let looked = 0;
    const found = finish(
        leastSway((sway) => {
            looked++;
            return sway > 1 ? 'touch' : undefined;
        }, Number.POSITIVE_INFINITY),
    );
    expect(found!.sway).toBeCloseTo(1, 3);
    expect(looked).toBeLessThan(30);
    const square = finish(leastSway((sway) => (sway > 1.6 ? 'touch' : undefined), Number.POSITIVE_INFINITY));
    expect(square).toBeUndefined();
});

/** Anything that a slip of the finger, a wrong unit or a fault of ours may bring. */
const anyNumber = fc.oneof(
    fc.double(),
    fc.double({ min: -100, max: 100 }),
    fc.constantFrom(0, -0, 1, -1, 15, 1e9, 1e-9, 1e308, -1e308, 5e-324, Number.NaN, Infinity, -Infinity),
);
const maybe = <T>(usual: fc.Arbitrary<T>) => fc.oneof({ weight: 3, arbitrary: usual }, anyNumber);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const wildLine = fc.record(
    {
        towPoint: fc.tuple(maybe(between(-2, 6)), maybe(between(-9, 9)), maybe(between(0, 10))),
        layback: maybe(between(0.5, 90)),
        sway: maybe(between(0, 8 * DEGREE)),
        cap: maybe(between(0, 5)),
        leastSpeed: maybe(between(0, 5)),
    },
    { requiredKeys: ['towPoint', 'layback', 'sway'] },
);
const wildTurn = fc.record(
    {
        speed: maybe(between(1, 15)),
        side: fc.constantFrom('port' as const, 'starboard' as const),
        angle: maybe(between(0.1, 8)),
        ramp: maybe(between(0, 20)),
        turnSpeed: maybe(between(1, 7)),
        after: maybe(between(0, 40)),
        contact: maybe(between(0, 1)),
    },
    { requiredKeys: ['speed', 'side'] },
);

test('whatever the numbers, an envelope ends within its work, and is none or all numbers', () => {
    fc.assert(
        fc.property(fc.array(wildLine, { minLength: 1, maxLength: 3 }), wildTurn, (lines, turn) => {
            const most = 2000;
            const range = { tightest: 30, widest: 60 };
            const found = envelope(lines, { ...turn, range, most });
            if (!found) return;
            expect(isSound(figuresOf(found))).toBe(true);
            expect(workOf(found.tally)).toBeLessThan(most + 10 * ONE_LOOK);
        }),
        { numRuns: 1500 },
    );
});

test('whatever the numbers, pairs in a turn end within their work, and all of them are numbers', () => {
    fc.assert(
        fc.property(
            wildLine,
            wildLine,
            wildTurn,
            maybe(between(15, 250)),
            (a, b, { contact, ...turn }, radius) => {
                const laid = layOut({ ...turn, radius });
                if (!laid) return;
                const courses = [a, b].flatMap((each) => courseOf(each, laid) ?? []);
                if (courses.length < 2) return;
                const tally: Tally = newTally(2000);
                const turning = [a, b].map(({ sway, cap }, index) => ({
                    course: courses[index]!,
                    sway,
                    cap,
                }));
                const found = pairsInTurn(turning, laid, contact ?? 0.25, 0.5, tally);
                for (const { distance, time, turned, fromTowPoint } of found.pairs) {
                    expect(isSound([time, turned, fromTowPoint])).toBe(true);
                    expect(distance).toBeGreaterThanOrEqual(0);
                }
                expect(workOf(tally)).toBeLessThan(2000 + 10 * ONE_LOOK);
            },
        ),
        { numRuns: 1500 },
    );
});

test('of thousands of plans that can be, every tightest turn and every pair is told in numbers', () => {
    const anyLine = fc.record({
        towPoint: fc.tuple(between(-2, 6), between(-9, 9), between(0.5, 10)),
        layback: between(3, 90),
        sway: between(0, 8 * DEGREE),
        cap: between(0, 5),
        leastSpeed: between(0, 5),
    });
    fc.assert(
        fc.property(anyLine, anyLine, between(1, 8), between(15, 250), (a, b, speed, radius) => {
            const range = { tightest: radius, widest: 1.3 * radius };
            const found = envelope([a, b], { speed, side: 'starboard', range })!;
            expect(isSound(figuresOf(found))).toBe(true);
            expect(workOf(found.tally)).toBeLessThan(MOST_WORK / 2);
        }),
        { numRuns: 2000 },
    );
});

test('whatever the numbers, a chain gives up or answers in numbers, with no pull below zero', () => {
    const wildTow = fc.record({
        height: maybe(between(-2, 10)),
        layback: maybe(between(5, 80)),
        diameter: maybe(between(5e-4, 2e-3)),
        density: maybe(fc.constantFrom(960, 1140, 1780)),
        dragArea: maybe(between(8e-4, 8e-3)),
        mass: maybe(between(0.08, 1.2)),
        weight: maybe(between(-1, 8)),
    });
    fc.assert(
        fc.property(wildTow, wildTurn, maybe(between(15, 150)), (tow, { contact: _, ...turn }, radius) => {
            const laid = layOut({ ...turn, radius });
            if (!laid) return;
            const chain: ChainLine = {
                towPoint: [1, 2, tow.height],
                layback: tow.layback,
                links: 8,
                tow: {
                    sections: [{ length: 100, diameter: tow.diameter, density: tow.density }],
                    lure: { dragArea: tow.dragArea, mass: tow.mass, weightInWater: tow.weight },
                },
            };
            const run = runChain(chain, laid, [0, 2, 4, 8]);
            for (;;) {
                const { value, done } = run.next();
                if (done) {
                    if (value.kind === 'done') expect(value.evaluations).toBeLessThan(250_000);
                    return;
                }
                expect(isSound(value)).toBe(true);
                expect(value.tension).toBeGreaterThanOrEqual(0);
                expect(value.lureTension).toBeGreaterThanOrEqual(0);
            }
        }),
        { numRuns: 1000 },
    );
});

test('what a turn hangs on is looked for in turns that can be, whatever a step makes of them', () => {
    const found = finish(
        sensitivityInSteps([line([0, 0, 3], 1.5), line([0, 1, 3], 20)], {
            speed: 0.2,
            side: 'port',
            range: { tightest: 40, widest: 60 },
        }),
    )!;
    // Half a knot slower than it runs, or two metres shorter than it is, is nothing that can be.
    expect(found.changes.map(({ change }) => change)).not.toContainEqual({ what: 'speed', by: -0.257 });
    expect(isSound(found.changes.map(({ envelope }) => figuresOf(envelope)))).toBe(true);
});
