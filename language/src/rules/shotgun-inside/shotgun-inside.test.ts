import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('shotgun-inside', () => {
    test('the shotgun is the longest line', async () => {
        const inside = today(`
    port long rigger { lure wisp  back 55 m }
    starboard long rigger { lure gulp  back 58 m }
    shotgun { lure pin  back 50 m }
    //                  ^^^^^^^^^ shotgun-inside: Shotgun runs 50 m back, inside starboard long rigger at 58 m`);
        await expectMarked(inside, 'shotgun-inside');
        expect(await messagesOf(inside.replace('50 m', '66 m'), 'shotgun-inside')).toEqual([]);
    });

    test('one shotgun among the others is one finding, about all that it runs inside of', async () => {
        const text = today(`
    starboard long corner { lure broad  back 23.5 m }
    port short corner { lure broad  back 12 m }
    port long rigger { lure dart  back 45 m }
    shotgun { lure pin  back 23 m  from flat clip }`);
        const about = ['stagger', 'size-order', 'position-mismatch', 'shotgun-inside'];
        const { findings } = await checkText(text);
        const found = findings.filter(({ rule }) => about.includes(rule));
        expect(found.map(({ rule }) => rule)).toEqual(['shotgun-inside']);
        expect(found[0]?.positions).toEqual(['shotgun', 'port long rigger', 'starboard long corner']);
        const waived = text.replace(/\n}\n$/, '\n    waive shotgun-inside because "a middle line"\n}\n');
        expect(new Set((await checkText(waived)).findings.map(({ rule }) => rule))).toContain('size-order');
    });

    test('on a wave it is mended by the wave behind the longest line', async () => {
        const text = today(
            '    port long rigger { lure wisp  back wave 5 }\n    shotgun { lure pin  back wave 4 }',
        );
        const after = await mended(text, 'shotgun-inside');
        expect(after).toContain('shotgun { lure pin  back wave 6 }');
        expect(await messagesOf(after, 'shotgun-inside')).toEqual([]);
        await expect(mended(text.replace('wave 4', '30 m'), 'shotgun-inside')).rejects.toThrow(
            'offers no fix',
        );
    });

    test('a shotgun by itself is the longest line, and one whose place is not known is left alone', async () => {
        await expectMarked(today('    shotgun { lure pin  back 20 m }'), 'shotgun-inside');
        await expectMarked(
            today('    shotgun { lure pin }\n    port long rigger { lure wisp  back 45 m }'),
            'shotgun-inside',
        );
    });
});
