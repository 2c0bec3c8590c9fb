import { segmentGap } from '../segments.ts';
import type { Vec } from '../vector.ts';
import { boatAt, type Turn } from './manoeuvre.ts';
import type { LineMotion, TowedLine, TurnModel } from './model.ts';
import { angleBetween } from './tractrix.ts';
import { bearingAt, follow, lureDrift, stretchAt, type Trail } from './trail.ts';

/**
 * A line through a turn as the boat sees it: its tow point stands still and only the line's bearing changes, so that
 * most of a turn is slow and can be searched in long steps.
 */
export interface Course {
    /** In the boat's axes, from tow point to lure, m. */
    readonly at: (time: number) => Sight;
    /** First and last moment of the turn that is looked at, s. */
    readonly start: number;
    readonly end: number;
    /** When the line first falls slack, s. */
    readonly slackAt?: number;
}

export interface Sight {
    readonly line: readonly Vec[];
    /** Between two moments no point of the line moves further than the difference of these, m. */
    readonly travelled: number;
}

/**
 * The course of a line.
 *
 * @param model  when none is named, the closed form of the taut line
 * @param step   between the samples asked of the model, s
 * @returns `undefined` for a line the model cannot take
 */
export function courseOf<Line extends TowedLine>(
    line: Line,
    turn: Turn,
    model?: TurnModel<Line>,
    step = 0.25,
): Course | undefined {
    if (!model) {
        const trail = follow(line, turn);
        return trail && courseOfTrail(trail);
    }
    const samples = Math.max(1, Math.ceil(turn.end / step));
    const times = Array.from({ length: samples + 1 }, (_, index) => (turn.end * index) / samples);
    const motion = model(line, turn, times);
    return motion && courseOfMotion(motion, turn);
}

export function courseOfTrail(trail: Trail): Course {
    const { line, turn, slackAt } = trail;
    const [x, y] = line.towPoint;
    const at = (time: number): Sight => {
        const stretch = stretchAt(trail, time);
        if (stretch.resting) {
            const lure = fromBoat(stretch.resting, turn, time);
            return { line: [line.towPoint, lure], travelled: lureDrift(trail, stretch, time) };
        }
        const bearing = bearingAt(trail, stretch, time);
        const [sine, cosine] = bearing;
        const lure: Vec = [
            x - line.layback * (cosine * cosine - sine * sine),
            y - line.layback * 2 * sine * cosine,
            0,
        ];
        const turned = Math.abs(angleBetween(stretch.bearing, bearing));
        return { line: [line.towPoint, lure], travelled: stretch.travelled + line.layback * turned };
    };
    return { at, start: 0, end: turn.end, ...(slackAt !== undefined && { slackAt }) };
}

/** Between samples the line is taken to move evenly as seen from the boat; `undefined` where there are none. */
export function courseOfMotion({ states, slackAt }: LineMotion, turn: Turn): Course | undefined {
    if (states.length === 0) return undefined;
    const kept = pointsThatBend(states.map(({ line }) => line));
    const lines = states.map(({ line, time }) => kept.map((index) => fromBoat(line[index]!, turn, time)));
    const times = states.map(({ time }) => time);
    const travelled = [0];
    for (let index = 1; index < lines.length; index++) {
        const moved = lines[index]!.map((point, place) => apart(point, lines[index - 1]![place] ?? point));
        travelled.push(travelled[index - 1]! + Math.max(0, ...moved));
    }
    const at = (time: number): Sight => {
        const next = Math.min(lowerBound(times, time), times.length - 1);
        const last = Math.max(0, next - 1);
        const span = times[next]! - times[last]!;
        const part = span > 0 ? Math.min(1, Math.max(0, (time - times[last]!) / span)) : 0;
        return {
            line: lines[next]!.map((point, place) => between(lines[last]![place] ?? point, point, part)),
            travelled: travelled[last]! + part * (travelled[next]! - travelled[last]!),
        };
    };
    return { at, start: times[0]!, end: times[times.length - 1]!, ...(slackAt !== undefined && { slackAt }) };
}

/** A point that never strays further than this from a straight line past it says nothing of where the line runs, m. */
const STRAIGHT = 0.02;

/**
 * Which points of a line are needed to follow it through all its states: a chain of many links is straight over most
 * of its length, and what a search for meetings costs grows with the square of the pieces.
 */
function pointsThatBend(lines: readonly (readonly Vec[])[]): number[] {
    const last = lines[0]!.length - 1;
    if (lines.some(({ length }) => length !== last + 1)) return lines[0]!.map((_, index) => index);
    const kept = [0];
    for (let from = 0; from < last; from = kept[kept.length - 1]!) {
        let to = from + 1;
        while (to < last && lines.every((line) => isStraight(line, from, to + 1))) to++;
        kept.push(to);
    }
    return kept;
}

function isStraight(line: readonly Vec[], from: number, to: number): boolean {
    for (let index = from + 1; index < to; index++) {
        const point = line[index]!;
        if (segmentGap(point, point, line[from]!, line[to]!).distance > STRAIGHT) return false;
    }
    return true;
}

/** A point of the water's axes in the boat's. */
function fromBoat([x, y, z]: Vec, turn: Turn, time: number): Vec {
    const boat = boatAt(turn, time);
    const [cosine, sine] = [Math.cos(boat.heading), Math.sin(boat.heading)];
    const [dx, dy] = [x - boat.x, y - boat.y];
    return [dx * cosine + dy * sine, dy * cosine - dx * sine, z];
}

function apart(a: Vec, b: Vec): number {
    return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function between(a: Vec, b: Vec, part: number): Vec {
    return [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part, a[2] + (b[2] - a[2]) * part];
}

/** Index of the first figure that is not below the one asked for. */
function lowerBound(ascending: readonly number[], figure: number): number {
    let [low, high] = [0, ascending.length];
    while (low < high) {
        const middle = (low + high) >> 1;
        if (ascending[middle]! < figure) low = middle + 1;
        else high = middle;
    }
    return low;
}
