import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bow, hang } from '../../language/src/physics/sag.ts';
import reference from './reference/air-sag.json' with { type: 'json' };

test('the catenary agrees with the closed form in every tabulated case, and the parabola with it on a taut line', () => {
    for (const { span, H, w, sag_parabola, sag_catenary, arc_minus_span, end_slope_deg } of reference.cases) {
        const { sag, excess, slope } = hang(span, H, w)!;
        expect(sag / sag_catenary).toBeCloseTo(1, 5);
        expect(excess / arc_minus_span).toBeCloseTo(1, 4);
        expect(((slope * 180) / Math.PI / end_slope_deg) * 1).toBeCloseTo(1, 4);
        expect(bow(span, H, w)! / sag_parabola).toBeCloseTo(1, 5);
    }
});

test('wind bows a span of 30 m at 30 N as tabulated', () => {
    for (const { f, lateral_sag_30m_T30 } of reference.crosswind_N_per_m) {
        expect(bow(30, 30, f)! / lateral_sag_30m_T30).toBeCloseTo(1, 5);
    }
});

test('a line with no weight does not sag, and one that would hang like a chain has no answer', () => {
    expect(hang(30, 20, 0)).toEqual({ sag: 0, excess: 0, slope: 0 });
    expect(hang(1000, 1e-3, 1)).toBeUndefined();
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
        expect(hang(bad, 20, 0.01)).toBeUndefined();
        expect(hang(30, bad, 0.01)).toBeUndefined();
        expect(bow(bad, 20, 0.01)).toBeUndefined();
    }
    expect(hang(30, 20, -0.01)).toBeUndefined();
});

test('sag, excess and slope grow with the load, and joins of the small and the large form do not show', () => {
    const loads = fc.tuple(
        fc.double({ min: 1e-10, max: 10, noNaN: true }),
        fc.double({ min: 1.001, max: 1.3, noNaN: true }),
    );
    fc.assert(
        fc.property(loads, ([load, more]) => {
            const light = hang(30, 20, load)!;
            const heavy = hang(30, 20, load * more)!;
            expect(heavy.sag).toBeGreaterThan(light.sag);
            expect(heavy.excess).toBeGreaterThan(light.excess);
            expect(heavy.slope).toBeGreaterThan(light.slope);
        }),
    );
});
