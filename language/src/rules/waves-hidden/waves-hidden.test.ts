import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const corner = '    port short corner { outfit medium-1  lure broad  back 19 m }';
const seen = 'boat seen like fulmar { waves up to 0.9 m }';
const inSea = (sea: string, boat = 'fulmar') =>
    today(`    sea ${sea}\n${corner}`, seen).replace('boat fulmar\n', `boat ${boat}\n`);

describe('waves-hidden', () => {
    test('names the sea, the boat, the sea in which her waves would show, and how to say better', async () => {
        expect(await messagesOf(inSea('0.8 m'), 'waves-hidden')).toEqual([
            expect.stringMatching(
                /^A sea of 0\.8 m hides the waves of Fulmar, which show in a sea up to about 0\.\d+ m\. That is an estimate, and on it nothing was said of lures off their wave faces\. If your crew still reads them, say so on the boat: `waves up to 0\.8 m`\.$/,
            ),
        ]);
    });

    test('is a hint, once a plan, whatever the number of lures', async () => {
        const { findings } = await checkText(
            today(`    sea 0.8 m
${corner}
    starboard long corner { outfit medium-2  lure dart  back wave 3 }`),
        );
        const found = findings.filter(({ rule }) => rule === 'waves-hidden');
        expect(found.map(({ severity }) => severity)).toEqual(['hint']);
    });

    test('what stands on the boat brings the wave faces back', async () => {
        expect(await messagesOf(inSea('0.8 m'), 'wave-face')).toEqual([]);
        expect(await messagesOf(inSea('0.8 m', 'seen'), 'waves-hidden')).toEqual([]);
        expect(await messagesOf(inSea('0.8 m', 'seen'), 'wave-face')).toHaveLength(1);
    });

    test('a crew that has said what it sees is not asked again in a higher sea', async () => {
        expect(await messagesOf(inSea('1.5 m', 'seen'), 'waves-hidden')).toEqual([]);
        expect(await messagesOf(inSea('1.5 m', 'seen'), 'wave-face')).toEqual([]);
    });

    test('says nothing where no lure runs, in a calm, or at a speed at which she planes', async () => {
        expect(
            await messagesOf(today('    sea 0.8 m\n    standby { outfit medium-1 }'), 'waves-hidden'),
        ).toEqual([]);
        for (const towed of ['bait live "scad"  back 19 m', 'lure broad'])
            expect(
                await messagesOf(today(`    sea 0.8 m\n    port short corner { ${towed} }`), 'waves-hidden'),
            ).toEqual([]);
        expect(await messagesOf(inSea('0.1 m'), 'waves-hidden')).toEqual([]);
        const fast = inSea('0.8 m').replace('speed 8 kn', 'speed 12 kn');
        const { plans } = await checkText(fast);
        expect(plans[0]!.waves.known && plans[0]!.waves.value.doubt).toContain('begins to plane');
        expect(await messagesOf(fast, 'waves-hidden')).toEqual([]);
    });

    test('can be waived for the day', async () => {
        await expectMarked(
            today(`    sea 0.8 m\n${corner}\n    waive waves-hidden because "nobody sees them today"`),
            'waves-hidden',
            'waiver-idle',
        );
    });
});
