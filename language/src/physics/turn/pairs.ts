import { CONTACT_DISTANCE, leastSway, type SwayingLine, swayAtLure, WIDEST_SWAY } from '../sway.ts';
import { norm, subtract, type Vec } from '../vector.ts';
import type { Course } from './course.ts';
import { boatAt, type Turn } from './manoeuvre.ts';
import { nearest, type Tally } from './meeting.ts';
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
    readonly margin: TurnMargin;
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
    | { readonly outcome: 'clear'; readonly upTo: number };

export interface TurningLine extends Swaying {
    readonly course: Course;
}

/**
 * Every two of several lines in a turn, the nearest pair first.
 *
 * @param contact  lines nearer than this are taken to touch, m
 * @param upTo     no margin is looked for beyond, rad
 */
export function pairsInTurn(
    lines: readonly TurningLine[],
    turn: Turn,
    contact = CONTACT_DISTANCE,
    upTo = WIDEST_SWAY,
    tally: Tally = { fanPairs: 0, boxes: 0 },
): PairInTurn[] {
    const swept = lines.map((line) => sweep(line.course, line));
    const pairs: PairInTurn[] = [];
    for (let a = 0; a < lines.length; a++) {
        for (let b = a + 1; b < lines.length; b++) {
            const met = nearest(swept[a]!, swept[b]!, tally);
            if (!met) continue;
            const { distance, time, at } = met;
            const margin = turnMargin(lines[a]!, lines[b]!, tally, contact, upTo);
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
        }
    }
    return pairs.sort((one, other) => one.distance - other.distance || marginOf(one) - marginOf(other));
}

/** The smallest sway at which two lines come within the contact distance somewhere in the turn; caps apply. */
export function turnMargin(
    first: TurningLine,
    second: TurningLine,
    tally: Tally,
    contact = CONTACT_DISTANCE,
    upTo = WIDEST_SWAY,
): TurnMargin {
    const touch = leastSway(
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
    const { sway } = touch;
    const { time } = touch.found;
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
