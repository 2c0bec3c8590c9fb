import type { Gap } from '../segments.ts';
import { triangleGap } from '../triangles.ts';
import { boxesApart, boxGap, type Moment, type Swept } from './swept.ts';

/** Two lines near to each other; the points are in the boat's axes. */
export interface Meeting extends Gap {
    /** s */
    readonly time: number;
    /** The search was broken off: the two may come nearer at another moment. */
    readonly rough?: true;
}

/** How much work searches were, and how much they may be. */
export interface Tally {
    /** Pairs of fans whose distance was worked out. */
    fanPairs: number;
    /** Pairs of fans told apart by their boxes alone. */
    boxes: number;
    /** Moments that were looked at, of two lines each. */
    moments: number;
    /** When the work comes to so many pairs of fans, every search is broken off, */
    readonly most: number;
    /** and each one when its own does. */
    readonly mostInOne: number;
}

/**
 * Fifty times what a full spread takes in the turns that boats make, and a second or two: what needs more has figures
 * that no spread has.
 */
export const MOST_WORK = 1_000_000;

/** Some tens of milliseconds. */
const MOST_IN_ONE = 20_000;

export function newTally(most = MOST_WORK, mostInOne = MOST_IN_ONE): Tally {
    return { fanPairs: 0, boxes: 0, moments: 0, most, mostInOne };
}

/** In pairs of fans: to see where two lines are takes as long, to tell boxes apart a fraction of it. */
export function workOf({ fanPairs, boxes, moments }: Tally): number {
    return fanPairs + moments + boxes / 32;
}

/** Whether a search that begins now has to be broken off. */
function patience(tally: Tally): () => boolean {
    const enough = Math.min(tally.most, workOf(tally) + tally.mostInOne);
    return () => workOf(tally) >= enough;
}

/** Nothing nearer than what is found by this, m, or by this share of it, is left out. */
const TOLERANCE = 0.005;
const SHARE = 0.05;

/** Moments closer than this are not told apart, s. */
const INSTANT = 1e-6;

/**
 * The least distance of two lines in a turn: no moment is nearer by more than 5 mm or 5 %, and about the nearest
 * moment found the distance is followed to its bottom.
 *
 * @param below     only what is nearer than this is looked for, m
 * @param settle    whether the first found below the limit will do
 * @param fineness  by what both errors are multiplied, ≤ 1
 * @returns `undefined` when they stay apart by the limit; `unsettled` when the search was broken off before it could
 *          tell, and a rough meeting when it was after it found one
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
    fineness = 1,
): Meeting | 'unsettled' | undefined {
    let best: Meeting | undefined;
    let broken = false;
    const isSpent = patience(tally);
    let limit = below;
    let around = 0;
    // No distance is below 0, so none is nearer than one within the error of it.
    const found = () => best !== undefined && (settle || best.distance <= fineness * TOLERANCE);
    const look = (time: number, within: number): Look => {
        broken ||= isSpent();
        const looked = lookAt(first, second, time, limit, tally);
        if (looked.gap && looked.gap.distance < limit) {
            best = { ...looked.gap, time };
            limit = best.distance;
            around = within;
        }
        return looked;
    };
    const halve = (from: Look, to: Look): void => {
        const margin = fineness * Math.max(TOLERANCE, SHARE * limit);
        if (broken || found()) return;
        if (!(leastBetween(from, to) < limit - margin) || isMoment(from, to, margin)) return;
        if (boxesApart(from.first, to.first, from.second, to.second) > limit) {
            tally.boxes++;
            return;
        }
        const half = (to.time - from.time) / 2;
        const middle = look(from.time + half, half);
        if (from.distance <= to.distance) {
            halve(from, middle);
            halve(middle, to);
        } else {
            halve(middle, to);
            halve(from, middle);
        }
    };
    const [start, end] = span(first, second);
    const opening = look(start, 0);
    if (end > start) halve(opening, look(end, 0));
    if (broken && !found()) return best ? { ...best, rough: true } : 'unsettled';
    if (best && !settle && best.distance > 0)
        bottom(best.time - around, best.time + around, (time) => look(time, around).distance);
    return best;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Looks for the least of a figure that falls and rises, by golden sections to a thousandth of the span. */
function bottom(from: number, to: number, figure: (time: number) => number): void {
    let [low, high] = [from, to];
    let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    let [atA, atB] = [figure(a), figure(b)];
    for (let step = 0; step < 15 && high > low; step++) {
        if (atA <= atB) {
            [high, b, atB] = [b, a, atA];
            a = high - GOLDEN * (high - low);
            atA = figure(a);
        } else {
            [low, a, atA] = [a, b, atB];
            b = low + GOLDEN * (high - low);
            atB = figure(b);
        }
    }
}

/**
 * When two lines first come within a distance of each other.
 *
 * @param from  s; what was before is not looked at
 * @returns `undefined` when they stay apart, `unsettled` when the search was broken off before it could tell
 */
export function firstWithin(
    first: Swept,
    second: Swept,
    tally: Tally,
    limit: number,
    tolerance = TOLERANCE,
    from = Number.NEGATIVE_INFINITY,
): Meeting | 'unsettled' | undefined {
    const isSpent = patience(tally);
    const look = (time: number) => lookAt(first, second, time, limit, tally);
    const met = ({ gap, time }: Look) => (gap && gap.distance <= limit ? { ...gap, time } : undefined);
    const search = (before: Look, after: Look): Meeting | 'unsettled' | undefined => {
        if (isSpent()) return 'unsettled';
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
    tally.moments++;
    const first = one.at(time);
    const second = other.at(time);
    const apart = boxesApart(first, first, second, second);
    if (apart > limit) {
        tally.boxes++;
        return { time, first, second, distance: apart };
    }
    const gap = fanGap(first, second, tally);
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

function fanGap(first: Moment, second: Moment, tally: Tally): Gap {
    let least: Gap = {
        distance: Number.POSITIVE_INFINITY,
        at: [
            [0, 0, 0],
            [0, 0, 0],
        ],
    };
    for (let i = 0; i < first.fan.length; i++) {
        for (let j = 0; j < second.fan.length; j++) {
            const apart = boxGap(first.boxes[i] ?? first.box, second.boxes[j] ?? second.box);
            if (apart >= least.distance) {
                tally.boxes++;
                continue;
            }
            tally.fanPairs++;
            const gap = triangleGap(first.fan[i]!, second.fan[j]!);
            if (gap.distance < least.distance) least = gap;
            if (least.distance === 0) return least;
        }
    }
    return least;
}
