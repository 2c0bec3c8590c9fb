import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boatAt, layOut, type Manoeuvre } from '../../../language/src/physics/turn/manoeuvre.ts';

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
