import { STANDARD_GRAVITY } from '../constants.ts';

/**
 * A turn as the skipper steers it: straight, the helm put over, a held circle, the helm taken off, straight.
 *
 * Time 0 is the moment the helm goes over; before it the boat runs straight.
 */
export interface Manoeuvre {
    /** Through the water before and after the turn, m/s, > 0. */
    readonly speed: number;
    /** Of the circle that the transom's centre follows, m, > 0. */
    readonly radius: number;
    readonly side: 'port' | 'starboard';
    /** Change of heading, rad, > 0 and at most four full circles. Half a turn by default. */
    readonly angle?: number;
    /** Time over which the yaw rate (and the speed) changes at each end, s; under 1 ms is none, the default. */
    readonly ramp?: number;
    /** Through the water in the held turn, m/s. The speed before it by default. */
    readonly turnSpeed?: number;
    /** Straight run after the turn, s. 25 s by default [estimate]. */
    readonly after?: number;
}

/**
 * Where the boat is.
 *
 * Axes stand still in the water: x along the course before the turn, y to port, z up; the origin is where the
 * transom's centre is at time 0. Heading in rad, anticlockwise from x; yaw rate in rad/s, positive to port.
 */
export interface BoatPose {
    readonly x: number;
    readonly y: number;
    readonly heading: number;
    readonly speed: number;
    readonly yawRate: number;
}

/** A stretch of the turn in which speed and yaw rate change evenly with time. */
export interface Phase {
    readonly name: 'approach' | 'helm over' | 'held' | 'helm off' | 'after';
    readonly start: number;
    readonly end: number;
    /** The boat when the phase starts. */
    readonly from: BoatPose;
    /** m/s² */
    readonly acceleration: number;
    /** rad/s² */
    readonly yawAcceleration: number;
}

/** A manoeuvre laid out in time. */
export interface Turn {
    readonly manoeuvre: Manoeuvre;
    readonly phases: readonly Phase[];
    /** When the boat is on its new course, s. */
    readonly steadyFrom: number;
    /** When the straight run after the turn ends, s. */
    readonly end: number;
}

/**
 * Lays a manoeuvre out in time.
 *
 * The boat points where its transom's centre goes (no drift angle). A ramp that would turn the boat further than
 * asked is shortened so that the two ramps meet.
 *
 * @returns `undefined` when a figure is not finite or not in its range
 */
export function layOut(manoeuvre: Manoeuvre): Turn | undefined {
    const { speed, radius, side, angle = Math.PI, ramp = 0, turnSpeed = speed, after = 25 } = manoeuvre;
    const positive = [speed, radius, angle, turnSpeed].every(
        (figure) => figure > 0 && Number.isFinite(figure),
    );
    const notNegative = [ramp, after].every((figure) => figure >= 0 && Number.isFinite(figure));
    if (!positive || !notNegative || angle > 8 * Math.PI) return undefined;

    const rate = turnSpeed / radius;
    if (!(rate > 0 && Number.isFinite(angle / rate))) return undefined;
    const shortened = Math.min(ramp, angle / rate);
    const helm = shortened < SHORTEST_RAMP ? 0 : shortened;
    const held = Math.max(0, angle / rate - helm);
    const yawRate = side === 'port' ? rate : -rate;

    const phases: Phase[] = [];
    let pose: BoatPose = { x: 0, y: 0, heading: 0, speed, yawRate: 0 };
    let time = 0;
    const run = (name: Phase['name'], lasting: number, endSpeed: number, endRate: number) => {
        if (lasting <= 0) return;
        const phase: Phase = {
            name,
            start: time,
            end: time + lasting,
            from: pose,
            acceleration: (endSpeed - pose.speed) / lasting,
            yawAcceleration: (endRate - pose.yawRate) / lasting,
        };
        phases.push(phase);
        time = phase.end;
        pose = poseIn(phase, time);
    };
    phases.push({
        name: 'approach',
        start: Number.NEGATIVE_INFINITY,
        end: 0,
        from: pose,
        acceleration: 0,
        yawAcceleration: 0,
    });
    run('helm over', helm, turnSpeed, yawRate);
    pose = { ...pose, speed: turnSpeed, yawRate };
    run('held', held, turnSpeed, yawRate);
    run('helm off', helm, speed, 0);
    pose = { ...pose, speed, yawRate: 0 };
    const steadyFrom = time;
    phases.push({
        name: 'after',
        start: time,
        end: Number.POSITIVE_INFINITY,
        from: pose,
        acceleration: 0,
        yawAcceleration: 0,
    });
    return { manoeuvre, phases, steadyFrom, end: steadyFrom + after };
}

/** s. A shorter ramp is a jump, and its accelerations would run out of the range of numbers. */
const SHORTEST_RAMP = 1e-3;

/**
 * How long a turn takes, from the helm going over until the boat is on its new course, s: for a half turn without
 * ramps, π times the radius over the speed.
 *
 * @returns `undefined` as `layOut` does
 */
export function turnTime(manoeuvre: Manoeuvre): number | undefined {
    return layOut(manoeuvre)?.steadyFrom;
}

/**
 * The tightest radius that a boat can be held to at a speed, m: it then presses sideways with half its own weight, more
 * than an ordinary hull or anybody on deck bears for long. Estimate.
 *
 * @param speed  through the water, m/s
 */
export function tightestHeld(speed: number, gravity = STANDARD_GRAVITY): number {
    return (2 * speed ** 2) / gravity;
}

/** The boat at a finite time, s. Before the turn it comes up along x; after it the boat runs straight on. */
export function boatAt(turn: Turn, time: number): BoatPose {
    return poseIn(phaseAt(turn, time), time);
}

/** The phase that holds a time; of two that meet there, the earlier. */
export function phaseAt(turn: Turn, time: number): Phase {
    return turn.phases.find((phase) => time <= phase.end) ?? turn.phases[turn.phases.length - 1]!;
}

/** The boat at a time within a phase. */
export function poseIn(phase: Phase, time: number): BoatPose {
    const { from, acceleration, yawAcceleration, name } = phase;
    const t = name === 'approach' ? time : time - phase.start;
    const speed = from.speed + acceleration * t;
    const yawRate = from.yawRate + yawAcceleration * t;
    const heading = from.heading + (from.yawRate + (yawAcceleration * t) / 2) * t;
    if (yawAcceleration === 0 && acceleration === 0) {
        const [dx, dy] = arc(from.speed, from.heading, from.yawRate, t);
        return { x: from.x + dx, y: from.y + dy, heading, speed, yawRate };
    }
    const [dx, dy] = spiral(phase, t);
    return { x: from.x + dx, y: from.y + dy, heading, speed, yawRate };
}

/** Displacement at constant speed and yaw rate. */
function arc(speed: number, heading: number, yawRate: number, t: number): [number, number] {
    const half = (yawRate * t) / 2;
    const chord = speed * t * (half === 0 ? 1 : Math.sin(half) / half);
    return [chord * Math.cos(heading + half), chord * Math.sin(heading + half)];
}

const GAUSS_POINTS = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const GAUSS_WEIGHTS = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

/** Four full circles and more. */
const MOST_PIECES = 100;

/**
 * Displacement while speed and yaw rate change: there is no closed form, so eight-point Gauss–Legendre on pieces
 * that turn less than half a radian (error below 1e-14 of the distance).
 */
function spiral(phase: Phase, duration: number): [number, number] {
    const { from, acceleration, yawAcceleration } = phase;
    const turned =
        Math.max(Math.abs(from.yawRate), Math.abs(from.yawRate + yawAcceleration * duration)) *
        Math.abs(duration);
    const pieces = Math.min(MOST_PIECES, Math.max(1, Math.ceil(turned / 0.5)));
    const half = duration / pieces / 2;
    let x = 0;
    let y = 0;
    for (let piece = 0; piece < pieces; piece++) {
        const middle = (2 * piece + 1) * half;
        GAUSS_POINTS.forEach((point, index) => {
            for (const t of [middle - half * point, middle + half * point]) {
                const heading = from.heading + (from.yawRate + (yawAcceleration * t) / 2) * t;
                const distance = (from.speed + acceleration * t) * GAUSS_WEIGHTS[index]! * half;
                x += distance * Math.cos(heading);
                y += distance * Math.sin(heading);
            }
        });
    }
    return [x, y];
}
