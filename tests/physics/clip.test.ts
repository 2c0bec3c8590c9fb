import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capstan, clipMargin, dropBack, openingPull, surgeFactor } from '../../language/src/physics/clip.ts';
import { KNOT, STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import { mirror, scale, type Vec } from '../../language/src/physics/vector.ts';
import { integrate } from './integrate.ts';

const slackOf = (...question: Parameters<typeof dropBack>) => {
    const answer = dropBack(...question);
    if (answer.kind !== 'drop-back') throw new Error(answer.reason);
    return answer;
};

describe('surge and margin', () => {
    test('the pull surges by 1.2 in a slight sea and by 1.5 from 1.5 m up', () => {
        expect(surgeFactor(0.3)).toBe(1.2);
        expect(surgeFactor(0.5)).toBe(1.2);
        expect(surgeFactor(1)).toBeCloseTo(1.35, 12);
        expect(surgeFactor(1.5)).toBeCloseTo(1.5, 12);
        expect(surgeFactor(4)).toBeCloseTo(1.5, 12);
        expect(surgeFactor(Number.NaN)).toBe(1.5);
    });

    test('a clip at 60 N over a lure of 40 N holds in a slight sea and opens for a rough one', () => {
        expect(clipMargin(60, 40, surgeFactor(0.5))).toEqual({ kind: 'margin', ratio: 1.25, spare: 12 });
        expect(clipMargin(58, 40, surgeFactor(2))).toMatchObject({ spare: -2 });
        expect(clipMargin(60, 0, 1.2).kind).toBe('unknown');
    });
});

describe('what a fish must pull', () => {
    /** The line turns by a right angle at the clip. */
    const square = { tip: [0, 0, 0], clip: [0, 0, 4], lure: [-40, 0, 4] } as const;

    test('the capstan agrees with its differential equation dT = friction × T dθ, and with hand-worked guides', () => {
        const [integrated] = integrate((_, [pull]) => [0.15 * pull!], 0, [1], Math.PI / 2);
        expect(capstan(1, 0.15, Math.PI / 2)).toBeCloseTo(integrated!, 9);
        expect(capstan(1, 0.1, Math.PI / 3)).toBeCloseTo(1.11, 2);
        expect(capstan(1, 0.15, Math.PI / 2)).toBeCloseTo(1.27, 2);
    });

    test('a clip that pinches a slack line opens at its setting, whatever the geometry', () => {
        expect(openingPull({ ...square, setting: 50, line: 'held', reel: 0 })).toEqual({
            kind: 'opens',
            pull: 50,
            turn: expect.closeTo(Math.PI / 2, 12),
        });
    });

    test('at a right angle the reel’s pull helps as the side of a triangle: 3, 4, 5', () => {
        const answer = openingPull({ ...square, setting: 50, line: 'held', reel: 30 });
        expect(answer).toMatchObject({ kind: 'opens', pull: expect.closeTo(40, 10) });
        expect(openingPull({ ...square, setting: 50, line: 'held', reel: 50 }).kind).toBe('opens-alone');
    });

    test('a line that slides without friction pulls alike on both sides: √2 of it at a right angle', () => {
        const answer = openingPull({ ...square, setting: 50, line: 'slides', reel: 80, friction: 0 });
        expect(answer).toMatchObject({ kind: 'opens', pull: expect.closeTo(50 / Math.SQRT2, 10) });
    });

    test('where the reel gives line before the clip opens, the line runs through and the clip never opens', () => {
        const answer = openingPull({ ...square, setting: 50, line: 'slides', reel: 20 });
        expect(answer).toMatchObject({
            kind: 'runs-through',
            pull: expect.closeTo(20 * Math.exp(0.05 * Math.PI), 10),
        });
    });

    test('a line that runs straight through pulls on the clip with nothing', () => {
        const straight = { tip: [4, 0, 0], clip: [0, 0, 0], lure: [-40, 0, 0] } as const;
        expect(openingPull({ ...straight, setting: 5, line: 'slides', reel: 1000 }).kind).toBe(
            'runs-through',
        );
    });

    test('the two pulls at the opening add up to the setting as vectors, for any geometry', () => {
        const place = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -60, max: 60, noNaN: true })));
        const share = fc.double({ min: 0, max: 2, noNaN: true });
        fc.assert(
            fc.property(place, place, place, share, share, (tip, clip, lure, reel, friction) => {
                const geometry = { tip, clip, lure } as unknown as { tip: Vec; clip: Vec; lure: Vec };
                for (const line of ['held', 'slides'] as const) {
                    const answer = openingPull({ ...geometry, setting: 50, line, reel: 50 * reel, friction });
                    if (answer.kind !== 'opens') continue;
                    expect(answer.pull).toBeGreaterThanOrEqual(-1e-9);
                    const near = line === 'held' ? 50 * reel : answer.pull / Math.exp(friction * answer.turn);
                    const along = near * -Math.cos(answer.turn) + answer.pull;
                    const across = near * Math.sin(answer.turn);
                    expect(Math.hypot(along, across)).toBeCloseTo(50, 6);
                }
            }),
        );
    });

    test('clip and rod tip in one place, or a clip without a setting, are named', () => {
        expect(openingPull({ ...square, tip: square.clip, setting: 50, line: 'held', reel: 0 }).kind).toBe(
            'unknown',
        );
        expect(openingPull({ ...square, setting: 0, line: 'held', reel: 0 }).kind).toBe('unknown');
        expect(openingPull({ ...square, setting: 9, line: 'held', reel: Number.NaN }).kind).toBe('unknown');
    });
});

describe('drop-back', () => {
    test('5 m up to the clip and 13 m down to the lure, where the straight way is 12 m, drop 6 m back', () => {
        const geometry = { tip: [0, 0, 0], clip: [0, 0, 5], lure: [-12, 0, 0] } as const;
        expect(slackOf(geometry, 0, 4).detour).toBeCloseTo(6, 12);
        expect(slackOf(geometry, 1.2, 4)).toMatchObject({
            slack: expect.closeTo(7.2, 12),
            stall: expect.closeTo(1.8, 12),
        });
    });

    test('a clip out to the side counts the same: 3, 4, 5 and 6, 8, 10', () => {
        const geometry = { tip: [0, 0, 0], clip: [0, 3, 4], lure: [-8, -3, 4] } as const;
        expect(slackOf(geometry, 0, 4).detour).toBeCloseTo(5 + 10 - Math.sqrt(89), 12);
    });

    test('11 m at 8 kn are 2.7 s, a loop of 1.2 m alone is 0.3 s', () => {
        const straight = { tip: [0, 0, 0], clip: [0, 0, 0], lure: [-40, 0, 0] } as const;
        expect(slackOf(straight, 11, 8 * KNOT).stall).toBeCloseTo(2.7, 1);
        expect(slackOf(straight, 1.2, 8 * KNOT).stall).toBeCloseTo(0.3, 1);
    });

    /** Rod tips, clips and lures of ordinary boats. Common practice, no source. */
    const ordinary = [5.5, 6.5, 8, 10].map((height) => {
        const out = 3.5 + 0.45 * height;
        return {
            tip: [0.5, 1.4, 2.4] as const,
            clip: [2, out, height] as const,
            lure: [-28 - 2 * height, out, 0] as const,
        };
    });

    test('7 to 13 m fall slack from clips 5.5 to 10 m high', () => {
        const [lowest, ...higher] = ordinary.map((geometry) => slackOf(geometry, 0, 8 * KNOT).detour);
        expect(lowest).toBeGreaterThan(7);
        for (const [index, slack] of higher.entries()) {
            expect(slack).toBeGreaterThan([lowest, ...higher][index]!);
            expect(slack).toBeLessThan(13);
        }
    });

    test('on an ordinary rigger line with a slack loop the lure stalls for the two to three seconds that crews count', () => {
        for (const geometry of ordinary.slice(0, 3)) {
            const { stall } = slackOf(geometry, 1.2, 8 * KNOT);
            expect(stall).toBeGreaterThanOrEqual(2);
            expect(stall).toBeLessThanOrEqual(3);
        }
    });

    test('slack is never negative, mirrors with the boat and scales with it', () => {
        const place = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -60, max: 60, noNaN: true })));
        fc.assert(
            fc.property(place, place, place, (a, b, c) => {
                const [tip, clip, lure] = [a, b, c] as unknown as [Vec, Vec, Vec];
                const { detour, stall } = slackOf({ tip, clip, lure }, 0, 4);
                expect(detour).toBeGreaterThanOrEqual(0);
                const other = slackOf({ tip: mirror(tip), clip: mirror(clip), lure: mirror(lure) }, 0, 4);
                expect(other.detour).toBeCloseTo(detour, 10);
                const [tip3, clip3, lure3] = [tip, clip, lure].map((point) => scale(point, 3));
                const larger = slackOf({ tip: tip3!, clip: clip3!, lure: lure3! }, 0, 4);
                expect(larger.detour).toBeCloseTo(3 * detour, 9);
                expect(larger.stall).toBeCloseTo(3 * stall, 9);
            }),
        );
    });

    test('a boat at rest, a loop below nothing and places that are none are named', () => {
        const geometry = ordinary[0]!;
        expect(dropBack(geometry, 1, 0).kind).toBe('unknown');
        expect(dropBack(geometry, -1, 4).kind).toBe('unknown');
        expect(dropBack({ ...geometry, lure: [Number.NaN, 0, 0] }, 1, 4).kind).toBe('unknown');
    });
});

test('about 2 kg of light drag leaves a flat line of a 3 kg lure to its clip, not to the reel', () => {
    // Common practice, no source: a flat line on light drag just holds, and is taken back every half hour.
    const flat = { tip: [0.3, 1.4, 2.4], clip: [0, 1, 1], lure: [-18, 1, 0] } as const;
    const kg = STANDARD_GRAVITY;
    const answer = openingPull({ ...flat, setting: 5 * kg, line: 'slides', reel: 2 * kg });
    expect(answer.kind).toBe('runs-through');
    if (answer.kind === 'runs-through') expect(answer.pull).toBeLessThan(3 * kg);
});
