import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KNOT, SEA_WATER_DENSITY, STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import { doubts } from '../../../language/src/physics/waves/trust.ts';
import { insideWash, usualWash, washHalfWidth } from '../../../language/src/physics/waves/wash.ts';
import { boatWaveHeight } from '../../../language/src/physics/waves/wave-height.ts';
import reference from '../reference/kelvin-waves.json' with { type: 'json' };

const hull = { waterline: 11, beam: 4.2 };
const reasons = (...args: Parameters<typeof doubts>) => doubts(...args).map(({ reason }) => reason);

test('at 8 kn in deep water and a slight sea an 11 m waterline leaves no doubt', () => {
    expect(doubts({ speed: 8 * KNOT, sea: 0.1 }, hull, { astern: 30, lateral: 5 })).toEqual([]);
});

test('above a Froude number of 0.55 on the waterline the train is doubted', () => {
    for (const { V, hull: hulls } of reference.table) {
        for (const { Lwl, Fr } of hulls) {
            const found = doubts({ speed: V }, { waterline: Lwl }, undefined, reference.g);
            expect(found.length).toBe(Fr > 0.55 ? 1 : 0);
            if (found[0]?.reason === 'planing') expect(found[0].froude).toBeCloseTo(Fr, 5);
        }
    }
});

test('past the critical speed, outside the wedge and in a sea that hides the wave it is doubted too', () => {
    expect(reasons({ speed: 6, depth: 3 }, {})).toEqual(['shallow']);
    expect(reasons({ speed: 4 }, {}, { astern: 10, lateral: -4 })).toEqual(['outside wedge']);
    expect(reasons({ speed: 4, sea: 1.5 }, hull)).toEqual(['rough']);
});

test('the rough limit is half the boat’s own wave and needs a hull', () => {
    const own = boatWaveHeight(hull, 4, 30)!;
    const spot = { astern: 30, lateral: 0 };
    expect(reasons({ speed: 4, sea: own * 0.499 }, hull, spot)).toEqual([]);
    expect(reasons({ speed: 4, sea: own * 0.501 }, hull, spot)).toEqual(['rough']);
    expect(reasons({ speed: 4, sea: 9 }, {}, spot)).toEqual([]);
});

test('the power that the wave’s energy needs is the power of the resistance assumed', () => {
    // Left behind each second: energy ½ρga² a square metre over the wedge's width, at speed less group speed, V/2.
    const [speed, astern] = [4.4, 25];
    const mass = 16000;
    const height = boatWaveHeight({ ...hull, displacement: mass }, speed, astern)!;
    const width = 2 * astern * Math.tan(Math.asin(1 / 3));
    const power = 0.5 * SEA_WATER_DENSITY * STANDARD_GRAVITY * (height / 2) ** 2 * width * (speed / 2);
    const froude = speed / Math.sqrt(STANDARD_GRAVITY * hull.waterline);
    expect(power).toBeCloseTo(0.06 * (froude / 0.5) ** 4 * mass * STANDARD_GRAVITY * speed, 6);
});

test('an ordinary boat at 8 kn leaves a wave of a few decimetres, lower further back', () => {
    const near = boatWaveHeight(hull, 8 * KNOT, 20)!;
    expect(near).toBeGreaterThan(0.3);
    expect(near).toBeLessThan(1.2);
    expect(boatWaveHeight(hull, 8 * KNOT, 80)! / near).toBeCloseTo(0.5, 12);
    expect(boatWaveHeight(hull, 8 * KNOT, 0)).toBeUndefined();
});

test('a boat, its speed and its sea scaled by Froude’s law keep their doubts', () => {
    fc.assert(
        fc.property(
            fc.double({ min: 2, max: 7, noNaN: true }),
            fc.double({ min: 0, max: 2, noNaN: true }),
            fc.double({ min: 2, max: 60, noNaN: true }),
            fc.double({ min: -15, max: 15, noNaN: true }),
            fc.double({ min: 0.3, max: 3, noNaN: true }),
            (speed, sea, astern, lateral, scale) => {
                const root = Math.sqrt(scale);
                const big = { waterline: hull.waterline * scale, beam: hull.beam * scale };
                expect(
                    reasons({ speed: speed * root, sea: sea * scale }, big, {
                        astern: astern * scale,
                        lateral: lateral * scale,
                    }),
                ).toEqual(reasons({ speed, sea }, hull, { astern, lateral }));
            },
        ),
    );
});

test('the wash is a trapezoid from the transom', () => {
    const wash = usualWash(4);
    expect(washHalfWidth(wash, 0)).toBeCloseTo(1.2, 12);
    expect(washHalfWidth(wash, 10)).toBeCloseTo(0.6, 12);
    expect(insideWash(wash, 5, 0.89)).toBe(true);
    expect(insideWash(wash, 5, -0.91)).toBe(false);
    expect(insideWash(wash, 10.1, 0)).toBe(false);
    expect(insideWash(wash, -0.1, 0)).toBe(false);
    expect(insideWash(wash, Number.NaN, 0)).toBe(false);
});
