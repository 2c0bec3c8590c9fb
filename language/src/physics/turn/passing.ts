import { lineGap } from '../segments.ts';
import { cross, dot, subtract, type Vec } from '../vector.ts';
import type { Course } from './course.ts';
import { firstWithin, type Tally } from './meeting.ts';
import { sweep } from './swept.ts';

/** Lines this near are looked at for a passage, m; the search tells distances to half of it. */
const TOUCH = 0.004;

/** The lines are compared so long before and after they touch, s. */
const AROUND = 0.02;

/** Touches that are no passages are passed over so many times. */
const MOST_TOUCHES = 20;

/**
 * When two lines, without sway, first pass through each other: a tangle, even if at no moment looked at they were
 * near.
 *
 * @returns s, or `undefined` when they do not, or when the search was broken off
 *
 * They pass when they touch and, by the nearest of their pieces, one is on the other side of the other afterwards.
 */
export function passage(first: Course, second: Course, tally: Tally): number | undefined {
    const [one, other] = [sweep(first, { sway: 0 }), sweep(second, { sway: 0 })];
    let from = Math.max(first.start, second.start);
    for (let touch = 0; touch < MOST_TOUCHES; touch++) {
        const met = firstWithin(one, other, tally, TOUCH, TOUCH / 2, from);
        if (!met || met === 'unsettled') return undefined;
        const { along } = lineGap(first.at(met.time).line, second.at(met.time).line)!;
        const side = (time: number) =>
            handedness(piece(first.at(time).line, along[0]), piece(second.at(time).line, along[1]));
        if (side(met.time - AROUND) * side(met.time + AROUND) < 0) return met.time;
        from = met.time + AROUND;
    }
    return undefined;
}

/** The piece of a line that holds a place along it. */
function piece(line: readonly Vec[], along: number): readonly [Vec, Vec] {
    const index = Math.min(Math.floor(along), line.length - 2);
    return [line[index]!, line[index + 1]!];
}

/** On which side one piece passes the other: the sign of the volume they span. */
function handedness([a, b]: readonly [Vec, Vec], [c, d]: readonly [Vec, Vec]): number {
    return Math.sign(dot(cross(subtract(b, a), subtract(d, c)), subtract(c, a)));
}
