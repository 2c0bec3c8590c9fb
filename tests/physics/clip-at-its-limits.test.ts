import { describe, expect, test } from 'vitest';
import { clipMargin, dropBack, openingPull } from '../../language/src/physics/clip.ts';

/** From the clip the rod tip and the lure are seen 60 degrees apart: the line turns by 120 there. */
const sharp = { tip: [1, 0, 0], clip: [0, 0, 0], lure: [20, 20 * Math.sqrt(3), 0] } as const;
const NO_PLACES = 'Rod tip, clip and lure are not three places.';

describe('a clip from which tip and lure are seen 60 degrees apart', () => {
    // 7² = 5² + 3² + 2·5·3·cos 60°: the triangle of whole sides with an angle of 120 degrees.
    test('opens at 70 N when the fish pulls 50 N and the reel 30 N', () => {
        expect(openingPull({ ...sharp, setting: 70, line: 'held', reel: 30 })).toEqual({
            kind: 'opens',
            pull: expect.closeTo(50, 9),
            turn: expect.closeTo((2 * Math.PI) / 3, 9),
        });
    });

    test('feels both pulls of a line that slides, the fish’s the greater by the capstan', () => {
        const answer = openingPull({ ...sharp, setting: 70, line: 'slides', reel: 500, friction: 0.2 });
        if (answer.kind !== 'opens') throw new Error(answer.kind);
        const reel = answer.pull / Math.exp((0.2 * 2 * Math.PI) / 3);
        expect(answer.pull ** 2 + reel ** 2 + answer.pull * reel).toBeCloseTo(70 ** 2, 6);
        // Beyond that drag the line is still, below it the line runs through.
        expect(
            openingPull({ ...sharp, setting: 70, line: 'slides', reel: reel * 1.001, friction: 0.2 }).kind,
        ).toBe('opens');
        const slips = openingPull({
            ...sharp,
            setting: 70,
            line: 'slides',
            reel: reel * 0.999,
            friction: 0.2,
        });
        expect(slips).toMatchObject({ kind: 'runs-through', pull: expect.closeTo(answer.pull * 0.999, 6) });
    });

    test('feels the same wherever along its way the tip and the lure are', () => {
        const far = { ...sharp, tip: [7, 0, 0], lure: [3, 3 * Math.sqrt(3), 0] } as const;
        const question = { setting: 70, line: 'held', reel: 30 } as const;
        expect(openingPull({ ...far, ...question })).toMatchObject({ pull: expect.closeTo(50, 9) });
    });
});

describe('what cannot be answered is said in a sentence', () => {
    test('of a clip that holds a lure', () => {
        const reason = 'The clip’s setting, the pull or the surge is not above zero.';
        const questions: [number, number, number][] = [
            [0, 40, 1.2],
            [60, 0, 1.2],
            [60, 40, 0],
            [Number.NaN, 40, 1.2],
        ];
        for (const question of questions)
            expect(clipMargin(...question)).toEqual({ kind: 'unknown', reason });
    });

    test('of a clip that a fish opens', () => {
        const reason = 'The clip’s setting, the drag or the friction is out of range.';
        const question = { ...sharp, setting: 70, line: 'held', reel: 30 } as const;
        for (const wrong of [{ setting: 0 }, { reel: -1 }, { friction: -0.1 }])
            expect(openingPull({ ...question, ...wrong })).toEqual({ kind: 'unknown', reason });
        for (const wrong of [{ tip: sharp.clip }, { lure: sharp.clip }, { tip: [Number.NaN, 0, 0] as const }])
            expect(openingPull({ ...question, ...wrong })).toEqual({ kind: 'unknown', reason: NO_PLACES });
        expect(openingPull({ ...question, reel: 0 }).kind).toBe('opens');
    });

    test('of the slack behind it', () => {
        expect(dropBack(sharp, -0.1, 4)).toEqual({
            kind: 'unknown',
            reason: 'The loop is shorter than nothing.',
        });
        expect(dropBack(sharp, 1, 0)).toEqual({ kind: 'unknown', reason: 'The boat is not under way.' });
        expect(dropBack({ ...sharp, lure: [Number.NaN, 0, 0] }, 1, 4)).toEqual({
            kind: 'unknown',
            reason: NO_PLACES,
        });
        expect(dropBack(sharp, 0, 4).kind).toBe('drop-back');
    });
});
