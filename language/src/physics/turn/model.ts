import type { Vec } from '../vector.ts';
import type { Turn } from './manoeuvre.ts';

/**
 * How a line follows the boat through a turn. Each line moves by itself: no line knows of another.
 *
 * @param line   at rest behind the boat, directly astern of its tow point
 * @param turn   see `layOut`
 * @param times  s, ascending, at which states are wanted; 0 is the moment the helm goes over
 * @returns one state for each time, or `undefined` for a line or times the model cannot take
 */
export type TurnModel<Line extends TowedLine = TowedLine> = (
    line: Line,
    turn: Turn,
    times: readonly number[],
) => LineMotion | undefined;

/** What every model needs to know of a line; a model that looks deeper asks for more. */
export interface TowedLine {
    /** In the boat's frame, m: x forward of the transom, y to port, z above the water. */
    readonly towPoint: Vec;
    /** Horizontal distance from the tow point back to the lure at rest, m, > 0. */
    readonly layback: number;
}

export interface LineMotion {
    readonly states: readonly LineState[];
    /** When the line first falls slack, s; absent when it never does. */
    readonly slackAt?: number;
}

/** A line at one moment, in axes that stand still in the water (see `BoatPose`). */
export interface LineState {
    /** s */
    readonly time: number;
    /** From the tow point (first) to the lure (last), m. Two points for a straight line. */
    readonly line: readonly Vec[];
    /** Of the lure through the water, m/s. */
    readonly speed: number;
    /** At the tow point, N; absent from a model without forces. */
    readonly tension?: number;
    readonly slack: boolean;
}
