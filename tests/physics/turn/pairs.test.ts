import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finish } from '../../../language/src/physics/steps.ts';
import { CONTACT_DISTANCE, clearance } from '../../../language/src/physics/sway.ts';
import { courseOf } from '../../../language/src/physics/turn/course.ts';
import { layOut, type Manoeuvre } from '../../../language/src/physics/turn/manoeuvre.ts';
import { type Meeting, nearest, newTally } from '../../../language/src/physics/turn/meeting.ts';
import type { TowedLine, TurnModel } from '../../../language/src/physics/turn/model.ts';
import { type PairInTurn, pairsInTurn, turnMargin } from '../../../language/src/physics/turn/pairs.ts';
import { passage } from '../../../language/src/physics/turn/passing.ts';
import { type Swept, sweep } from '../../../language/src/physics/turn/swept.ts';
import { taut } from '../../../language/src/physics/turn/taut.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';
import { DEGREE, SPREADS, TOW_POINTS } from '../spreads.ts';

const boundless = () => newTally(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);

/** The nearest meeting of two lines, whatever the work. */
function meeting(first: Swept, second: Swept): Meeting {
    const met = nearest(first, second, boundless());
    if (!met || met === 'unsettled') throw new Error(met ?? 'apart');
    return met;
}

/** A half turn of 50 m at 4.116 m/s without ramps, then 25 s straight. */
const halfTurn = (side: Manoeuvre['side']) => layOut({ speed: 4.116, radius: 50, side })!;

const towed = (towPoint: Vec, astern: number): TowedLine => ({ towPoint, layback: towPoint[0] + astern });

function turning(astern: readonly number[], side: Manoeuvre['side'], degrees: number) {
    const turn = halfTurn(side);
    const lines = Object.values(TOW_POINTS).map((towPoint, index) => ({
        course: courseOf(towed(towPoint, astern[index]!), turn)!,
        sway: degrees * DEGREE,
    }));
    return pairsInTurn(lines, turn).pairs;
}

const leastGap = (pairs: readonly PairInTurn[]) => Math.min(...pairs.map(({ distance }) => distance));
const leastMargin = (pairs: readonly PairInTurn[]) =>
    Math.min(...pairs.map(({ margin }) => (margin.outcome === 'touch' ? margin.sway : margin.upTo) / DEGREE));

describe('a half turn of 50 m: least gap and sway margin are the computed ones', () => {
    for (const { name, astern, gap, margin } of SPREADS) {
        test.each([
            ['port', 1],
            ['starboard', 2],
        ] as const)(`${name}, to %s`, (side, column) => {
            const pairs = turning(astern, side, 4);
            expect(Math.abs(leastGap(pairs) - gap[column])).toBeLessThanOrEqual(0.02);
            expect(Math.abs(leastMargin(pairs) - margin[column])).toBeLessThanOrEqual(0.2);
        });
    }
});

test('in the turn too the staggered spread is the safest: common practice, no source', () => {
    for (const side of ['port', 'starboard'] as const) {
        const margins = SPREADS.map(({ astern }) => leastMargin(turning(astern, side, 4)));
        expect(Math.max(...margins)).toBe(margins[0]);
    }
});

test('without sway the turn would rank equal distances first, which no crew believes', () => {
    const gaps = SPREADS.map(({ astern }) => leastGap(turning(astern, 'port', 0)));
    const [staggered, , equal] = gaps;
    expect(Math.max(...gaps)).toBe(equal);
    expect(Math.abs(equal! - 2.29)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(staggered! - 0.66)).toBeLessThanOrEqual(0.02);
});

test('reversed, lines pass through each other although no sample need be near', () => {
    const crossed = turning([44, 33, 24, 16], 'port', 0).filter(
        ({ passedThrough }) => passedThrough !== undefined,
    );
    expect(crossed.map(({ lines }) => lines)).toContainEqual([0, 3]);
    for (const { distance, margin } of crossed) {
        expect(distance).toBeLessThan(0.01);
        expect(margin).toMatchObject({ outcome: 'touch', sway: 0 });
    }
    expect(
        turning([16, 24, 33, 44], 'port', 0).some(({ passedThrough }) => passedThrough !== undefined),
    ).toBe(false);
});

test('lines that pass through each other between two samples are found, lines that only near each other are not', () => {
    const turn = layOut({ speed: 4, radius: 200, side: 'port' })!;
    // A line that swings across from port to starboard between its two samples; the boat runs straight before 0 s.
    const swinging =
        (to: number): TurnModel =>
        (line, _, times) => ({
            states: times.map((time, index) => ({
                time,
                line: [line.towPoint, [-20, index === 0 ? 3 : to, 0]],
                speed: 4,
                slack: false,
            })),
        });
    const still: TurnModel = (line, _, times) => ({
        states: times.map((time) => ({ time, line: [line.towPoint, [-20, 0, 1]], speed: 4, slack: false })),
    });
    const atRest = {
        ...turn,
        phases: turn.phases.map((phase) => ({ ...phase, from: { ...phase.from, speed: 0, yawRate: 0 } })),
        end: 1,
    };
    const course = (model: TurnModel, towPoint: Vec) =>
        courseOf({ towPoint, layback: 20 }, atRest, model, 1)!;
    const hanging = course(still, [0, 0, 3]);
    expect(passage(course(swinging(-3), [0, 0.5, 5]), hanging, newTally())).toBeCloseTo(0.55, 1);
    expect(passage(course(swinging(0.6), [0, 0.5, 5]), hanging, newTally())).toBeUndefined();
});

const lines = fc.record({
    towPoint: fc.tuple(
        fc.double({ min: -1, max: 4, noNaN: true }),
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
    ),
    layback: fc.double({ min: 6, max: 60, noNaN: true }),
});
const turns = fc
    .record({
        speed: fc.double({ min: 2, max: 6, noNaN: true }),
        radius: fc.double({ min: 20, max: 150, noNaN: true }),
        side: fc.constantFrom('port' as const, 'starboard' as const),
        ramp: fc.constantFrom(0, 8),
    })
    .map((manoeuvre) => layOut(manoeuvre)!);

test('the search leaves nothing out: at no moment are two lines nearer than the least distance found', () => {
    fc.assert(
        fc.property(
            lines,
            lines,
            turns,
            fc.double({ min: 0, max: 6, noNaN: true }),
            (a, b, turn, degrees) => {
                const [first, second] = [courseOf(a, turn)!, courseOf(b, turn)!];
                const sway = degrees * DEGREE;
                const met = meeting(sweep(first, { sway }), sweep(second, { sway }));
                const at = (time: number) =>
                    clearance({ line: first.at(time).line, sway }, { line: second.at(time).line, sway })!
                        .distance;
                expect(at(met.time)).toBeCloseTo(met.distance, 9);
                for (let step = 0; step <= 200; step++)
                    expect(at((turn.end * step) / 200)).toBeGreaterThan(met.distance * 0.95 - 0.005 - 1e-9);
            },
        ),
        { numRuns: 20 },
    );
});

test('at its margin a pair touches in the turn, and not at a smaller sway', () => {
    fc.assert(
        fc.property(lines, lines, turns, (a, b, turn) => {
            const [first, second] = [courseOf(a, turn)!, courseOf(b, turn)!];
            const margin = finish(
                turnMargin({ course: first, sway: 0 }, { course: second, sway: 0 }, boundless()),
            );
            const least = (sway: number) => meeting(sweep(first, { sway }), sweep(second, { sway })).distance;
            if (margin.outcome === 'unsettled') throw new Error('the work was not enough');
            const sway = margin.outcome === 'touch' ? margin.sway : margin.upTo;
            if (margin.outcome === 'touch') expect(least(sway)).toBeLessThanOrEqual(CONTACT_DISTANCE);
            if (sway > 0.011 * DEGREE)
                expect(least(sway - 0.011 * DEGREE)).toBeGreaterThan(CONTACT_DISTANCE * 0.9);
        }),
        { numRuns: 20 },
    );
});

test('sampled through the model, the taut line gives the same pairs as in closed form', () => {
    const turn = halfTurn('port');
    const [short, long] = [towed([0.3, 1.4, 2.4], 16), towed([0.3, -1.4, 2.4], 24)];
    const pair = (model?: TurnModel) =>
        pairsInTurn(
            [short, long].map((line) => ({ course: courseOf(line, turn, model)!, sway: 4 * DEGREE })),
            turn,
        ).pairs[0]!;
    const [closed, sampled] = [pair(), pair(taut)];
    expect(sampled.distance).toBeCloseTo(closed.distance, 2);
    expect(sampled.time).toBeCloseTo(closed.time, 0);
    expect(sampled.fromTowPoint[0]).toBeCloseTo(closed.fromTowPoint[0], 1);
});

test('mirror the boat and the turn and every pair mirrors', () => {
    fc.assert(
        fc.property(lines, lines, fc.double({ min: 20, max: 120, noNaN: true }), (a, b, radius) => {
            const distance = (side: Manoeuvre['side'], sign: number) => {
                const turn = layOut({ speed: 4, radius, side })!;
                const courses = [a, b].map(
                    ({ towPoint: [x, y, z], layback }) =>
                        courseOf({ towPoint: [x, sign * y, z], layback }, turn)!,
                );
                const [one, other] = courses.map((course) => sweep(course, { sway: 4 * DEGREE }));
                return meeting(one!, other!).distance;
            };
            const [port, starboard] = [distance('port', 1), distance('starboard', -1)];
            expect(Math.abs(port - starboard)).toBeLessThan(0.005 + 0.05 * port);
        }),
        { numRuns: 20 },
    );
});
