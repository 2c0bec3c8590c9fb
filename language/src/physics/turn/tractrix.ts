import type { Phase } from './manoeuvre.ts';
import type { TowedLine } from './model.ts';

/**
 * Which way a line points, seen from above and from the boat: sine and cosine of half the angle from the boat's
 * heading to the direction from lure to tow point, anticlockwise. Half the angle, because that moves by a linear law.
 */
export type Bearing = readonly [sine: number, cosine: number];

/** A lure directly astern of its tow point. */
export const ASTERN: Bearing = [0, 1];

/** How the tow point moves through the water along the boat's own axes, m/s. */
export function towVelocity(
    { towPoint: [ahead, toPort] }: TowedLine,
    phase: Phase,
    time: number,
): [forward: number, toPort: number] {
    if (phase.name === 'approach') return [phase.from.speed, 0];
    const t = time - phase.start;
    const yawRate = phase.from.yawRate + phase.yawAcceleration * t;
    return [phase.from.speed + phase.acceleration * t - yawRate * toPort, yawRate * ahead];
}

/** Speed of a lure that follows its tow point on a taut line, m/s; at or below 0 the line is slack. */
export function pull(line: TowedLine, phase: Phase, [sine, cosine]: Bearing, time: number): number {
    const [forward, toPort] = towVelocity(line, phase, time);
    return forward * (cosine * cosine - sine * sine) + toPort * 2 * sine * cosine;
}

/**
 * The bearing at a later time within a phase.
 *
 * Across the line the lure cannot move, so the angle γ obeys γ' = (v·cosγ − u·sinγ)/L − ω for a tow point moving at
 * (u, v) along the boat's axes at yaw rate ω. With γ = 2·atan(p/q) that is linear in (p, q): one exponential of a
 * matrix is exact while speed and yaw rate are constant, and by Magnus' expansion of fourth order in the step where
 * they change evenly (Blanes, Casas, Oteo, Ros, Physics Reports 470, 2009).
 */
export function advance(line: TowedLine, phase: Phase, bearing: Bearing, from: number, to: number): Bearing {
    const step = to - from;
    if (phase.name === 'approach' || !(step > 0)) return bearing;
    const middle = (from + to) / 2;
    const yawRate = phase.from.yawRate + phase.yawAcceleration * (middle - phase.start);
    const [forward, toPort] = towVelocity(line, phase, middle);
    const length = line.layback;
    let a = (-step * forward) / (2 * length);
    let b = (step * (toPort / length - yawRate)) / 2;
    let c = (step * (toPort / length + yawRate)) / 2;
    if (phase.yawAcceleration !== 0 || phase.acceleration !== 0) {
        const [ahead, out] = line.towPoint;
        const moreForward = phase.acceleration - phase.yawAcceleration * out;
        const moreToPort = phase.yawAcceleration * ahead;
        const da = -moreForward / (2 * length);
        const db = (moreToPort / length - phase.yawAcceleration) / 2;
        const dc = (moreToPort / length + phase.yawAcceleration) / 2;
        // The commutator of the matrix's rate of change with the matrix itself.
        const part = (step * step) / 12;
        [a, b, c] = [
            a + part * (db * c - dc * b),
            b + part * 2 * (da * b - db * a),
            c + part * 2 * (dc * a - da * c),
        ];
    }
    return turnedBy(a, b, c, bearing);
}

/** exp[a b; c −a] applied to a bearing, but for a factor. */
function turnedBy(a: number, b: number, c: number, [sine, cosine]: Bearing): Bearing {
    const square = a * a + b * c;
    let [even, odd] = [1, 1 - square / 3];
    if (square > 1e-8) odd = Math.tanh(Math.sqrt(square)) / Math.sqrt(square);
    else if (square < -1e-8) {
        const root = Math.sqrt(-square);
        [even, odd] = [Math.cos(root), Math.sin(root) / root];
    }
    const p = even * sine + odd * (a * sine + b * cosine);
    const q = even * cosine + odd * (c * sine - a * cosine);
    const size = Math.hypot(p, q);
    return size > 0 ? [p / size, q / size] : [sine, cosine];
}

/** From one bearing to another, the short way, rad. */
export function angleBetween([s0, c0]: Bearing, [s1, c1]: Bearing): number {
    // Half angles are the same bearing under either sign.
    return 2 * Math.atan((s1 * c0 - c1 * s0) / (c1 * c0 + s1 * s0));
}

/**
 * When a line that is taut at `from` goes slack: the angle from the tow point's way to the line reaches 90°.
 *
 * @returns s, at or before `to`, or `undefined` while it stays taut
 */
export function slackTime(
    line: TowedLine,
    phase: Phase,
    bearing: Bearing,
    from: number,
    to: number,
): number | undefined {
    if (phase.name === 'approach') return undefined;
    if (!(pull(line, phase, bearing, from) > 0)) return from;
    if (phase.yawAcceleration === 0 && phase.acceleration === 0) {
        const after = timeToSlack(line, phase, bearing);
        return after < Number.POSITIVE_INFINITY && from + after <= to ? from + after : undefined;
    }
    if (pull(line, phase, advance(line, phase, bearing, from, to), to) > 0) return undefined;
    let [taut, slack] = [from, to];
    for (let halving = 0; halving < 50; halving++) {
        const middle = (taut + slack) / 2;
        if (pull(line, phase, advance(line, phase, bearing, from, middle), middle) > 0) taut = middle;
        else slack = middle;
    }
    return slack;
}

/**
 * At constant speed and yaw rate the lag φ obeys φ' = a − b·sinφ with a the yaw rate and b tow speed over length. It
 * reaches 90° only for a > b, after (2/k)·[atan((a − b)/k) − atan((a·tan(φ/2) − b)/k)], k = √(a² − b²).
 */
function timeToSlack(line: TowedLine, phase: Phase, [sine, cosine]: Bearing): number {
    const [forward, toPort] = towVelocity(line, phase, phase.start);
    const a = Math.abs(phase.from.yawRate);
    const b = Math.hypot(forward, toPort) / line.layback;
    if (!(a > b)) return Number.POSITIVE_INFINITY;
    const k = Math.sqrt((a - b) * (a + b));
    const lag = Math.atan2(toPort, forward) - 2 * Math.atan2(sine, cosine);
    const tangent = Math.tan(lag / 2) * Math.sign(phase.from.yawRate);
    return (2 / k) * (Math.atan((a - b) / k) - Math.atan((a * tangent - b) / k));
}
