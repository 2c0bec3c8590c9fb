import { expect, test } from 'vitest';
import { courseOf, courseOfMotion } from '../../../language/src/physics/turn/course.ts';
import { boatAt, layOut } from '../../../language/src/physics/turn/manoeuvre.ts';
import type { LineState } from '../../../language/src/physics/turn/model.ts';
import { taut } from '../../../language/src/physics/turn/taut.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';

const SPEED = 4;
/** So wide that the boat runs straight along x for as long as anybody looks. */
const straight = layOut({ speed: SPEED, radius: 1e12, side: 'port', angle: 1e-9 })!;

/** A line that the boat sees as given at each second. */
const seen = (...lines: readonly (readonly Vec[])[]): LineState[] =>
    lines.map((line, time) => ({
        time,
        line: line.map(([x, y, z]): Vec => [x + SPEED * time, y, z]),
        speed: SPEED,
        slack: false,
    }));
const expectLine = (line: readonly Vec[], expected: readonly Vec[]) => {
    expect(line).toHaveLength(expected.length);
    for (const [index, point] of expected.entries())
        for (const axis of [0, 1, 2] as const) expect(line[index]![axis]).toBeCloseTo(point[axis], 9);
};
const tip: Vec = [1, 2, 5];

test('between samples a line moves evenly as the boat sees it, and before and after them not at all', () => {
    const states = seen([tip, [-10, 0, 0]], [tip, [-10, 2, 0]], [tip, [-10, 2, 4]], [tip, [-7, 2, 4]]);
    const course = courseOfMotion({ states, slackAt: 1.5 }, straight)!;
    expect(course).toMatchObject({ start: 0, end: 3, slackAt: 1.5 });
    for (const [time, lure, travelled] of [
        [-1, [-10, 0, 0], 0],
        [0, [-10, 0, 0], 0],
        [0.5, [-10, 1, 0], 1],
        [1, [-10, 2, 0], 2],
        [1.25, [-10, 2, 1], 3],
        [2, [-10, 2, 4], 6],
        [2.5, [-8.5, 2, 4], 7.5],
        [3, [-7, 2, 4], 9],
        [8, [-7, 2, 4], 9],
    ] as const) {
        const sight = course.at(time);
        expectLine(sight.line, [tip, lure]);
        expect(sight.travelled).toBeCloseTo(travelled, 9);
    }
});

test('no samples are no course, and one stands still', () => {
    expect(courseOfMotion({ states: [] }, straight)).toBeUndefined();
    const one = courseOfMotion({ states: seen([tip, [-10, 0, 0]]) }, straight)!;
    expect(one).not.toHaveProperty('slackAt');
    expectLine(one.at(0.5).line, [tip, [-10, 0, 0]]);
    expect(one.at(0.5).travelled).toBe(0);
});

/** Evenly from the tip down to a lure, with a bulge aside at one of the points. */
const chain = (bulge = 0, at = 2): Vec[] =>
    Array.from({ length: 6 }, (_, index): Vec => [-2 * index, index === at ? bulge : 0, 5 - index]);

test('of a chain only the points are kept at which it ever bends by more than two centimetres', () => {
    const kept = (...lines: readonly (readonly Vec[])[]) =>
        courseOfMotion({ states: seen(...lines) }, straight)!.at(0).line;
    expectLine(kept(chain(), chain()), [chain()[0]!, chain()[5]!]);
    expectLine(kept(chain(0.019), chain()), [chain()[0]!, chain()[5]!]);
    // Straight now, it bends later: a point beside the bulge ends the straight before, the bulge the one behind.
    const later = kept(chain(), chain(0.5));
    expect(later.length).toBeGreaterThan(2);
    expect(later.length).toBeLessThan(6);
    const bulging = courseOfMotion({ states: seen(chain(), chain(0.5)) }, straight)!.at(1).line;
    expect(Math.max(...bulging.map(([, y]) => y))).toBeCloseTo(0.5, 9);
});

test('lines of unlike numbers of points keep all of the first', () => {
    const line = courseOfMotion({ states: seen(chain(), [...chain(), [-12, 0, -1]]) }, straight)!.at(0).line;
    expect(line).toHaveLength(6);
});

test.each([
    ['a line that stays taut', 60],
    ['a line that falls slack and comes taut again', 15],
])('%s: its closed form runs through the samples of the model', (_, radius) => {
    const line = { towPoint: tip, layback: 30 };
    const turn = layOut({ speed: SPEED, radius, side: 'starboard', ramp: 3 })!;
    const [closed, sampled] = [courseOf(line, turn)!, courseOf(line, turn, taut, 0.5)!];
    expect(closed.start).toBe(0);
    expect(closed.end).toBe(turn.end);
    expect(sampled.end).toBeCloseTo(turn.end, 9);
    expect(closed.slackAt === undefined).toBe(radius === 60);
    if (closed.slackAt !== undefined) expect(sampled.slackAt).toBeCloseTo(closed.slackAt, 9);
    else expect(sampled).not.toHaveProperty('slackAt');
    const samples = Math.ceil(turn.end / 0.5);
    let travelled = [0, 0];
    for (let index = 0; index <= samples; index++) {
        const time = (turn.end * index) / samples;
        const [one, other] = [closed.at(time), sampled.at(time)];
        expectLine(one.line, other.line);
        // The same again from where the boat is and points: the lure in the water's axes.
        const { x, y, heading } = boatAt(turn, time);
        const [state] = taut(line, turn, [time])!.states;
        const [dx, dy] = [state!.line[1]![0] - x, state!.line[1]![1] - y];
        expect(one.line[1]![0]).toBeCloseTo(dx * Math.cos(heading) + dy * Math.sin(heading), 6);
        expect(one.line[1]![1]).toBeCloseTo(dy * Math.cos(heading) - dx * Math.sin(heading), 6);
        // What a line has travelled never shrinks, and no lure moved further than that.
        for (const [which, sight] of [one, other].entries())
            expect(sight.travelled).toBeGreaterThanOrEqual(travelled[which]!);
        travelled = [one.travelled, other.travelled];
    }
});
