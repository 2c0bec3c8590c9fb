/**
 * Whether a value is more than its limit by something that could be measured.
 *
 * Sums and conversions leave a last binary digit behind: 9.14 m and 3.05 m are not more than 12.19 m.
 */
export function exceeds(value: number, limit: number): boolean {
    return value > limit && !isSame(value, limit);
}

/** Whether two values of one dimension, in SI, differ by no more than the arithmetic that led to them. */
export function isSame(a: number, b: number): boolean {
    const apart = Math.abs(a - b);
    return a === b || (apart < Infinity && apart <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)));
}
