import { isNotNegative, isPositive } from './sound.ts';

/** A line hung between two points at one height. */
export interface Hang {
    /** At midspan, m. */
    readonly sag: number;
    /** Longer than the span by, m. */
    readonly excess: number;
    /** At the ends, below the horizontal, rad. */
    readonly slope: number;
}

/**
 * Sag of a line under its own weight: the catenary, closed form.
 *
 * @param span  m, > 0
 * @param pull  horizontal part of the tension, N, > 0
 * @param load  weight of a metre, N, ≥ 0
 * @returns `undefined` on anything else, and where the line would hang further than a million spans
 *
 * For a chord that slopes, divide by the cosine of its angle: 2 % at 11°.
 */
export function hang(span: number, pull: number, load: number): Hang | undefined {
    if (!isPositive(span, pull) || !isNotNegative(load)) return undefined;
    const half = (span * load) / (2 * pull);
    if (half > 14) return undefined;
    if (half < 1e-9) return { sag: (span * half) / 4, excess: (span * half ** 2) / 6, slope: half };
    // cosh(x) − 1 and sinh(x) − x without the loss of digits that the plain forms have on a taut line.
    const sag = (span / (2 * half)) * 2 * Math.sinh(half / 2) ** 2;
    const excess = half < 0.1 ? span * sinhExcess(half) : (span * (Math.sinh(half) - half)) / half;
    return { sag, excess, slope: Math.atan(Math.sinh(half)) };
}

/**
 * How far an even side load (wind) bows a line out at midspan, m: the parabola, good to (8/3)·(sag/span)² of itself.
 *
 * @param span     m, > 0
 * @param tension  N, > 0
 * @param load     on a metre, N
 */
export function bow(span: number, tension: number, load: number): number | undefined {
    if (!isPositive(span, tension) || !isNotNegative(Math.abs(load))) return undefined;
    return (load * span ** 2) / (8 * tension);
}

/** (sinh x − x) / x */
function sinhExcess(x: number): number {
    const square = x * x;
    return (square / 6) * (1 + (square / 20) * (1 + (square / 42) * (1 + square / 72)));
}
