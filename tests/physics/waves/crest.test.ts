import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
    asternAt,
    centreOf,
    crestCurve,
    insideWedge,
    WEDGE_HALF_ANGLE,
} from '../../../language/src/physics/waves/crest.ts';
import reference from '../reference/kelvin-waves.json' with { type: 'json' };

const spots = fc
    .record({
        astern: fc.double({ min: 0.5, max: 150, noNaN: true }),
        share: fc.double({ min: -0.999, max: 0.999, noNaN: true }),
    })
    .map(({ astern, share }) => ({ astern, lateral: (share * astern) / Math.sqrt(8) }));

test('the wedge has the half-angle of the theory', () => {
    expect((WEDGE_HALF_ANGLE * 180) / Math.PI).toBeCloseTo(reference.half_angle_deg, 6);
    expect(insideWedge(30, 30 * Math.tan(WEDGE_HALF_ANGLE) * 0.999)).toBe(true);
    expect(insideWedge(30, 30 * Math.tan(WEDGE_HALF_ANGLE) * 1.001)).toBe(false);
});

test('a crest ends at the wedge, 8.9 % further astern than on the centreline', () => {
    const [astern, lateral] = crestCurve({ length: 10, firstCrest: 30 }, 1).at(-1)!;
    expect(astern / 30).toBeCloseTo(1.0887, 4);
    expect(Math.atan2(lateral, astern)).toBeCloseTo(WEDGE_HALF_ANGLE, 12);
    expect(asternAt(30, lateral * 1.0001)).toBeUndefined();
});

test('at the wedge successive crests are the reference distance apart, square to the crest', () => {
    for (const { lambda_transverse, diverging_wavelength_at_cusp, cusp_crest_angle_deg } of reference.table) {
        const train = { length: lambda_transverse, firstCrest: 3 };
        const [near, far] = [crestCurve(train, 1).at(-1)!, crestCurve(train, 2).at(-1)!];
        const angle = (cusp_crest_angle_deg * Math.PI) / 180;
        // The wave at the port edge travels ahead and outward: its normal is at the crest angle off the course.
        const apart = (far[0] - near[0]) * Math.cos(angle) - (far[1] - near[1]) * Math.sin(angle);
        expect(Math.abs(apart / diverging_wavelength_at_cusp - 1)).toBeLessThan(1e-5);
    }
});

test('a crest is where the phase of all waves that keep pace is stationary', () => {
    // Havelock 1908: the phase (x·cosθ − |y|·sinθ)/cos²θ of the plane wave at θ, least over the transverse waves.
    const stationary = (astern: number, lateral: number) => {
        const phase = (angle: number) =>
            (astern * Math.cos(angle) - Math.abs(lateral) * Math.sin(angle)) / Math.cos(angle) ** 2;
        let [low, high] = [0, Math.atan(Math.SQRT1_2)];
        for (let step = 0; step < 200; step++) {
            const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
            if (phase(a) < phase(b)) high = b;
            else low = a;
        }
        return phase((low + high) / 2);
    };
    fc.assert(
        fc.property(spots, ({ astern, lateral }) => {
            expect(centreOf(astern, lateral)! / stationary(astern, lateral)).toBeCloseTo(1, 9);
        }),
    );
});

test('the crest through a point passes through that point, on either side alike', () => {
    fc.assert(
        fc.property(spots, ({ astern, lateral }) => {
            const centre = centreOf(astern, lateral)!;
            expect(asternAt(centre * (1 + 1e-15), lateral)! / astern).toBeCloseTo(1, 6);
            expect(centreOf(astern, -lateral)).toBe(centre);
        }),
    );
});

test('no crest is placed outside the wedge, ahead of the transom or for figures that are none', () => {
    expect(centreOf(10, 4)).toBeUndefined();
    expect(centreOf(-5, 0)).toBeUndefined();
    expect(centreOf(Number.NaN, 0)).toBeUndefined();
    expect(asternAt(-1, 0)).toBeUndefined();
    expect(asternAt(10, Number.NaN)).toBeUndefined();
    expect(crestCurve({ length: 10, firstCrest: -3 }, 1)).toEqual([]);
});
