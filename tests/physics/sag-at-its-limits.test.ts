import { expect, test } from 'vitest';
import { hang } from '../../language/src/physics/sag.ts';

/** (sinh x − x) / x, term by term: x²/3! + x⁴/5! + … */
function excessShare(x: number): number {
    let [term, sum] = [1, 0];
    for (let n = 2; n < 60; n += 2) {
        term *= (x * x) / (n * (n + 1));
        sum += term;
    }
    return sum;
}

// Half the span over the catenary's parameter, from a line that hardly sags to one that hangs like a chain.
test.each([1e-12, 1e-10, 2e-9, 1e-4, 0.01, 0.05, 0.0999, 0.1, 0.1001, 0.5, 2, 8])(
    'the catenary of span 20 m and parameter 10 m / %s agrees with its series to twelve digits',
    (half) => {
        const found = hang(20, 10, half)!;
        expect(found.excess / (20 * excessShare(half))).toBeCloseTo(1, 12);
        // cosh x − 1 = x²/2! + x⁴/4! + …; the sag is span / (2x) of it.
        let [term, sum] = [1, 0];
        for (let n = 1; n < 60; n += 2) {
            term *= (half * half) / (n * (n + 1));
            sum += term;
        }
        expect(found.sag / ((20 / (2 * half)) * sum)).toBeCloseTo(1, 12);
        expect(found.slope).toBeCloseTo(Math.atan(Math.sinh(half)), 12);
    },
);

test('has no answer beyond a million spans, and one at the end of them', () => {
    expect(hang(20, 10, 14)).toBeDefined();
    expect(hang(20, 10, 14.001)).toBeUndefined();
    expect(hang(20, 10, 0)).toEqual({ sag: 0, excess: 0, slope: 0 });
});
