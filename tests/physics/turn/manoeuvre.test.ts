import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
    boatAt,
    layOut,
    type Manoeuvre,
    phaseAt,
    tightestHeld,
    turnTime,
} from '../../../language/src/physics/turn/manoeuvre.ts';

const half: Manoeuvre = { speed: 4, radius: 50, side: 'port' };

const manoeuvres = fc.record({
    speed: fc.double({ min: 0.5, max: 10, noNaN: true }),
    radius: fc.double({ min: 5, max: 300, noNaN: true }),
    side: fc.constantFrom('port' as const, 'starboard' as const),
    angle: fc.double({ min: 0.05, max: 8, noNaN: true }),
    ramp: fc.double({ min: 0, max: 30, noNaN: true }),
    turnSpeed: fc.double({ min: 0.5, max: 10, noNaN: true }),
    after: fc.double({ min: 0, max: 40, noNaN: true }),
});

test('a half turn without a ramp ends two radii to the side, on the opposite course', () => {
    const turn = layOut(half)!;
    expect(turn.steadyFrom).toBeCloseTo((Math.PI * 50) / 4, 12);
    const end = boatAt(turn, turn.steadyFrom);
    expect(end.x).toBeCloseTo(0, 10);
    expect(end.y).toBeCloseTo(100, 10);
    expect(end.heading).toBeCloseTo(Math.PI, 12);
});

test('before the turn the boat comes up along x, after it the boat runs straight on', () => {
    const turn = layOut(half)!;
    expect(boatAt(turn, -10)).toMatchObject({ x: -40, y: 0, heading: 0, speed: 4, yawRate: 0 });
    const late = boatAt(turn, turn.steadyFrom + 40);
    expect(late.x).toBeCloseTo(-160, 9);
    expect(late.y).toBeCloseTo(100, 9);
});

test('a ramp follows the spiral of Euler: heading grows with the square of time, offset with its cube', () => {
    const turn = layOut({ ...half, ramp: 10 })!;
    const yawAcceleration = 4 / 50 / 10;
    const t = 2;
    const pose = boatAt(turn, t);
    const heading = (yawAcceleration * t * t) / 2;
    expect(pose.heading).toBeCloseTo(heading, 14);
    // Power series of the Fresnel integrals in the final heading (Abramowitz and Stegun 7.3.11 and 7.3.13).
    const along = 4 * t * (1 - heading ** 2 / 10 + heading ** 4 / 216);
    const aside = 4 * t * (heading / 3 - heading ** 3 / 42);
    expect(pose.x).toBeCloseTo(along, 9);
    expect(pose.y).toBeCloseTo(aside, 8);
});

test('whatever the ramp and the change of speed, the boat ends on the asked heading at its first speed', () => {
    fc.assert(
        fc.property(manoeuvres, (manoeuvre) => {
            const turn = layOut(manoeuvre)!;
            const sign = manoeuvre.side === 'port' ? 1 : -1;
            const end = boatAt(turn, turn.end + 1);
            expect(end.heading * sign).toBeCloseTo(manoeuvre.angle, 9);
            expect(end.speed).toBeCloseTo(manoeuvre.speed, 9);
            expect(end.yawRate).toBeCloseTo(0, 9);
        }),
    );
});

test('the path has no jumps and the pose moves at the stated speed and yaw rate', () => {
    fc.assert(
        fc.property(manoeuvres, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (manoeuvre, share) => {
            const turn = layOut(manoeuvre)!;
            const time = share * turn.end;
            const step = 1e-4;
            const [before, now, then] = [time - step, time, time + step].map((t) => boatAt(turn, t));
            const edge = turn.phases.some((phase) => Math.abs(phase.end - time) < 2 * step);
            fc.pre(!edge);
            const moved = Math.hypot(then!.x - before!.x, then!.y - before!.y) / (2 * step);
            expect(moved).toBeCloseTo(now!.speed, 4);
            expect((then!.heading - before!.heading) / (2 * step)).toBeCloseTo(now!.yawRate, 6);
        }),
    );
});

test('a turn to starboard mirrors the turn to port', () => {
    fc.assert(
        fc.property(manoeuvres, fc.double({ min: -20, max: 120, noNaN: true }), (manoeuvre, time) => {
            const port = boatAt(layOut({ ...manoeuvre, side: 'port' })!, time);
            const starboard = boatAt(layOut({ ...manoeuvre, side: 'starboard' })!, time);
            expect(starboard.x).toBeCloseTo(port.x, 9);
            expect(starboard.y).toBeCloseTo(-port.y, 9);
            expect(starboard.heading).toBeCloseTo(-port.heading, 9);
        }),
    );
});

test('a figure that is not in its range lays out no turn', () => {
    for (const broken of [
        { speed: 0 },
        { radius: Number.NaN },
        { angle: -1 },
        { ramp: -1 },
        { after: Infinity },
    ]) {
        expect(layOut({ ...half, ...broken })).toBeUndefined();
    }
});

test('on the circle the boat goes round its centre, in closed form', () => {
    const turn = layOut(half)!;
    for (const turned of [0.3, Math.PI / 2, 2]) {
        const pose = boatAt(turn, (turned * 50) / 4);
        expect(pose.x).toBeCloseTo(50 * Math.sin(turned), 9);
        expect(pose.y).toBeCloseTo(50 * (1 - Math.cos(turned)), 9);
        expect(pose).toMatchObject({ speed: 4, yawRate: 4 / 50 });
        expect(pose.heading).toBeCloseTo(turned, 12);
    }
});

test('over a ramp speed and yaw rate change evenly, and the way is what they add up to', () => {
    const turn = layOut({ ...half, ramp: 10, turnSpeed: 2 })!;
    // Put over in 10 s, held, and taken off in 10 s: the two ramps turn the boat as far as 10 s of the circle.
    expect(turn.steadyFrom).toBeCloseTo((Math.PI * 50) / 2 + 10, 9);
    expect(turn.phases.map(({ name }) => name)).toEqual([
        'approach',
        'helm over',
        'held',
        'helm off',
        'after',
    ]);
    expect(turn.phases.map(({ acceleration }) => acceleration)).toEqual([
        0,
        expect.closeTo(-0.2, 12),
        0,
        expect.closeTo(0.2, 12),
        0,
    ]);
    const [early, late] = [boatAt(turn, 2.5), boatAt(turn, turn.steadyFrom - 2.5)];
    for (const pose of [early, late]) {
        expect(pose.speed).toBeCloseTo(3.5, 9);
        expect(pose.yawRate).toBeCloseTo(0.01, 9);
    }
    // Summed in steps of 1 ms, by the middle of each.
    let [x, y] = [0, 0];
    for (let step = 0; step < 30_000; step++) {
        const t = (step + 0.5) / 1000;
        const on = Math.min(t, 10);
        const heading = on * on * 0.002 + (t - on) * 0.04;
        const speed = 4 - 0.2 * on;
        x += (speed * Math.cos(heading)) / 1000;
        y += (speed * Math.sin(heading)) / 1000;
    }
    const pose = boatAt(turn, 30);
    expect(pose.x).toBeCloseTo(x, 5);
    expect(pose.y).toBeCloseTo(y, 5);
});

test('a ramp that would turn the boat too far is shortened until the two meet', () => {
    // 0.2 rad at 0.08 rad/s take 2.5 s of circle: as much over as off.
    const turn = layOut({ ...half, angle: 0.2, ramp: 10 })!;
    expect(turn.phases.map(({ name }) => name)).toEqual(['approach', 'helm over', 'helm off', 'after']);
    expect(turn.steadyFrom).toBeCloseTo(5, 9);
    expect(layOut({ ...half, ramp: 1e-4 })!.phases.map(({ name }) => name)).toEqual([
        'approach',
        'held',
        'after',
    ]);
});

test('a phase holds its times, the end of one before the start of the next', () => {
    const turn = layOut({ ...half, ramp: 10 })!;
    const names = [-1, 0, 0.1, 10, 10.1, turn.steadyFrom - 0.1, turn.steadyFrom + 900].map(
        (time) => phaseAt(turn, time).name,
    );
    expect(names).toEqual(['approach', 'approach', 'helm over', 'helm over', 'held', 'helm off', 'after']);
});

test('a half turn takes π radii over the speed, and four full circles are the most', () => {
    expect(turnTime(half)).toBeCloseTo((Math.PI * 50) / 4, 12);
    expect(turnTime({ ...half, speed: -1 })).toBeUndefined();
    expect(layOut({ ...half, angle: 25.1 })).toBeDefined();
    expect(layOut({ ...half, angle: 25.2 })).toBeUndefined();
    expect(layOut({ ...half, speed: 1e-200, radius: 1e200 })).toBeUndefined();
});

test('the tightest radius that is held presses sideways with half the weight: v²/R = g/2', () => {
    const radius = tightestHeld(5);
    expect(5 ** 2 / radius).toBeCloseTo(9.80665 / 2, 12);
    expect(8 ** 2 / tightestHeld(8, 9.8)).toBeCloseTo(4.9, 12);
});
