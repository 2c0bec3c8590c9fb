import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boatAt, layOut, type Manoeuvre } from '../../../language/src/physics/turn/manoeuvre.ts';
import type { TowedLine } from '../../../language/src/physics/turn/model.ts';
import { taut } from '../../../language/src/physics/turn/taut.ts';
import { bearingAt, follow, lureOn, stretchAt } from '../../../language/src/physics/turn/trail.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';
import reference from '../reference/tractrix.json' with { type: 'json' };

const DEGREE = Math.PI / 180;

/** A tow point at the transom's centre follows the boat's own circle. */
const fromCentre = (layback: number): TowedLine => ({ towPoint: [0, 0, 0], layback });
const circle = (radius: number, speed: number): Manoeuvre => ({
    speed,
    radius,
    side: 'port',
    angle: 8 * Math.PI,
});

/** The reference gives six significant digits. */
function expectSixDigits(figure: number, reference: number) {
    expect(Math.abs(figure - reference)).toBeLessThan(5.1e-6 * Math.abs(reference));
}

/** Angle from the line to the tow point's way, degrees. */
function lag([towPoint, lure]: readonly Vec[], heading: number): number {
    const line = Math.atan2(towPoint![1] - lure![1], towPoint![0] - lure![0]);
    const angle = (heading - line) / DEGREE;
    return angle - 360 * Math.round(angle / 360);
}

describe.each(reference.cases)('a line of $L m towed round $R m', ({ R, L, V, ...expected }) => {
    const turn = layOut(circle(R, V))!;
    const motionAt = (times: number[]) => taut(fromCentre(L), turn, times)!;

    test('lies and moves as in the reference on the way into the circle', () => {
        for (const row of expected.from_straight) {
            // The reference's times are rounded to six digits; the angle turned is exact.
            const time = (row.turn_deg * DEGREE * R) / V;
            const motion = motionAt([time]);
            const [state] = motion.states;
            if ('slack' in row) {
                expect(state!.slack).toBe(true);
                continue;
            }
            expect(state!.slack).toBe(false);
            const [, lure] = state!.line;
            expect(lag(state!.line, boatAt(turn, time).heading)).toBeCloseTo(row.phi_deg!, 3);
            expectSixDigits(lure![0], row.body![0]!);
            expectSixDigits(lure![1], row.body![1]!);
            expectSixDigits(state!.speed, row.body_speed!);
            expectSixDigits(Math.hypot(lure![0], lure![1] - R), row.body_dist_from_centre!);
        }
    });

    test('obeys the closed form from first to last, to a millionth', () => {
        // u = tan(lag/2), a = V/R, b = V/L; see the reference for the three cases.
        const [a, b] = [V / R, V / L];
        const k = Math.sqrt(Math.abs(b * b - a * a));
        for (const time of [0.01, 0.5, 3, 8, 15, 20]) {
            const closed =
                L < R
                    ? (() => {
                          const [low, high] = [(b - k) / a, (b + k) / a];
                          const w = (low / high) * Math.exp(-k * time);
                          return (low - w * high) / (1 - w);
                      })()
                    : (k * Math.tan(Math.atan(-b / k) + (k * time) / 2) + b) / a;
            const [state] = motionAt([time]).states;
            const angle = lag(state!.line, boatAt(turn, time).heading) * DEGREE;
            expect(Math.abs(angle / (2 * Math.atan(closed)) - 1)).toBeLessThan(1e-6);
            expect(Math.abs(state!.speed / (V * Math.cos(2 * Math.atan(closed))) - 1)).toBeLessThan(1e-6);
        }
    });

    if (expected.steady)
        test('settles on its own circle, lag and speed', () => {
            const time = turn.steadyFrom;
            const motion = motionAt([time]);
            const [state] = motion.states;
            expect(motion.slackAt).toBeUndefined();
            expect(lag(state!.line, boatAt(turn, time).heading)).toBeCloseTo(Math.asin(L / R) / DEGREE, 3);
            expect(state!.speed / expected.body_speed!).toBeCloseTo(1, 5);
            const [, lure] = state!.line;
            expect(Math.hypot(lure![0], lure![1] - R) / Math.sqrt(R * R - L * L)).toBeCloseTo(1, 5);
        });
    else
        test('falls slack when the reference says, and the lure rests where it says', () => {
            const motion = motionAt([
                expected.t_slack! - 0.01,
                expected.t_slack! + 5,
                1.9 * expected.t_slack!,
            ]);
            expect(Math.abs(motion.slackAt! / expected.t_slack! - 1)).toBeLessThan(5e-6);
            const [before, soon, late] = motion.states;
            expect(before!.slack).toBe(false);
            expect(before!.speed).toBeLessThan(0.05);
            for (const state of [soon!, late!]) {
                expect(state).toMatchObject({ slack: true, speed: 0 });
                const [, lure] = state.line;
                expect(Math.hypot(lure![0], lure![1] - R)).toBeCloseTo(
                    expected.rest_distance_from_centre!,
                    4,
                );
            }
        });
});

test('the reference angles at 8 s are met to a billionth', () => {
    for (const { L, R, t, closed } of reference.check_closed_vs_numeric) {
        const turn = layOut(circle(R, 4))!;
        const [state] = taut(fromCentre(L), turn, [t])!.states;
        expect(lag(state!.line, boatAt(turn, t).heading) * DEGREE).toBeCloseTo(closed, 9);
    }
});

test.each(reference.uturn_R30_V4)(
    'a half turn of 30 m with a line of $L m and 25 s after it',
    ({ L, R, V, rows }) => {
        const turn = layOut({ speed: V, radius: R, side: 'port' })!;
        const times = rows.map(([time]) => time!);
        const motion = taut(fromCentre(L), turn, times)!;
        const { slackAt = Number.POSITIVE_INFINITY } = motion;
        motion.states.forEach((state, index) => {
            const [time, px, py, bx, by, speed] = rows[index]!;
            // Beyond slack the reference, without inertia or time steps to find the moment, is less exact.
            const tolerance = time! > slackAt ? 0.05 : 2e-4;
            const [towPoint, lure] = state.line;
            expect(Math.hypot(towPoint![0] - px!, towPoint![1] - py!)).toBeLessThan(2e-4);
            expect(Math.hypot(lure![0] - bx!, lure![1] - by!)).toBeLessThan(tolerance);
            if (time! > 0 && !state.slack) expect(Math.abs(state.speed - speed!)).toBeLessThan(tolerance);
        });
    },
);

test('L = R winds into the centre and is never slack', () => {
    const turn = layOut(circle(30, 4))!;
    const [state] = taut(fromCentre(30), turn, [40])!.states;
    // 1/(u − 1) = −1 − a·t/2 from a line directly astern.
    const closed = 1 - 1 / (1 + ((4 / 30) * 40) / 2);
    expect(Math.tan((lag(state!.line, boatAt(turn, 40).heading) * DEGREE) / 2)).toBeCloseTo(closed, 9);
    expect(taut(fromCentre(30), turn, [0])!.slackAt).toBeUndefined();
});

/** The same law by the classic fourth-order method of Runge and Kutta with small steps, in the water's axes. */
function integrated(line: TowedLine, manoeuvre: Manoeuvre, until: number): Vec {
    const turn = layOut(manoeuvre)!;
    const [ahead, toPort] = line.towPoint;
    const rate = (way: number, time: number) => {
        const pose = boatAt(turn, time);
        const x =
            pose.speed * Math.cos(pose.heading) -
            pose.yawRate * (ahead * Math.sin(pose.heading) + toPort * Math.cos(pose.heading));
        const y =
            pose.speed * Math.sin(pose.heading) +
            pose.yawRate * (ahead * Math.cos(pose.heading) - toPort * Math.sin(pose.heading));
        return (y * Math.cos(way) - x * Math.sin(way)) / line.layback;
    };
    let way = 0;
    const edges = turn.phases.map(({ end }) => end).filter((end) => end > 0 && end < until);
    let start = 0;
    for (const end of [...edges, until]) {
        const steps = Math.max(1, Math.ceil((end - start) / 0.01));
        const step = (end - start) / steps;
        for (let index = 0; index < steps; index++) {
            const time = start + index * step;
            // A phase's first moment is told apart from the last of the one before.
            const k1 = rate(way, time + 1e-9 * step);
            const k2 = rate(way + (k1 * step) / 2, time + step / 2);
            const k3 = rate(way + (k2 * step) / 2, time + step / 2);
            const k4 = rate(way + k3 * step, time + step * (1 - 1e-9));
            way += (step * (k1 + 2 * k2 + 2 * k3 + k4)) / 6;
        }
        start = end;
    }
    const { x, y, heading } = boatAt(turn, until);
    const px = x + ahead * Math.cos(heading) - toPort * Math.sin(heading);
    const py = y + ahead * Math.sin(heading) + toPort * Math.cos(heading);
    return [px - line.layback * Math.cos(way), py - line.layback * Math.sin(way), 0];
}

const lines = fc.record({
    towPoint: fc.tuple(
        fc.double({ min: -2, max: 6, noNaN: true }),
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 9, noNaN: true }),
    ),
    layback: fc.double({ min: 4, max: 80, noNaN: true }),
});
const manoeuvres = fc.record({
    speed: fc.double({ min: 2, max: 7, noNaN: true }),
    radius: fc.double({ min: 15, max: 200, noNaN: true }),
    side: fc.constantFrom('port' as const, 'starboard' as const),
    angle: fc.double({ min: 0.3, max: 6, noNaN: true }),
    ramp: fc.oneof(fc.constant(0), fc.double({ min: 1, max: 20, noNaN: true })),
    turnSpeed: fc.double({ min: 2, max: 7, noNaN: true }),
});

test('from a tow point anywhere on the boat, over ramps and changes of speed, the law integrates alike', () => {
    fc.assert(
        fc.property(
            lines,
            manoeuvres,
            fc.double({ min: 0.05, max: 1.3, noNaN: true }),
            (line, manoeuvre, part) => {
                const until = layOut(manoeuvre)!.steadyFrom * part;
                const motion = taut(line, layOut(manoeuvre)!, [until])!;
                fc.pre(!(motion.slackAt! <= until));
                const [x, y] = integrated(line, manoeuvre, until);
                const [, lure] = motion.states[0]!.line;
                expect(Math.hypot(lure![0] - x, lure![1] - y)).toBeLessThan(5e-5);
            },
        ),
        { numRuns: 60 },
    );
});

test('over ramps the error falls with the fourth power of the pieces', () => {
    const line: TowedLine = { towPoint: [2, 6, 6.5], layback: 30 };
    const turn = layOut({ speed: 4, radius: 45, side: 'port', ramp: 15, turnSpeed: 5 })!;
    const lureAfter = (pieces: number) => {
        const trail = follow(line, turn, pieces)!;
        const time = turn.steadyFrom;
        return lureOn(line, turn, bearingAt(trail, stretchAt(trail, time), time), time);
    };
    const exact = lureAfter(1024);
    const error = (pieces: number) => {
        const [x, y] = lureAfter(pieces);
        return Math.hypot(x - exact[0], y - exact[1]);
    };
    for (const pieces of [4, 8, 16]) {
        const order = Math.log2(error(pieces) / error(2 * pieces));
        expect(order).toBeGreaterThan(3.7);
        expect(order).toBeLessThan(4.3);
    }
    expect(error(32)).toBeLessThan(1e-5);
});

test('the lure never leaves its distance while taut, and never exceeds it', () => {
    fc.assert(
        fc.property(
            lines,
            manoeuvres,
            fc.double({ min: -5, max: 150, noNaN: true }),
            (line, manoeuvre, time) => {
                const [state] = taut(line, layOut(manoeuvre)!, [time])!.states;
                const [towPoint, lure] = state!.line;
                const apart = Math.hypot(towPoint![0] - lure![0], towPoint![1] - lure![1]);
                if (state!.slack) expect(apart).toBeLessThanOrEqual(line.layback * (1 + 1e-6));
                else expect(apart).toBeCloseTo(line.layback, 6);
                expect(state!.speed).toBeGreaterThanOrEqual(0);
                expect(Number.isFinite(lure![0] + lure![1] + state!.speed)).toBe(true);
            },
        ),
        { numRuns: 300 },
    );
});

test('mirror the boat and the turn and every line mirrors', () => {
    fc.assert(
        fc.property(
            lines,
            manoeuvres,
            fc.double({ min: 0, max: 100, noNaN: true }),
            (line, manoeuvre, time) => {
                const [x, y, z] = line.towPoint;
                const to = (side: Manoeuvre['side']) => layOut({ ...manoeuvre, side })!;
                const [port] = taut(line, to('port'), [time])!.states;
                const [starboard] = taut({ ...line, towPoint: [x, -y, z] }, to('starboard'), [time])!.states;
                expect(starboard!.line[1]![0]).toBeCloseTo(port!.line[1]![0], 6);
                expect(starboard!.line[1]![1]).toBeCloseTo(-port!.line[1]![1], 6);
                expect(starboard!.slack).toBe(port!.slack);
            },
        ),
    );
});

test('only shape counts: scale lengths, keep the speed, and the way is the same', () => {
    fc.assert(
        fc.property(
            lines,
            manoeuvres,
            fc.double({ min: 0, max: 60, noNaN: true }),
            (line, manoeuvre, time) => {
                const scale = 3;
                const [small] = taut(line, layOut(manoeuvre)!, [time])!.states;
                const grown = {
                    ...manoeuvre,
                    radius: manoeuvre.radius * scale,
                    ramp: manoeuvre.ramp * scale,
                };
                const [x, y, z] = line.towPoint;
                const longer: TowedLine = {
                    towPoint: [x * scale, y * scale, z * scale],
                    layback: line.layback * scale,
                };
                const [large] = taut(longer, layOut(grown)!, [time * scale])!.states;
                expect(large!.line[1]![0] / scale).toBeCloseTo(small!.line[1]![0], 5);
                expect(large!.line[1]![1] / scale).toBeCloseTo(small!.line[1]![1], 5);
            },
        ),
    );
});

test('at rest and before the turn a lure runs directly astern of its tow point at the boat’s speed', () => {
    const line: TowedLine = { towPoint: [2, 6, 6.5], layback: 46 };
    const [state] = taut(line, layOut({ speed: 4, radius: 50, side: 'port' })!, [-10])!.states;
    expect(state).toEqual({
        time: -10,
        line: [
            [-38, 6, 6.5],
            [-84, 6, 0],
        ],
        speed: 4,
        slack: false,
    });
});

test('a line or a time that is none gives no motion', () => {
    const turn = layOut({ speed: 4, radius: 50, side: 'port' })!;
    expect(taut({ towPoint: [0, 0, 2], layback: 0 }, turn, [0])).toBeUndefined();
    expect(taut({ towPoint: [0, Number.NaN, 2], layback: 20 }, turn, [0])).toBeUndefined();
    expect(taut(fromCentre(20), turn, [Number.POSITIVE_INFINITY])).toBeUndefined();
});
