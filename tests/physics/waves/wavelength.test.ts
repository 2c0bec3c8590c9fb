import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KNOT, STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import { speedFor, wavelength } from '../../../language/src/physics/waves/wavelength.ts';
import reference from '../reference/kelvin-waves.json' with { type: 'json' };

/** The reference gives six significant digits. */
const SIX_DIGITS = 5e-6;

test.each(reference.table)(
    'at $knots kn the waves have the reference length, in deep and finite depth',
    (row) => {
        const deep = wavelength(row.V, Number.POSITIVE_INFINITY, reference.g)!;
        // The reference's speed is itself rounded to six digits, and the length goes with its square.
        expect(Math.abs(deep / row.lambda_transverse - 1)).toBeLessThan(3 * SIX_DIGITS);
        for (const { h, lambda_ } of row.finite_depth) {
            const finite = wavelength(row.V, h, reference.g)!;
            // Near the critical speed the length answers several times as strongly to the rounded speed.
            const amplification = 1 / (1 - (row.V * row.V) / (reference.g * h));
            expect(Math.abs(finite / lambda_ - 1)).toBeLessThan(3 * SIX_DIGITS * amplification);
        }
    },
);

test('the lengths that the trade quotes at 6 to 10 kn are those of the theory', () => {
    const lengths = [6, 7, 8, 9, 10].map((knots) => wavelength(knots * KNOT)!.toFixed(1));
    expect(lengths).toEqual(['6.1', '8.3', '10.9', '13.7', '17.0']);
});

test('at and above the critical speed no transverse wave keeps pace', () => {
    expect(wavelength(Math.sqrt(STANDARD_GRAVITY * 3), 3)).toBeUndefined();
    expect(wavelength(6, 3)).toBeUndefined();
    expect(wavelength(Math.sqrt(STANDARD_GRAVITY * 3) * 0.9999, 3)).toBeGreaterThan(100);
});

test('a finite depth satisfies the dispersion relation and lengthens the wave', () => {
    fc.assert(
        fc.property(
            fc.double({ min: 0.1, max: 15, noNaN: true }),
            fc.double({ min: 0.1, max: 5000, noNaN: true }),
            (speed, depth) => {
                const length = wavelength(speed, depth);
                if (speed * speed >= STANDARD_GRAVITY * depth) return length === undefined;
                const k = (2 * Math.PI) / length!;
                expect((STANDARD_GRAVITY / k) * Math.tanh(k * depth)).toBeCloseTo(speed * speed, 9);
                expect(length!).toBeGreaterThanOrEqual(wavelength(speed)! * (1 - 1e-12));
            },
        ),
    );
});

test('the speed for a length gives that length back', () => {
    fc.assert(
        fc.property(
            fc.double({ min: 1, max: 12, noNaN: true }),
            fc.oneof(fc.constant(Number.POSITIVE_INFINITY), fc.double({ min: 20, max: 500, noNaN: true })),
            (speed, depth) => {
                expect(speedFor(wavelength(speed, depth)!, depth)).toBeCloseTo(speed, 9);
            },
        ),
    );
});

test('a boat, a sea and a depth scaled together scale the wave (Froude)', () => {
    fc.assert(
        fc.property(
            fc.double({ min: 1, max: 5, noNaN: true }),
            fc.double({ min: 5, max: 50, noNaN: true }),
            fc.double({ min: 0.2, max: 5, noNaN: true }),
            (speed, depth, scale) => {
                const model = wavelength(speed, depth)!;
                expect(wavelength(speed * Math.sqrt(scale), depth * scale)! / scale / model).toBeCloseTo(
                    1,
                    9,
                );
            },
        ),
    );
});

test.each([
    [0, 10],
    [-1, 10],
    [Number.NaN, 10],
    [Number.POSITIVE_INFINITY, 10],
    [4, 0],
    [4, Number.NaN],
])('speed %d at depth %d gives no length', (speed, depth) => {
    expect(wavelength(speed, depth)).toBeUndefined();
});
