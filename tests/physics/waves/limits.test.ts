import { describe, expect, test } from 'vitest';
import { STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import { asternAt, centreOf, crestCurve, insideWedge } from '../../../language/src/physics/waves/crest.ts';
import { habitFromCrests } from '../../../language/src/physics/waves/measured-crests.ts';
import { backWave, rideAt, speedBand } from '../../../language/src/physics/waves/ride.ts';
import { waveTrain } from '../../../language/src/physics/waves/train.ts';
import { doubts, PLANING_FROUDE, ROUGH_SHARE } from '../../../language/src/physics/waves/trust.ts';
import { washHalfWidth } from '../../../language/src/physics/waves/wash.ts';
import { boatWaveHeight } from '../../../language/src/physics/waves/wave-height.ts';
import { speedFor, wavelength } from '../../../language/src/physics/waves/wavelength.ts';

const SQRT8 = Math.sqrt(8);
const ten = { length: 10, firstCrest: 5 };

describe('the length of a wave', () => {
    test('is not known of a figure that is nothing, or beyond all figures', () => {
        for (const [speed, depth, gravity] of [
            [0, 10, 9.8],
            [-1, 10, 9.8],
            [4, 0, 9.8],
            [4, 10, 0],
            [4, 10, -9.8],
            [4, Number.POSITIVE_INFINITY, 0],
            [1e200, Number.POSITIVE_INFINITY, 1e200],
            [Number.NaN, 10, 9.8],
        ] as const)
            expect(wavelength(speed, depth, gravity)).toBeUndefined();
        // Small gravity and a great speed are no fault of themselves.
        expect(wavelength(1e3, Number.POSITIVE_INFINITY, 1e-3)).toBeCloseTo(2 * Math.PI * 1e9, 0);
    });

    test('has no end at the critical speed of its depth, which is the speed of a wave without end', () => {
        // 4 m/s where gravity × depth is 16.
        expect(wavelength(4, 2, 8)).toBeUndefined();
        expect(wavelength(3.99, 2, 8)).toBeGreaterThan(20);
        expect(speedFor(Number.POSITIVE_INFINITY, 2, 8)).toBe(4);
        expect(speedFor(1e9, 2, 8)).toBeCloseTo(4, 9);
    });

    test('in shallow water satisfies speed² = (gravity / k) · tanh(k · depth), near the critical speed as well', () => {
        for (const speed of [1, 2, 3, 3.5, 3.9, 3.99, 3.9999]) {
            const k = (2 * Math.PI) / wavelength(speed, 2, 8)!;
            expect((8 / k) * Math.tanh(k * 2)).toBeCloseTo(speed * speed, 9);
        }
    });
});

describe('the wedge', () => {
    test('ends where a crest is 1.5·√3 times as far astern in the middle as it is wide: there it is √8 astern', () => {
        expect(asternAt(1.5 * Math.sqrt(3), 1)).toBeCloseTo(SQRT8, 9);
        expect(asternAt(1.5 * Math.sqrt(3) * 0.999, 1)).toBeUndefined();
        expect(insideWedge(SQRT8, 1)).toBe(true);
        expect(insideWedge(SQRT8 * (1 - 1e-9), 1)).toBe(false);
        expect(centreOf(SQRT8, 1)).toBeCloseTo(1.5 * Math.sqrt(3), 5);
    });

    test('begins behind the transom', () => {
        expect(insideWedge(0, 0)).toBe(false);
        expect(asternAt(0, 0)).toBe(0);
        expect(asternAt(-1, 0)).toBeUndefined();
        expect(centreOf(0, 0)).toBeUndefined();
        for (const [astern, lateral] of [
            [Number.POSITIVE_INFINITY, 1],
            [Number.POSITIVE_INFINITY, 0],
            [Number.NaN, 0],
            [10, Number.NaN],
        ] as const) {
            expect(centreOf(astern, lateral)).toBeUndefined();
            expect(asternAt(astern, lateral)).toBeUndefined();
        }
    });

    test('holds no crest that is not behind the transom, and as many points as were asked for', () => {
        expect(crestCurve({ length: 10, firstCrest: 0 }, 1)).toEqual([]);
        expect(crestCurve({ length: 10, firstCrest: -1 }, 1)).toEqual([]);
        const curve = crestCurve(ten, 1, 4);
        expect(curve).toHaveLength(9);
        expect(curve[4]).toEqual([5, 0]);
        expect(curve[0]![1]).toBeCloseTo(-curve[8]![1], 12);
        expect(curve[8]![1]).toBeGreaterThan(0);
    });
});

describe('a lure on a wave', () => {
    test('half a wave behind a crest is in the lower third of the next face, and not in the trough', () => {
        expect(rideAt(ten, 10)).toMatchObject({ wave: 2, part: 'front, lower', beforeCrest: 0.5 });
        expect(rideAt(ten, 9.9)).toMatchObject({ wave: 2, part: 'trough' });
    });

    test('is nowhere outside the wedge, and no place on a wave is at the transom', () => {
        expect(rideAt(ten, 10, 5)).toBeUndefined();
        expect(backWave({ length: 10, firstCrest: 4 }, 1)).toBeUndefined();
        expect(backWave({ length: 10, firstCrest: 4.1 }, 1)).toBeCloseTo(0.1, 9);
    });

    test('on the first face stays there at any greater speed, where the first crest stands within half a wave', () => {
        const band = speedBand(1, 5, 0, { firstCrestShare: 0.3, spacingShare: 1 })!;
        expect(band.to).toBe(Number.POSITIVE_INFINITY);
        // The crest reaches it when three tenths of the wave are 5 m.
        expect(band.from).toBeCloseTo(Math.sqrt((STANDARD_GRAVITY * 5) / 0.3 / (2 * Math.PI)), 9);
        expect(speedBand(1, 5, 0, { firstCrestShare: 0.3, spacingShare: 1 }, 10)!.to).toBeCloseTo(
            Math.sqrt(STANDARD_GRAVITY * 10),
            9,
        );
    });

    test('has no band where no crest could carry it', () => {
        expect(speedBand(1, 5, 0, { firstCrestShare: 0, spacingShare: 1 })).toBeUndefined();
        for (const spacingShare of [0, -1]) {
            expect(speedBand(1, 5, 0, { firstCrestShare: 0.5, spacingShare })).toBeUndefined();
            expect(waveTrain(4, { firstCrestShare: 0.5, spacingShare })).toBeUndefined();
        }
        expect(speedBand(1, 5, 5)).toBeUndefined();
    });
});

describe('measured crests', () => {
    const at = (...crests: [number, number][]) => crests.map(([number, astern]) => ({ number, astern }));

    test('fit no train where one has half a number, two are at one distance, or the boat lies still', () => {
        expect(habitFromCrests(at([1.5, 6], [2, 16]), 4)).toBeUndefined();
        expect(habitFromCrests(at([1, 10], [2, 10]), 4)).toBeUndefined();
        expect(habitFromCrests(at([1, 16], [2, 6]), 4)).toBeUndefined();
        expect(habitFromCrests(at([1, 6], [2, 16]), 0)).toBeUndefined();
        expect(habitFromCrests([], 4)).toBeUndefined();
    });
});

describe('what speaks against the waves', () => {
    const hull = { waterline: 9, beam: 3.5 };

    test('a boat that planes, with its Froude number', () => {
        expect(doubts({ speed: 6 }, hull)).toEqual([
            {
                reason: 'planing',
                froude: expect.closeTo(6 / Math.sqrt(STANDARD_GRAVITY * 9), 9),
                limit: PLANING_FROUDE,
            },
        ]);
        expect(doubts({ speed: 5 }, hull)).toEqual([]);
        expect(doubts({ speed: 6 }, { waterline: 0, beam: 3.5 })).toEqual([]);
        expect(doubts({ speed: 6 }, {})).toEqual([]);
    });

    test('water in which no wave keeps up, from the critical speed itself', () => {
        const critical = Math.sqrt(STANDARD_GRAVITY * 2);
        expect(doubts({ speed: critical, depth: 2 }, {})).toEqual([
            { reason: 'shallow', speed: critical, critical },
        ]);
        expect(doubts({ speed: critical * 0.999, depth: 2 }, {})).toEqual([]);
    });

    test('a sea that hides them, judged two waves astern or at the place that is asked about', () => {
        const own = (astern: number) => boatWaveHeight(hull, 4, astern)!;
        const twoWaves = own(2 * wavelength(4)!);
        const sea = twoWaves * ROUGH_SHARE;
        expect(doubts({ speed: 4, sea: sea * 1.01 }, hull)).toEqual([
            { reason: 'rough', sea: sea * 1.01, limit: expect.closeTo(sea, 9) },
        ]);
        expect(doubts({ speed: 4, sea: sea * 0.99 }, hull)).toEqual([]);
        const near = { astern: 5, lateral: 0 };
        expect(doubts({ speed: 4, sea: sea * 1.01 }, hull, near)).toEqual([]);
        expect(doubts({ speed: 4, sea: own(5) }, hull, near)).toEqual([
            { reason: 'rough', sea: own(5), limit: expect.closeTo(own(5) * ROUGH_SHARE, 9) },
        ]);
        for (const unknown of [{ waterline: 9 }, { beam: 3.5 }, {}])
            expect(doubts({ speed: 4, sea: 9 }, unknown)).toEqual([]);
    });

    test('a place outside the wedge, with how far it reaches there', () => {
        expect(doubts({ speed: 4 }, {}, { astern: 10, lateral: -5 })).toEqual([
            { reason: 'outside wedge', lateral: 5, limit: expect.closeTo(10 / SQRT8, 9) },
        ]);
        expect(doubts({ speed: 4 }, {}, { astern: -3, lateral: 1 })).toEqual([
            { reason: 'outside wedge', lateral: 1, limit: 0 },
        ]);
        expect(doubts({ speed: 4 }, {}, { astern: 10, lateral: 3 })).toEqual([]);
    });
});

test('a hull, a speed or a distance that is nothing makes no wave that could be measured', () => {
    const hull = { waterline: 9, beam: 3.5 };
    expect(boatWaveHeight(hull, 4, 10)).toBeGreaterThan(0);
    for (const [wrong, speed, astern] of [
        [{ ...hull, displacement: 0 }, 4, 10],
        [{ ...hull, displacement: -1 }, 4, 10],
        [{ ...hull, waterline: 0, displacement: 5000 }, 4, 10],
        [{ ...hull, waterline: -9, displacement: 5000 }, 4, 10],
        [hull, 0, 10],
        [hull, -4, 10],
        [hull, 4, 0],
    ] as const)
        expect(boatWaveHeight(wrong, speed, astern)).toBeUndefined();
});

test('a wash without length is nowhere', () => {
    expect(washHalfWidth({ halfWidth: 1, endHalfWidth: 0.5, length: 0 }, 0)).toBe(0);
    expect(washHalfWidth({ halfWidth: 1, endHalfWidth: 0.5, length: 10 }, 10)).toBe(0.5);
    expect(washHalfWidth({ halfWidth: 1, endHalfWidth: 0.5, length: 10 }, 0)).toBe(1);
});
