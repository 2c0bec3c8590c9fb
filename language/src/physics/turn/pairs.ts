import { finish, type Steps } from '../steps.ts';
import { CONTACT_DISTANCE, leastSway, type SwayingLine, swayAtLure, WIDEST_SWAY } from '../sway.ts';
import { norm, subtract, type Vec } from '../vector.ts';
import type { Course } from './course.ts';
import { boatAt, type Turn } from './manoeuvre.ts';
import { nearest, newTally, type Tally } from './meeting.ts';
import { passage } from './passing.ts';
import { type Swaying, sweep } from './swept.ts';

/** Two lines in a turn. */
export interface PairInTurn {
    /** The lines' places in the list. */
    readonly lines: readonly [number, number];
    /** Least distance of their fans, m. */
    readonly distance: number;
    /** When, s from the helm going over, and the heading changed by then, rad. */
    readonly time: number;
    readonly turned: number;
    /** Where on each, in the boat's axes, and how far that is from its tow point, m. */
    readonly at: readonly [Vec, Vec];
    readonly fromTowPoint: readonly [number, number];
    readonly margin: Exclude<TurnMargin, { outcome: 'unsettled' }>;
    /** When the lines, without sway, pass through each other, s; absent when they do not. */
    readonly passedThrough?: number;
}

/** How much two lines may sway, both alike, before they touch in the turn. */
export type TurnMargin =
    | {
          readonly outcome: 'touch';
          /** rad */
          readonly sway: number;
          /** To either side at the two lures, m. */
          readonly atLures: readonly [number, number];
          /** A moment at which they touch, s. */
          readonly time: number;
      }
    | { readonly outcome: 'clear'; readonly upTo: number }
    /** The work allowed could not tell. */
    | { readonly outcome: 'unsettled' };

/** What is found of every two lines in a turn. */
export interface PairsInTurn {
    /** The nearest first. */
    readonly pairs: readonly PairInTurn[];
    /** Those of which the work allowed could not tell. */
    readonly unsettled: readonly (readonly [number, number])[];
}

export interface TurningLine extends Swaying {
    readonly course: Course;
}

/**
 * Every two of several lines in a turn.
 *
 * @param contact  lines nearer than this are taken to touch, m
 * @param upTo     no margin is looked for beyond, rad
 * @param tally    what the searches may cost and what they did
 */
export function pairsInTurn(
    lines: readonly TurningLine[],
    turn: Turn,
    contact = CONTACT_DISTANCE,
    upTo = WIDEST_SWAY,
    tally: Tally = newTally(),
): PairsInTurn {
    return finish(pairsInSteps(lines, turn, contact, upTo, tally));
}

/** The same a pair at a time. */
export function* pairsInSteps(
    lines: readonly TurningLine[],
    turn: Turn,
    contact: number,
    upTo: number,
    tally: Tally,
): Steps<PairsInTurn> {
    const swept = lines.map((line) => sweep(line.course, line));
    const pairs: PairInTurn[] = [];
    const unsettled: [number, number][] = [];
    for (let a = 0; a < lines.length; a++) {
        for (let b = a + 1; b < lines.length; b++) {
            const met = nearest(swept[a]!, swept[b]!, tally);
            if (!met) continue;
            const margin =
                met === 'unsettled'
                    ? undefined
                    : yield* turnMargin(lines[a]!, lines[b]!, tally, contact, upTo);
            if (met === 'unsettled' || !margin || margin.outcome === 'unsettled') {
                unsettled.push([a, b]);
                continue;
            }
            const { distance, time, at } = met;
            // Lines that can sway without touching do not pass through each other without.
            const passed =
                margin.outcome === 'touch' && margin.sway === 0
                    ? passage(lines[a]!.course, lines[b]!.course, tally)
                    : undefined;
            pairs.push({
                lines: [a, b],
                distance,
                time,
                turned: Math.abs(boatAt(turn, time).heading),
                at,
                fromTowPoint: [
                    fromTowPoint(lines[a]!.course, time, at[0]),
                    fromTowPoint(lines[b]!.course, time, at[1]),
                ],
                margin,
                ...(passed !== undefined && { passedThrough: passed }),
            });
            yield;
        }
    }
    pairs.sort((one, other) => one.distance - other.distance || marginOf(one) - marginOf(other));
    return { pairs, unsettled };
}

/**
 * The smallest sway at which two lines come within the contact distance somewhere in the turn; caps apply. Step by
 * step, a sway at a time.
 */
export function* turnMargin(
    first: TurningLine,
    second: TurningLine,
    tally: Tally,
    contact = CONTACT_DISTANCE,
    upTo = WIDEST_SWAY,
): Steps<TurnMargin> {
    const touch = yield* leastSway(
        (sway) =>
            nearest(
                sweep(first.course, { ...first, sway }),
                sweep(second.course, { ...second, sway }),
                tally,
                contact,
                true,
            ),
        upTo,
    );
    if (!touch) return { outcome: 'clear', upTo };
    const { sway, found } = touch;
    if (found === 'unsettled') return { outcome: 'unsettled' };
    const { time } = found;
    const atLure = ({ course, cap }: TurningLine) => {
        const line: SwayingLine = { line: course.at(time).line, sway, cap };
        return swayAtLure(line);
    };
    return { outcome: 'touch', sway, atLures: [atLure(first), atLure(second)], time };
}

function fromTowPoint(course: Course, time: number, point: Vec): number {
    return norm(subtract(point, course.at(time).line[0]!));
}

function marginOf({ margin }: PairInTurn): number {
    return margin.outcome === 'touch' ? margin.sway : margin.upTo;
}
