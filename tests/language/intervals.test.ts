import fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { CONFIDENCE, countInterval, shareInterval } from '../../language/src/plan/season/intervals.ts';

const tail = (1 - CONFIDENCE) / 2;

describe('how far a share can be trusted', () => {
    test('is what the beta distribution of a statistics library gives', () => {
        for (let tries = 1; tries <= 40; tries++) {
            for (let hits = 0; hits <= tries; hits++) {
                const { low, high } = shareInterval(hits, tries);
                const wantedLow = hits === 0 ? 0 : jstat.beta.inv(tail, hits, tries - hits + 1);
                const wantedHigh = hits === tries ? 1 : jstat.beta.inv(1 - tail, hits + 1, tries - hits);
                expect(low).toBeCloseTo(wantedLow, 6);
                expect(high).toBeCloseTo(wantedHigh, 6);
            }
        }
    });

    test('agrees with the table of its authors’ method for ten tries, from closed forms at both ends', () => {
        // With no hit the upper end is 1 - tail^(1/n), with all of them the lower end tail^(1/n).
        for (const tries of [1, 2, 3, 10, 100, 5000]) {
            expect(shareInterval(0, tries)).toEqual({
                low: 0,
                high: expect.closeTo(1 - tail ** (1 / tries), 9),
            });
            expect(shareInterval(tries, tries)).toEqual({
                low: expect.closeTo(tail ** (1 / tries), 9),
                high: 1,
            });
        }
    });

    test('holds the true share at least as often as it says, whatever that is and however few there are', () => {
        fc.assert(
            fc.property(
                fc.integer({ min: 1, max: 25 }),
                fc.double({ min: 0, max: 1, noNaN: true }),
                (tries, share) => {
                    let held = 0;
                    for (let hits = 0; hits <= tries; hits++) {
                        const { low, high } = shareInterval(hits, tries);
                        if (low <= share && share <= high) held += jstat.binomial.pdf(hits, tries, share);
                    }
                    expect(held).toBeGreaterThanOrEqual(CONFIDENCE - 1e-6);
                },
            ),
        );
    });

    test('mirrors: who counts what was lost gets the other side of what was landed', () => {
        fc.assert(
            fc.property(
                fc.integer({ min: 1, max: 500 }),
                fc.double({ min: 0, max: 1, noNaN: true }),
                (tries, part) => {
                    const hits = Math.round(part * tries);
                    const [one, other] = [shareInterval(hits, tries), shareInterval(tries - hits, tries)];
                    expect(one.low).toBeCloseTo(1 - other.high, 9);
                    expect(one.high).toBeCloseTo(1 - other.low, 9);
                },
            ),
        );
    });

    test('is refused for what counts nothing', () => {
        for (const [hits, tries] of [
            [2, 1],
            [-1, 3],
            [0.5, 1],
            [Number.NaN, 1],
        ] as const)
            expect(() => shareInterval(hits, tries)).toThrow(RangeError);
        expect(() => countInterval(-1)).toThrow(RangeError);
        expect(() => countInterval(1.5)).toThrow(RangeError);
    });
});

describe('how far a count can be trusted', () => {
    test('is what the chi-squared distribution of a statistics library gives', () => {
        for (const seen of [0, 1, 2, 3, 5, 10, 30, 100, 400]) {
            const { low, high } = countInterval(seen);
            expect(low).toBeCloseTo(seen === 0 ? 0 : jstat.chisquare.inv(tail, 2 * seen) / 2, 4);
            expect(high).toBeCloseTo(jstat.chisquare.inv(1 - tail, 2 * seen + 2) / 2, 4);
        }
    });

    test('of nothing seen reaches to what one would have missed one time in forty', () => {
        expect(countInterval(0)).toEqual({ low: 0, high: expect.closeTo(-Math.log(tail), 9) });
    });
});
