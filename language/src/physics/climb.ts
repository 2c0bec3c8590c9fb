import { TANGENTIAL_DRAG } from './coefficients.ts';
import { SEA_WATER_DENSITY } from './constants.ts';
import { compliance, slopeOf } from './line-load.ts';
import { rootBetween } from './root.ts';
import type { Tow } from './towed.ts';
import type { Vec } from './vector.ts';

/** A point of a line at rest. */
export interface LinePoint {
    /** Unstretched line from the lure to here, m. */
    readonly from: number;
    /** Relative to the lure in x and y, to the water in z, m. */
    readonly position: Vec;
    /** The pull of the line above on the line below, N. */
    readonly force: Vec;
}

export interface Climb {
    /** At the upper end. */
    readonly end: LinePoint;
    /** Where the line leaves the water for good; absent where it never crosses the surface. */
    readonly entry?: LinePoint;
    /** Unstretched line under water, m. */
    readonly wet: number;
    /** Stretched length of the whole, m. */
    readonly stretched: number;
}

/** Where a climb ends: after so much line, or so far ahead of the lure (m). */
export type Stop = { readonly out: number } | { readonly ahead: number };

/** Of a step, in metres of position and as a share of the tension. */
const LOCAL_ERROR = 1e-7;
const MOST_STEPS = 500;
const SURFACE = 1e-9;

// Dormand and Prince's pair of orders 5 and 4 (J. Comp. Appl. Math. 6, 1980); rows of the tableau, one after another.
const A = Float64Array.of(
    ...[1 / 5],
    ...[3 / 40, 9 / 40],
    ...[44 / 45, -56 / 15, 32 / 9],
    ...[19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
    ...[9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
    ...[35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
);
const E = Float64Array.of(71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40);

/**
 * Follows a line at rest from the lure up: dF/ds = −(weight + drag), dr/ds along F, water below z = 0 and air above.
 *
 * Steps are as long as the error allows and end where the line passes the surface, where one piece of line meets
 * the next and where the climb stops.
 *
 * @param speed     of the boat through the water, m/s
 * @param force     the line's pull on the lure, N
 * @param height    of the lure above the water, m
 * @param afloat    first line from the lure that lies on the water, m; then the lure is at the surface and the line
 *                  does not pull it up
 * @param trace     filled with a point at every step, the lure's first; then no step is longer than `longest`
 * @returns `undefined` where the line runs away (slack, or blown ahead of the boat)
 */
export function climb(
    tow: Tow,
    speed: number,
    force: Vec,
    height: number,
    afloat: number,
    stop: Stop,
    trace?: LinePoint[],
    longest = Number.POSITIVE_INFINITY,
): Climb | undefined {
    const state = Float64Array.of(...force, 0, 0, height);
    const next = new Float64Array(6);
    const slopes = new Float64Array(6 * 7);
    const last = tow.sections.length - 1;

    let at = 0;
    let wet = 0;
    let stretched = 0;
    let index = 0;
    let section = tow.sections[0];
    let sectionEnd = last === 0 ? Number.POSITIVE_INFINITY : section.length;
    let underWater = height < 0 || (height === 0 && force[2] <= 0);
    let entry: LinePoint | undefined;
    const slope = slopeOf(tow, speed);

    const point = (): LinePoint => ({
        from: at,
        position: [state[3]!, state[4]!, state[5]!],
        force: [state[0]!, state[1]!, state[2]!],
    });
    const nextSection = () => {
        index++;
        section = tow.sections[index]!;
        sectionEnd = index === last ? Number.POSITIVE_INFINITY : sectionEnd + section.length;
    };
    const step = (length: number) => {
        for (let stage = 1, row = 0; stage < 7; row += stage, stage++) {
            for (let i = 0; i < 6; i++) {
                let sum = 0;
                for (let j = 0; j < stage; j++) sum += A[row + j]! * slopes[6 * j + i]!;
                next[i] = state[i]! + length * sum;
            }
            slope(next, section, underWater, slopes, 6 * stage);
        }
    };
    const errorOf = (length: number) => {
        const tension = Math.hypot(next[0]!, next[1]!, next[2]!) + 1e-6;
        let worst = 0;
        for (let i = 0; i < 6; i++) {
            let sum = 0;
            for (let j = 0; j < 7; j++) sum += E[j]! * slopes[6 * j + i]!;
            worst = Math.max(worst, Math.abs(length * sum) / (i < 3 ? tension : 1));
        }
        return worst / LOCAL_ERROR;
    };
    /** Shortens a step so that a coordinate of its end meets a value. */
    const meet = (length: number, coordinate: number, value: number) => {
        const part = rootBetween(
            (part) => {
                step(part);
                return next[coordinate]! - value;
            },
            { x: 0, residual: state[coordinate]! - value },
            { x: length, residual: next[coordinate]! - value },
            SURFACE / 10,
        )?.x;
        step(part ?? length);
        return part;
    };

    trace?.push(point());
    if (afloat > 0) {
        const lies = Math.min(afloat, 'out' in stop ? stop.out : stop.ahead);
        while (at < lies) {
            const piece = Math.min(lies, sectionEnd) - at;
            const { diameter } = section;
            const { tangentialDrag = TANGENTIAL_DRAG.value } = tow;
            const friction = 0.5 * SEA_WATER_DENSITY * Math.PI * diameter * tangentialDrag * speed ** 2;
            state[0] = state[0]! + friction * piece;
            state[3] = state[3]! + piece;
            at += piece;
            if (at >= sectionEnd) nextSection();
        }
        wet = stretched = at;
        underWater = false;
        entry = point();
        trace?.push(entry);
        if (lies < afloat) return { end: entry, entry, wet, stretched };
    }
    let length = 0.05;
    for (let steps = 0; steps < MOST_STEPS; steps++) {
        const room = Math.min(sectionEnd, 'out' in stop ? stop.out : Number.POSITIVE_INFINITY) - at;
        const planned = length;
        length = Math.min(length, room, longest);
        slope(state, section, underWater, slopes, 0);
        step(length);
        const error = errorOf(length);
        if (!(error < Number.POSITIVE_INFINITY)) return undefined;
        if (error > 1) {
            length *= Math.max(0.2, 0.9 * error ** -0.2);
            continue;
        }
        const growth = Math.min(6, 0.9 * (error + 1e-9) ** -0.2);
        let taken = length;
        let crosses = false;
        if (underWater ? next[5]! > SURFACE : next[5]! < -SURFACE) {
            const met = meet(taken, 5, 0);
            if (met !== undefined) {
                taken = met;
                crosses = true;
            }
        }
        let arrived = 'out' in stop && at + taken >= stop.out - 1e-12;
        if ('ahead' in stop && next[3]! >= stop.ahead) {
            const met = meet(taken, 3, stop.ahead);
            if (met === undefined) return undefined;
            if (met < taken) {
                taken = met;
                crosses = false;
            }
            arrived = true;
        }

        const tension = Math.hypot(state[0]! + next[0]!, state[1]! + next[1]!, state[2]! + next[2]!) / 2;
        stretched += taken * (1 + tension * compliance(section));
        if (underWater) wet += taken;
        at += taken;
        state.set(next);
        length = Math.max(planned, length * growth);
        if (crosses) {
            state[5] = 0;
            underWater = !underWater;
            entry = point();
        }
        trace?.push(point());
        if (arrived) return { end: point(), wet, stretched, ...(entry && { entry }) };
        if (at >= sectionEnd - 1e-12) {
            nextSection();
        }
    }
    return undefined;
}
