import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KNOT } from '../../../language/src/physics/constants.ts';
import { asternAt, crestDistance } from '../../../language/src/physics/waves/crest.ts';
import { backWave, rideAt, speedBand } from '../../../language/src/physics/waves/ride.ts';
import { USUAL_HABIT, waveTrain } from '../../../language/src/physics/waves/train.ts';

const EIGHT = 8 * KNOT;
const train = waveTrain(EIGHT)!;

test('at 8 kn waves 2 to 6 lie where handbooks put the positions', () => {
    // Common practice: short corner 12–23 m, long corner 18–34, short rigger 28–40, long rigger 38–60.
    const distances = [2, 3, 4, 5, 6].map((n) => backWave(train, n)!.toFixed(1));
    expect(distances).toEqual(['11.9', '22.8', '33.6', '44.5', '55.3']);
});

test('the lower third of the front face by height runs from 0.304 to half a wave before the crest', () => {
    // The height of a sine wave at 0.304 waves before its crest is a third of the way up, found here by search.
    let [low, high] = [0.25, 0.5];
    for (let step = 0; step < 60; step++) {
        const middle = (low + high) / 2;
        if ((1 + Math.cos(2 * Math.PI * middle)) / 2 > 1 / 3) low = middle;
        else high = middle;
    }
    expect(low).toBeCloseTo(0.304, 3);
    const partBefore = (share: number) => rideAt(train, crestDistance(train, 4) - share * train.length)!.part;
    expect(partBefore(low - 0.001)).toBe('front, middle');
    expect(partBefore(low + 0.001)).toBe('front, lower');
    expect(partBefore(0.499)).toBe('front, lower');
    expect(partBefore(0.501)).toBe('trough');
});

test('going astern a lure meets trough, front face, crest and back of each wave in turn', () => {
    const met: string[] = [];
    for (let share = -0.53; share < 1.4; share += 0.005) {
        const { wave, part } = rideAt(train, crestDistance(train, 3) + share * train.length)!;
        if (met.at(-1) !== `${wave} ${part}`) met.push(`${wave} ${part}`);
    }
    expect(met).toEqual([
        '3 trough',
        '3 front, lower',
        '3 front, middle',
        '3 front, upper',
        '3 crest',
        '3 back',
        '4 trough',
        '4 front, lower',
        '4 front, middle',
        '4 front, upper',
        '4 crest',
        '4 back',
    ]);
});

const trains = fc.record({
    speed: fc.double({ min: 2, max: 6, noNaN: true }),
    firstCrestShare: fc.double({ min: 0.1, max: 1.3, noNaN: true }),
    spacingShare: fc.double({ min: 0.8, max: 1.2, noNaN: true }),
});

test('a lure set back a wave rides that wave at its ideal point, at any lateral offset the wave reaches', () => {
    fc.assert(
        fc.property(
            trains,
            fc.integer({ min: 2, max: 9 }),
            fc.double({ min: -12, max: 12, noNaN: true }),
            (habit, n, lateral) => {
                const behind = waveTrain(habit.speed, habit)!;
                const astern = backWave(behind, n, lateral);
                fc.pre(astern !== undefined);
                const ride = rideAt(behind, astern!, lateral)!;
                expect(ride).toMatchObject({ wave: n, idealWave: n, part: 'front, lower' });
                expect(ride.beforeCrest).toBeCloseTo(0.4, 6);
                expect(ride.toIdeal).toBeCloseTo(0, 6);
                expect(backWave(behind, n, -lateral)).toBe(astern);
            },
        ),
    );
});

test('off the centreline a wave lies further back, as its crest does', () => {
    expect(backWave(train, 4, 6)!).toBeGreaterThan(backWave(train, 4, 0)!);
    expect(backWave(train, 4, 6)!).toBeLessThan(asternAt(crestDistance(train, 4), 6)!);
});

test('to the ideal point is how far to let back', () => {
    const ideal = backWave(train, 5, 3)!;
    expect(rideAt(train, ideal - 2, 3)!.toIdeal).toBeCloseTo(2, 9);
    expect(rideAt(train, ideal + 2, 3)!.toIdeal).toBeCloseTo(-2, 9);
});

test('ahead of the first trough the wave is number 0 and the way to the ideal leads to wave 1', () => {
    const late = { length: 10, firstCrest: 12 };
    expect(rideAt(late, 3)).toMatchObject({ wave: 0, part: 'back', idealWave: 1, toIdeal: 5 });
});

test('where the first wave begins ahead of the transom the nearest ideal point is on the second', () => {
    const early = { length: 10, firstCrest: 3 };
    expect(backWave(early, 1)).toBeUndefined();
    expect(rideAt(early, 1)).toMatchObject({ idealWave: 2, toIdeal: 8 });
});

test('within its speed band a lure is on the front face, just outside it is not', () => {
    fc.assert(
        fc.property(
            trains,
            fc.integer({ min: 2, max: 8 }),
            fc.double({ min: -6, max: 6, noNaN: true }),
            fc.constantFrom(Number.POSITIVE_INFINITY, 60),
            (habit, n, lateral, depth) => {
                const astern = backWave(waveTrain(habit.speed, habit, depth)!, n, lateral);
                fc.pre(astern !== undefined);
                const band = speedBand(n, astern!, lateral, habit, depth)!;
                expect(band.from).toBeLessThan(habit.speed);
                expect(band.to).toBeGreaterThan(habit.speed);
                const before = (speed: number) => {
                    const ride = rideAt(waveTrain(speed, habit, depth)!, astern!, lateral)!;
                    return ride.beforeCrest + n - ride.wave;
                };
                expect(before(band.from * 1.0001)).toBeGreaterThan(0);
                expect(before(band.from * 0.9999)).toBeLessThan(0);
                // From half a wave further back than the transom the face has an upper end in speed.
                fc.pre(Number.isFinite(band.to) && band.to < Math.sqrt(9.8 * depth) * 0.99);
                expect(before(band.to * 0.9999)).toBeLessThan(0.5);
                expect(before(band.to * 1.0001)).toBeGreaterThan(0.5);
            },
        ),
    );
});

test('a knot faster, a lure ideal on wave 5 ends up about where wave 4 is right', () => {
    // 7.5 to 8.5 kn stretches the train by 28 %.
    const astern = backWave(waveTrain(7.5 * KNOT)!, 5)!;
    expect(waveTrain(8.5 * KNOT)!.length / waveTrain(7.5 * KNOT)!.length).toBeCloseTo(1.284, 3);
    const ride = rideAt(waveTrain(8.5 * KNOT)!, astern)!;
    expect(ride.wave).toBe(4);
    expect(ride.beforeCrest).toBeCloseTo(3.5 - 4.1 / (8.5 / 7.5) ** 2, 9);
    expect(ride.part).toBe('front, lower');
});

test('the first wave of the usual habit has no upper speed in deep water and the critical one in shallow', () => {
    expect(speedBand(1, 5)!.to).toBe(Number.POSITIVE_INFINITY);
    expect(speedBand(1, 5, 0, USUAL_HABIT, 4)!.to).toBeCloseTo(Math.sqrt(9.80665 * 4), 12);
});

test('outside the wedge, ahead of the transom and for figures that are none there is no ride', () => {
    expect(rideAt(train, 10, 6)).toBeUndefined();
    expect(rideAt(train, -1, 0)).toBeUndefined();
    expect(rideAt(train, Number.NaN, 0)).toBeUndefined();
    expect(backWave(train, 1, 4)).toBeUndefined();
    expect(speedBand(0, 10)).toBeUndefined();
    expect(speedBand(3, 10, 6)).toBeUndefined();
});
