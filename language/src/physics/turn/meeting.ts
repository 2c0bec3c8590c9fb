import type { Gap } from '../segments.ts';
import { type Triangle, triangleGap } from '../triangles.ts';
import { boxesApart, type Moment, type Swept } from './swept.ts';

/** Two lines near to each other; the points are in the boat's axes. */
export interface Meeting extends Gap {
    /** s */
    readonly time: number;
}

/** How much work a search was, for those who must keep it quick. */
export interface Tally {
    /** Pairs of fans whose distance was worked out. */
    fanPairs: number;
    /** Pairs of fans told apart by their boxes alone. */
    boxes: number;
}

/** Distances are found to this, m, or this share of them. */
const TOLERANCE = 0.005;
const SHARE = 0.01;

/** Moments closer than this are not told apart, s. */
const INSTANT = 1e-6;

/**
 * The least distance of two lines in a turn, to 5 mm or 1 %.
 *
 * @param below    only what is nearer than this is looked for, m
 * @param settle   whether the first found below the limit will do
 * @returns `undefined` when they stay apart by the limit
 *
 * Between two moments neither line moves further than it has travelled, which bounds the distance from below:
 * stretches that cannot hold a smaller one are left out whole, the others halved. So nothing slips through between
 * two moments, not even lines that pass through each other.
 */
export function nearest(
    first: Swept,
    second: Swept,
    tally: Tally,
    below = Number.POSITIVE_INFINITY,
    settle = false,
    tolerance = TOLERANCE,
): Meeting | undefined {
    let best: Meeting | undefined;
    let limit = below;
    const found = () => best !== undefined && (settle || best.distance === 0);
    const look = (time: number): Look => {
        const looked = lookAt(first, second, time, limit, tally);
        if (looked.gap && looked.gap.distance < limit) {
            best = { ...looked.gap, time };
            limit = best.distance;
        }
        return looked;
    };
    const halve = (from: Look, to: Look): void => {
        const margin = Math.max(tolerance, SHARE * limit);
        if (found() || !(leastBetween(from, to) < limit - margin) || isMoment(from, to, margin)) return;
        if (boxesApart(from.first, to.first, from.second, to.second) > limit) {
            tally.boxes++;
            return;
        }
        const middle = look((from.time + to.time) / 2);
        if (from.distance <= to.distance) {
            halve(from, middle);
            halve(middle, to);
        } else {
            halve(middle, to);
            halve(from, middle);
        }
    };
    const [start, end] = span(first, second);
    const opening = look(start);
    if (end > start) halve(opening, look(end));
    return best;
}

/**
 * When two lines first come within a distance of each other.
 *
 * @param from  s; what was before is not looked at
 * @returns `undefined` when they stay apart
 */
export function firstWithin(
    first: Swept,
    second: Swept,
    tally: Tally,
    limit: number,
    tolerance = TOLERANCE,
    from = Number.NEGATIVE_INFINITY,
): Meeting | undefined {
    const look = (time: number) => lookAt(first, second, time, limit, tally);
    const met = ({ gap, time }: Look) => (gap && gap.distance <= limit ? { ...gap, time } : undefined);
    const search = (before: Look, after: Look): Meeting | undefined => {
        if (!(leastBetween(before, after) <= limit)) return undefined;
        if (boxesApart(before.first, after.first, before.second, after.second) > limit) return undefined;
        if (isMoment(before, after, tolerance)) return met(after);
        const middle = look((before.time + after.time) / 2);
        return search(before, middle) ?? search(middle, after);
    };
    const [begin, end] = span(first, second);
    const start = Math.max(begin, Math.min(from, end));
    const opening = look(start);
    return met(opening) ?? (end > start ? search(opening, look(end)) : undefined);
}

interface Look {
    readonly time: number;
    readonly first: Moment;
    readonly second: Moment;
    /** m; of lines that the boxes keep apart by the limit, that much. */
    readonly distance: number;
    readonly gap?: Gap;
}

function lookAt(one: Swept, other: Swept, time: number, limit: number, tally: Tally): Look {
    const first = one.at(time);
    const second = other.at(time);
    const apart = boxesApart(first, first, second, second);
    if (apart > limit) {
        tally.boxes++;
        return { time, first, second, distance: apart };
    }
    const gap = fanGap(first.fan, second.fan, tally);
    return { time, first, second, distance: gap.distance, gap };
}

/** How far both lines together travel between two moments, m. */
function travelBetween(from: Look, to: Look): number {
    return to.first.travelled - from.first.travelled + to.second.travelled - from.second.travelled;
}

/** No distance between two moments is less than this. */
function leastBetween(from: Look, to: Look): number {
    return (from.distance + to.distance - travelBetween(from, to)) / 2;
}

function isMoment(from: Look, to: Look, tolerance: number): boolean {
    return travelBetween(from, to) < tolerance || to.time - from.time < INSTANT;
}

function span(first: Swept, second: Swept): [start: number, end: number] {
    return [Math.max(first.course.start, second.course.start), Math.min(first.course.end, second.course.end)];
}

function fanGap(first: readonly Triangle[], second: readonly Triangle[], tally: Tally): Gap {
    let least: Gap = {
        distance: Number.POSITIVE_INFINITY,
        at: [
            [0, 0, 0],
            [0, 0, 0],
        ],
    };
    for (const a of first) {
        for (const b of second) {
            tally.fanPairs++;
            const gap = triangleGap(a, b);
            if (gap.distance < least.distance) least = gap;
        }
    }
    return least;
}
