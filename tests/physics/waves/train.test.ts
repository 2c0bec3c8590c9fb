import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KNOT } from '../../../language/src/physics/constants.ts';
import { habitFromCrests } from '../../../language/src/physics/waves/measured-crests.ts';
import { USUAL_HABIT, waveTrain } from '../../../language/src/physics/waves/train.ts';
import { wavelength } from '../../../language/src/physics/waves/wavelength.ts';

const EIGHT = 8 * KNOT;

test('by default the first crest is half a wave astern', () => {
    const train = waveTrain(EIGHT)!;
    expect(train.length).toBe(wavelength(EIGHT));
    expect(train.firstCrest).toBe(train.length / 2);
});

test('one measured crest moves the train and scales with the wave at other speeds', () => {
    const { habit, firstCrest, spacing } = habitFromCrests([{ number: 1, astern: 6.5 }], EIGHT)!;
    expect(firstCrest).toBe(6.5);
    expect(spacing).toBe(wavelength(EIGHT));
    expect(waveTrain(EIGHT, habit)!.firstCrest).toBeCloseTo(6.5, 12);
    expect(waveTrain(EIGHT / 2, habit)!.firstCrest).toBeCloseTo(6.5 / 4, 12);
});

test('several measured crests are fitted as a straight line is', () => {
    // The line through (0, 6), (1, 17), (3, 40) by the normal equations, worked by hand.
    const crests = [
        { number: 1, astern: 6 },
        { number: 2, astern: 17 },
        { number: 4, astern: 40 },
    ];
    const { firstCrest, spacing, residual, doubtful } = habitFromCrests(crests, EIGHT)!;
    expect(spacing).toBeCloseTo(159 / 14, 12);
    expect(firstCrest).toBeCloseTo(41 / 7, 12);
    expect(residual).toBeGreaterThan(0);
    expect(doubtful).toBe(false);
});

test('a fitted train is found again from its own crests', () => {
    fc.assert(
        fc.property(
            fc.double({ min: 2, max: 6, noNaN: true }),
            fc.double({ min: 0, max: 2, noNaN: true }),
            fc.double({ min: 0.7, max: 1.4, noNaN: true }),
            fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 6 }),
            (speed, firstCrestShare, spacingShare, numbers) => {
                const train = waveTrain(speed, { firstCrestShare, spacingShare })!;
                const crests = numbers.map((number) => ({
                    number,
                    astern: train.firstCrest + (number - 1) * train.length,
                }));
                const { habit, residual } = habitFromCrests(crests, speed)!;
                expect(habit.firstCrestShare).toBeCloseTo(firstCrestShare, 8);
                expect(habit.spacingShare).toBeCloseTo(spacingShare, 9);
                expect(residual).toBeLessThan(1e-9);
            },
        ),
    );
});

test('a spacing more than 15 % off theory is doubtful: speed over ground instead of through the water', () => {
    // A knot of current against an 8 kn reading: waves of 7 kn, (7/8)² − 1 = −23 %.
    const slow = waveTrain(7 * KNOT)!;
    const crests = [1, 2, 3].map((number) => ({
        number,
        astern: slow.firstCrest + (number - 1) * slow.length,
    }));
    const fitted = habitFromCrests(crests, EIGHT)!;
    expect(fitted.offTheory).toBeCloseTo(49 / 64 - 1, 12);
    expect(fitted.doubtful).toBe(true);
    expect(habitFromCrests(crests, 7.4 * KNOT)!.doubtful).toBe(false);
});

test('crests that fit no train give none', () => {
    expect(habitFromCrests([], EIGHT)).toBeUndefined();
    expect(habitFromCrests([{ number: 1, astern: Number.NaN }], EIGHT)).toBeUndefined();
    expect(habitFromCrests([{ number: 1.5, astern: 8 }], EIGHT)).toBeUndefined();
    const backwards = [
        { number: 1, astern: 20 },
        { number: 2, astern: 9 },
    ];
    expect(habitFromCrests(backwards, EIGHT)).toBeUndefined();
    expect(habitFromCrests([{ number: 1, astern: 6 }], 6, 3)).toBeUndefined();
    expect(waveTrain(6, USUAL_HABIT, 3)).toBeUndefined();
});
