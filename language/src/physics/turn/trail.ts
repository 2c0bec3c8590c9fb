import type { Vec } from '../vector.ts';
import { boatAt, type Phase, type Turn } from './manoeuvre.ts';
import type { TowedLine } from './model.ts';
import { ASTERN, advance, angleBetween, type Bearing, pull, slackTime } from './tractrix.ts';

/** What a taut line does through a whole turn: between the starts of its stretches everything is in closed form. */
export interface Trail {
    readonly line: TowedLine;
    readonly turn: Turn;
    readonly stretches: readonly Stretch[];
    /** When the line first falls slack, s. */
    readonly slackAt?: number;
}

/** A part of the turn in which the line's bearing changes one way only, or in which it is slack. */
export interface Stretch {
    readonly start: number;
    readonly end: number;
    readonly phase: Phase;
    /** Of the line at the start. */
    readonly bearing: Bearing;
    /** Where the lure lies, in the water's axes, while the line is slack. */
    readonly resting?: Vec;
    /** How far the lure has moved as seen from the boat by the start, at most, m. */
    readonly travelled: number;
}

/** A ramp is cut into so many pieces: the law is of fourth order in them, and leaves less than 0.05 mm at the lure. */
const RAMP_PIECES = 32;

/** A line that goes slack more often is taken as slack for good, */
const MOST_SLACKS = 50;

/** and so is one for whose straightening so many moments have been looked at. */
const MOST_LOOKS = 20_000;

/**
 * @returns `undefined` for a layback that is not positive or figures that do not fit on earth
 */
export function follow(line: TowedLine, turn: Turn, rampPieces = RAMP_PIECES): Trail | undefined {
    if (!(line.layback > 0) || ![...line.towPoint, line.layback].every(isOnEarth)) return undefined;
    const stretches: Stretch[] = [];
    let [bearing, travelled, slacks]: [Bearing, number, number] = [ASTERN, 0, 0];
    let looks = MOST_LOOKS;
    let time = Number.NEGATIVE_INFINITY;
    for (const phase of turn.phases) {
        while (time < phase.end) {
            const piece = pieceEnd(phase, time, rampPieces);
            // Beyond what numbers can tell apart there are no pieces.
            const end = piece > time ? piece : phase.end;
            const loose = slackTime(line, phase, bearing, time, end);
            const reached = loose ?? end;
            if (reached > time) {
                stretches.push({ start: time, end: reached, phase, bearing, travelled });
                if (reached < Number.POSITIVE_INFINITY) {
                    const next = advance(line, phase, bearing, time, reached);
                    travelled += line.layback * Math.abs(angleBetween(bearing, next));
                    bearing = next;
                }
                time = reached;
            }
            if (loose === undefined) continue;
            slacks++;
            const resting = lureOn(line, turn, bearing, loose);
            const straight = tautAgain(line, turn, resting, loose, slacks > MOST_SLACKS ? 0 : looks);
            looks -= straight.looks;
            const again = straight.time;
            stretches.push({ start: loose, end: again, phase, bearing, resting, travelled });
            if (again < Number.POSITIVE_INFINITY) {
                travelled += driftRate(line, turn) * (again - loose);
                bearing = bearingFrom(line, turn, resting, again);
            }
            time = again;
        }
    }
    const slackAt = stretches.find(({ resting }) => resting)?.start;
    return { line, turn, stretches, ...(slackAt !== undefined && { slackAt }) };
}

/** Lengths beyond which rounding would eat what the figures say, m. */
function isOnEarth(length: number): boolean {
    return Math.abs(length) < 1e8;
}

/** Where the piece of a phase that holds a time ends. */
function pieceEnd(phase: Phase, time: number, pieces: number): number {
    if (phase.yawAcceleration === 0 && phase.acceleration === 0) return phase.end;
    const piece = (phase.end - phase.start) / pieces;
    const index = Math.floor((time - phase.start) / piece + 1e-9) + 1;
    return index >= pieces ? phase.end : phase.start + index * piece;
}

/** The stretch that holds a time; of two that meet there, the earlier. */
export function stretchAt(trail: Trail, time: number): Stretch {
    const { stretches } = trail;
    let [low, high] = [0, stretches.length - 1];
    while (low < high) {
        const middle = (low + high) >> 1;
        if (stretches[middle]!.end < time) low = middle + 1;
        else high = middle;
    }
    return stretches[low]!;
}

/** The bearing of a taut line at a time within its stretch. */
export function bearingAt(trail: Trail, stretch: Stretch, time: number): Bearing {
    return advance(trail.line, stretch.phase, stretch.bearing, stretch.start, time);
}

/** Of the lure through the water at a time within a stretch, m/s. */
export function lureSpeed(trail: Trail, stretch: Stretch, time: number): number {
    return stretch.resting ? 0 : pull(trail.line, stretch.phase, bearingAt(trail, stretch, time), time);
}

/** How far a lure that lies still has moved as seen from the boat, at most, m. */
export function lureDrift(trail: Trail, stretch: Stretch, time: number): number {
    return stretch.travelled + driftRate(trail.line, trail.turn) * (time - stretch.start);
}

/** How fast a thing that lies still in the water moves as seen from the boat, at most, m/s. */
function driftRate({ layback, towPoint: [x, y] }: TowedLine, { manoeuvre }: Turn): number {
    const fastest = Math.max(manoeuvre.speed, manoeuvre.turnSpeed ?? manoeuvre.speed);
    return fastest * (1 + (layback + Math.hypot(x, y)) / manoeuvre.radius);
}

/** Tow point in the water's axes. */
export function towPointAt({ towPoint: [ahead, toPort, up] }: TowedLine, turn: Turn, time: number): Vec {
    const { x, y, heading } = boatAt(turn, time);
    const [cosine, sine] = [Math.cos(heading), Math.sin(heading)];
    return [x + ahead * cosine - toPort * sine, y + ahead * sine + toPort * cosine, up];
}

/** Lure of a taut line in the water's axes. */
export function lureOn(line: TowedLine, turn: Turn, [sine, cosine]: Bearing, time: number): Vec {
    const [x, y] = towPointAt(line, turn, time);
    const way = boatAt(turn, time).heading + 2 * Math.atan2(sine, cosine);
    return [x - line.layback * Math.cos(way), y - line.layback * Math.sin(way), 0];
}

/** The bearing of a line whose lure lies at a place in the water. */
function bearingFrom(line: TowedLine, turn: Turn, lure: Vec, time: number): Bearing {
    const [x, y] = towPointAt(line, turn, time);
    const half = (Math.atan2(y - lure[1], x - lure[0]) - boatAt(turn, time).heading) / 2;
    return [Math.sin(half), Math.cos(half)];
}

/** Rounding must not pull a line straight, as a share of its length. */
const GRAZE = 1e-9;

/**
 * When a line whose lure lies still is straight again, s; Infinity when that never happens.
 *
 * @param most  moments to be looked at
 */
function tautAgain(
    line: TowedLine,
    turn: Turn,
    lure: Vec,
    from: number,
    most: number,
): { time: number; looks: number } {
    const straight = (time: number) => {
        const [x, y] = towPointAt(line, turn, time);
        return Math.hypot(x - lure[0], y - lure[1]) > line.layback * (1 + GRAZE);
    };
    const { speed, turnSpeed = speed } = turn.manoeuvre;
    const step = line.layback / Math.max(speed, turnSpeed) / 8;
    // On the straight after the turn the tow point is soon further off than the line is long.
    const last = Math.max(from, turn.steadyFrom) + 2 * (line.layback / speed) + 2 * step;
    const steps = Math.min(most, Math.ceil((last - from) / step));
    for (let index = 1; index <= steps; index++) {
        const time = from + ((last - from) * index) / steps;
        if (!straight(time)) continue;
        let [before, after] = [from + ((last - from) * (index - 1)) / steps, time];
        for (let halving = 0; halving < 50; halving++) {
            const middle = (before + after) / 2;
            if (straight(middle)) after = middle;
            else before = middle;
        }
        return { time: after, looks: index };
    }
    return { time: Number.POSITIVE_INFINITY, looks: Math.max(0, steps) };
}
