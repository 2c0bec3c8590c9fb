import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('clip-idle', () => {
    test('a clip on a line from the rod tip, with where it is towed from, and taken out by its fix', async () => {
        const text = today(`
    port short corner { lure broad  back wave 2  from rod tip  clip 4 kg }
    //                                                              ^^^^ clip-idle: A clip of 4 kg is set at port short corner, which is towed from its rod tip.
    port long corner { lure dart  back wave 3  from flat clip  clip 4 kg }
    port short rigger { lure gulp  back wave 4  clip 4 kg }`);
        const { findings } = await expectMarked(text, 'clip-idle');
        const [finding] = findings.filter(({ rule }) => rule === 'clip-idle');
        expect(finding?.related.map(({ what }) => what)).toEqual(['Where it is towed from is said here.']);
        const after = await mended(text, 'clip-idle');
        expect(after).not.toContain('from rod tip  clip 4 kg');
        expect(await messagesOf(after, 'clip-idle')).toEqual([]);
    });

    test('a line that was moved to its rod tip, and one that nobody said the tow point of, keep their clips', async () => {
        const base = today('    port short corner { lure broad  back wave 2  from flat clip  clip 4 kg }');
        const moved = `${base}spread moved like today { port short corner { from rod tip } }\n`;
        await expectMarked(moved, 'clip-idle');
        const bare = today(
            '    port short corner { lure broad  clip 4 kg }',
            'boat bare "Bare" { length 8 m }',
        );
        await expectMarked(bare.replace('boat fulmar\n    speed', 'boat bare\n    speed'), 'clip-idle');
    });

    test('says what the boat has to hang it in', async () => {
        const bare = 'boat bare "Bare" { length 8 m }';
        const text = today('    port short corner { lure broad  from rod tip  clip 4 kg }', bare);
        expect((await messagesOf(text, 'clip-idle'))[0]).toContain('(from flat clip)');
        const poled = text.replace('boat fulmar\n    speed', 'boat bare\n    speed');
        expect((await messagesOf(poled, 'clip-idle'))[0]).toContain('(from halyard 1)');
    });

    test('a clip of the method is for the lines that have one', async () => {
        const soft = 'method soft "Soft" { style drop-back  clip 2 kg }';
        await expectMarked(
            today('    method soft\n    port short corner { lure broad  back wave 2  from rod tip }', soft),
            'clip-idle',
        );
    });
});
