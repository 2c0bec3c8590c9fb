import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const own = `lure mine "Mine" pusher { pull 3 kg at 8 kn }
method soft "Soft" { style drop-back }`;
const held = (drag: string, conditions = 'sea 0.5 m', from = 'from rod tip') =>
    today(
        `    ${conditions}\n    port short corner { lure mine  back wave 2  ${from}  drag { ${drag} } }`,
        own,
    );
const severityOf = async (text: string) =>
    (await checkText(text)).findings.find(({ rule }) => rule === 'drag-under-tow')?.severity;

describe('drag-under-tow', () => {
    test('the lure takes line where no clip holds it', async () => {
        await expectMarked(
            today(
                `
    sea 0.5 m
    port short corner { lure mine  back wave 2  from rod tip  drag { set 2.5 kg } }
    //                                                                   ^^^^^^ drag-under-tow: Set drag at port short corner is 2.5 kg, and Mine pulls 3 kg by itself.`,
                own,
            ),
            'drag-under-tow',
        );
        expect(await severityOf(held('set 2.5 kg'))).toBe('warning');
    });

    test('on a clip the reel carries nothing, however light the drag', async () => {
        expect(await messagesOf(held('set 1 kg', 'sea 0.5 m', 'from flat clip'), 'drag-under-tow')).toEqual(
            [],
        );
        expect(await messagesOf(held('set 1 kg', 'sea 0.5 m', ''), 'drag-under-tow')).toEqual([]);
    });

    // 1.2 times 3 kg in a slight sea (estimate).
    test('a drag that only the surge overcomes is worth a hint', async () => {
        expect(await severityOf(held('set 3.2 kg'))).toBe('hint');
        expect((await messagesOf(held('set 3.2 kg'), 'drag-under-tow'))[0]).toContain(
            'pulls 3.6 kg with surge in a sea of 0.5 m',
        );
        expect(await messagesOf(held('set 3.6 kg'), 'drag-under-tow')).toEqual([]);
        expect(await messagesOf(held('set 3.2 kg', ''), 'drag-under-tow')).toEqual([]);
    });

    test('on light drag for a drop-back a slow creep is tolerable', async () => {
        const light = held('set 2 kg', 'sea 0.5 m\n    method soft');
        expect(await severityOf(light)).toBe('hint');
        expect((await messagesOf(light, 'drag-under-tow'))[0]).toContain(
            'take the line back every half hour',
        );
    });

    test('is mended by raising set drag, unless that would be more than hooked drag', async () => {
        const after = await mended(held('set 5 lb'), 'drag-under-tow');
        expect(after).toContain('set 8 lb');
        expect(await messagesOf(after, 'drag-under-tow')).toEqual([]);
        const weak = held('set 2 kg  hooked 2.8 kg');
        await expect(mended(weak, 'drag-under-tow')).rejects.toThrow('offers no fix');
        expect((await messagesOf(weak, 'drag-under-tow'))[0]).toMatch(
            /Tow it from a clip, or tow one that pulls less\.$/,
        );
    });
});
