import { finish, type Steps } from '../steps.ts';
import { CONTACT_DISTANCE } from '../sway.ts';
import { courseOfTrail } from './course.ts';
import { boatAt, layOut, type Manoeuvre, type Turn } from './manoeuvre.ts';
import { firstWithin, nearest, newTally, type Tally } from './meeting.ts';
import type { TowedLine } from './model.ts';
import { type Swaying, type Swept, sweep } from './swept.ts';
import { type Range, REFINE, type Tightest, tightestInSteps } from './tightest.ts';
import { follow, type Trail } from './trail.ts';
import { slowest } from './working.ts';

/** A line whose turns are judged. */
export interface JudgedLine extends TowedLine, Swaying {
    /** Slower than this through the water the lure stops working, m/s; 0, the default, for one that never does. */
    readonly leastSpeed?: number;
}

/** What ends the clean turns. Lines are named by their place in the list. */
export interface Limit {
    /**
     * Two lines within the contact distance at their sway; a line slack, of which nothing can be promised; a lure
     * slower than its least speed; two lines of which the work allowed could not tell whether they foul.
     */
    readonly kind: 'foul' | 'slack' | 'slow' | 'unsettled';
    readonly lines: readonly number[];
    /** When it first happens, or when the lure is slowest; s from the helm going over. */
    readonly time: number;
    /** Heading changed by then, rad. */
    readonly turned: number;
    /** Of the slow lure through the water, m/s. */
    readonly speed?: number;
}

/** The tightest clean turns to one side. */
export interface Envelope {
    /** Every pair keeps apart at its sway, every line stays taut. */
    readonly noFoul: Tightest<Limit>;
    /** Every lure keeps its least running speed. */
    readonly allWorking: Tightest<Limit>;
    readonly tally: Tally;
}

/** The turns that are looked at: all of a manoeuvre but its radius. */
export interface Looked extends Omit<Manoeuvre, 'radius'> {
    readonly range?: Range;
    /** Lines nearer than this are taken to touch, m. */
    readonly contact?: number;
    /** The tightest turns are found to this, m; 1 by default. Distances are told apart the finer. */
    readonly refine?: number;
    /** What the searches of all turns together may cost: see `Tally`. */
    readonly most?: number;
}

/** Estimate: from what a boat of this kind turns in to what is hardly a turn. */
export const USUAL_RANGE: Range = { tightest: 15, widest: 250 };

/**
 * The tightest clean turns of surface lures on taut lines, to one side.
 *
 * @returns `undefined` for a line or a manoeuvre whose figures are out of their range
 */
export function envelope(lines: readonly JudgedLine[], looked: Looked): Envelope | undefined {
    return finish(envelopeInSteps(lines, looked));
}

/** The same a turn at a time. */
export function* envelopeInSteps(lines: readonly JudgedLine[], looked: Looked): Steps<Envelope | undefined> {
    const { range = USUAL_RANGE, contact = CONTACT_DISTANCE, refine = REFINE, most, ...manoeuvre } = looked;
    const sound = 0 < range.tightest && range.tightest <= range.widest && contact >= 0 && refine > 0;
    const can = (radius: number) => turnOf(lines, { ...manoeuvre, radius }) !== undefined;
    if (!sound || !can(range.tightest) || !can(range.widest)) return undefined;

    const tally = newTally(most);
    const turns = new Map<number, Trails>();
    const at = (radius: number) => {
        const known = turns.get(radius) ?? turnOf(lines, { ...manoeuvre, radius })!;
        turns.set(radius, known);
        return known;
    };
    // The pair that fouled last is the likeliest to foul in the next turn.
    const pairs = everyTwo(lines.length);
    const fineness = Math.min(1, refine / REFINE);
    const foul = (radius: number): Foul | undefined => {
        const swept = sweptBy(at(radius), lines);
        for (const [index, pair] of pairs.entries()) {
            const [a, b] = pair;
            const met = nearest(swept[a]!, swept[b]!, tally, contact, true, fineness);
            if (!met) continue;
            pairs.splice(index, 1);
            pairs.unshift(pair);
            return met === 'unsettled' ? { pair } : { pair, time: met.time };
        }
        return undefined;
    };
    return {
        noFoul: yield* tightestInSteps(
            range,
            (radius) => slackLine(at(radius)) ?? foul(radius),
            (radius, fault) =>
                typeof fault === 'number'
                    ? limitAt(at(radius), 'slack', [fault], at(radius).trails[fault]!.slackAt!)
                    : foulLimit(at(radius), lines, fault, contact, tally),
            refine,
        ),
        allWorking: yield* tightestInSteps(
            range,
            (radius) => slowLine(at(radius), lines),
            (radius, line) => {
                const { speed, time } = slowest(at(radius).trails[line]!);
                return { ...limitAt(at(radius), speed > 0 ? 'slow' : 'slack', [line], time), speed };
            },
            refine,
        ),
        tally,
    };
}

type Pair = readonly [number, number];

interface Foul {
    readonly pair: Pair;
    /** A moment at which the two touch, s; absent where the search was broken off. */
    readonly time?: number;
}

interface Trails {
    readonly turn: Turn;
    readonly trails: readonly Trail[];
}

function turnOf(lines: readonly JudgedLine[], manoeuvre: Manoeuvre): Trails | undefined {
    const turn = layOut(manoeuvre);
    if (!turn) return undefined;
    const trails = lines.flatMap((line) => follow(line, turn) ?? []);
    const sound = lines.every(
        ({ sway, cap = 1, leastSpeed = 0 }) =>
            sway >= 0 && sway <= Math.PI / 2 && cap >= 0 && leastSpeed >= 0,
    );
    return sound && trails.length === lines.length ? { turn, trails } : undefined;
}

function everyTwo(count: number): Pair[] {
    const pairs: Pair[] = [];
    for (let a = 0; a < count; a++) for (let b = a + 1; b < count; b++) pairs.push([a, b]);
    return pairs;
}

function sweptBy({ trails }: Trails, lines: readonly Swaying[]): Swept[] {
    return trails.map((trail, index) => sweep(courseOfTrail(trail), lines[index]!));
}

function slackLine({ turn, trails }: Trails): number | undefined {
    const index = trails.findIndex(({ slackAt = Number.POSITIVE_INFINITY }) => slackAt <= turn.end);
    return index < 0 ? undefined : index;
}

/** The line whose lure falls furthest below its least speed. */
function slowLine({ trails }: Trails, lines: readonly JudgedLine[]): number | undefined {
    let [worst, missing]: [number | undefined, number] = [undefined, 0];
    trails.forEach((trail, index) => {
        const { leastSpeed = 0 } = lines[index]!;
        const lacking = leastSpeed > 0 ? 1 - slowest(trail).speed / leastSpeed : 0;
        if (lacking > missing) [worst, missing] = [index, lacking];
    });
    return worst;
}

function limitAt({ turn }: Trails, kind: Limit['kind'], lines: readonly number[], time: number): Limit {
    return { kind, lines, time, turned: Math.abs(boatAt(turn, time).heading) };
}

function foulLimit(
    trails: Trails,
    lines: readonly JudgedLine[],
    { pair, time }: Foul,
    contact: number,
    tally: Tally,
): Limit {
    if (time === undefined) return limitAt(trails, 'unsettled', pair, 0);
    const swept = sweptBy(trails, lines);
    const [a, b] = pair;
    const first = firstWithin(swept[a]!, swept[b]!, tally, contact);
    return limitAt(trails, 'foul', pair, first && first !== 'unsettled' ? first.time : time);
}
