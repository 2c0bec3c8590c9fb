import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const own = `lure mine "Mine" pusher { pull 3 kg at 8 kn }
method shy "Shy" { style drop-back  opens 4 kg }`;
const clipped = (clip: string, drag = 'hooked 6 kg', method = '') =>
    today(
        `    sea 0.5 m\n    ${method}\n    port short corner { lure mine  back wave 2  clip ${clip}  drag { ${drag} } }`,
        own,
    );

describe('clip-stiff', () => {
    test('a clip above hooked drag', async () => {
        await expectMarked(
            today(
                `
    sea 0.5 m
    port short corner { lure mine  back wave 2  clip 7 kg  drag { hooked 6 kg } }
    //                                               ^^^^ clip-stiff: The clip at port short corner opens at 7 kg, and hooked drag is 6 kg.`,
                own,
            ),
            'clip-stiff',
        );
        expect(await messagesOf(clipped('6 kg'), 'clip-stiff')).toEqual([]);
    });

    test('what the method says goes before the drag', async () => {
        expect(await messagesOf(clipped('5 kg'), 'clip-stiff')).toEqual([]);
        expect((await messagesOf(clipped('5 kg', 'hooked 6 kg', 'method shy'), 'clip-stiff'))[0]).toBe(
            'The clip at port short corner opens at 5 kg, and Shy wants 4 kg at most. Until it opens the fish feels the boat, and lets go. Set it to 4 kg or less.',
        );
    });

    test('is mended by setting the clip', async () => {
        const after = await mended(clipped('16 lb'), 'clip-stiff');
        expect(after).toContain('clip 13 lb');
        expect(await messagesOf(after, 'clip-stiff')).toEqual([]);
        expect(await messagesOf(after, 'clip-false-release')).toEqual([]);
    });

    test('where the lure itself pulls more than the limit it says so, and moves nothing', async () => {
        const torn = clipped('5 kg', 'hooked 3.2 kg');
        expect((await messagesOf(torn, 'clip-stiff'))[0]).toMatch(
            /Below 3\.6 kg the lure itself opens it: tow one that pulls less, or fish more drag\.$/,
        );
        await expect(mended(torn, 'clip-stiff')).rejects.toThrow('offers no fix');
        expect(await messagesOf(torn, 'clip-false-release')).toEqual([]);
    });

    test('says so where the crew waived the clip that opens by itself, and not this', async () => {
        const waive = '\n    waive clip-false-release on port short corner because "as agreed"\n}\n';
        const torn = clipped('3.4 kg', 'hooked 3.2 kg')
            .replace(/\n}\n$/, waive)
            .replace('sea 0.5', 'sea 2');
        const heard = async (text: string) => (await checkText(text)).findings.map(({ rule }) => rule);
        expect(await heard(torn)).toContain('clip-stiff');
        expect(await heard(torn)).not.toContain('clip-false-release');
        const both = torn.replace('waive clip', 'waive clip-stiff because "as agreed"\n    waive clip');
        expect((await heard(both)).filter((rule) => /^(clip|waiver)-/.test(rule))).toEqual([]);
        const other = both.replace('waive clip-false-release on', 'waive crew on');
        expect((await heard(other)).filter((rule) => /^(clip|waiver)-/.test(rule))).toEqual([
            'clip-false-release',
            'waiver-idle',
        ]);
    });

    test('is silent without a clip, a pull or a limit', async () => {
        await expectMarked(clipped('9 kg', 'set 2 kg'), 'clip-stiff');
        await expectMarked(clipped('9 kg').replace('pull 3 kg at 8 kn', ''), 'clip-stiff');
        await expectMarked(clipped('9 kg').replace('back wave 2', 'back wave 2  from rod tip'), 'clip-stiff');
    });
});
