import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const turning = (radius: string) =>
    today(`    turn within ${radius}\n    port long rigger { outfit medium-1  lure broad  back 45 m }`);

describe('turn-tight', () => {
    // At 8 kn (4.116 m/s) half a weight sideways is a radius of 2 · 4.116² / 9.80665 = 3.455 m.
    test('names the turn, the speed and the least that is held, and what is not looked at', async () => {
        const [message] = await messagesOf(turning('3 m'), 'turn-tight');
        expect(message).toBe(
            'A turn of 3 m at 8 kn is tighter than any boat holds: 3.5 m is the least. Tighter, it would press sideways with more than half its own weight, so nothing is said of the lines in such a turn. Turn wider, slow down, or look for a slip in either number.',
        );
        expect(await messagesOf(turning('3.5 m'), 'turn-tight')).toEqual([]);
    });

    test('lies under the turn, with the speed beside it', async () => {
        const { findings } = await expectMarked(
            today(`
    turn within 3 m
    //          ^^^ turn-tight: A turn of 3 m at 8 kn
    port short corner { outfit medium-1  lure broad  back 12 m }`),
            'turn-tight',
        );
        const [finding] = findings.filter(({ rule }) => rule === 'turn-tight');
        expect(finding?.severity).toBe('warning');
        expect(finding?.related.map(({ what }) => what)).toEqual(['The speed is said here.']);
    });

    test('speaks in the unit of the plan, and offers no number in its place: which one slipped nobody knows', async () => {
        const { findings } = await checkText(turning('10 ft'));
        const [finding] = findings.filter(({ rule }) => rule === 'turn-tight');
        expect(finding?.what).toContain('A turn of 10 ft at 8 kn is tighter than any boat holds: 11 ft');
        expect(finding?.fixes).toEqual([]);
    });

    test('says nothing of a plan without a turn', async () => {
        await expectMarked(
            today('    port long rigger { outfit medium-1  lure broad  back 45 m }'),
            'turn-tight',
        );
    });
});
