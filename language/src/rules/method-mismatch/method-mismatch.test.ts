import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const soft =
    'method soft "Soft" { style drop-back  set 2 kg  hooked 6 kg  loop 1 m  wait 3 s  clip 3 kg  wraps 10 }\n';
const own = (drag: string) => `outfit own "Own" {\n    line nylon { class 24 kg }\n    drag { ${drag} }\n}\n`;

describe('method-mismatch', () => {
    test.each([
        ['drag { set 3 kg }', 'Set drag at port short corner is 3 kg, and Soft wants 2 kg.'],
        ['loop 2 m', 'The loop at port short corner is 2 m, and Soft wants 1 m.'],
        ['wait 6 s', 'The wait at port short corner is 6 s, and Soft wants 3 s.'],
        ['clip 4 kg', 'The clip at port short corner is 4 kg, and Soft wants 3 kg.'],
        ['wraps 6', 'The number of wraps at port short corner is 6, and Soft wants 10.'],
    ])('a position decides otherwise: %s', async (said, message) => {
        const text = today(`    method soft\n    port short corner { lure broad  ${said} }`, soft);
        expect((await messagesOf(text, 'method-mismatch'))[0]).toContain(message);
    });

    test('a share is of the class of the line that it is fished on', async () => {
        const shares = 'method shared "Shared" { style drop-back  set 10 %  hooked 25 % }\n';
        const text = (drag: string) =>
            today('    method shared\n    port short corner { outfit own  lure broad }', shares + own(drag));
        // A tenth of 24 kg.
        expect(await messagesOf(text('set 2.4 kg'), 'method-mismatch')).toEqual([]);
        const [message] = await messagesOf(text('set 4 kg'), 'method-mismatch');
        expect(message).toContain('Set drag at port short corner is 4 kg, and Shared wants 2.4 kg.');
        const after = await mended(
            text('set 4 kg').replace('own  lure', 'own  drag { set 4 kg }  lure'),
            'method-mismatch',
        );
        expect(await messagesOf(after, 'method-mismatch')).toEqual([]);
    });

    test('an outfit that was set up for something else', async () => {
        const text = today(
            '    method soft\n    port short corner { outfit own  lure broad }',
            soft + own('hooked 8 kg'),
        );
        expect((await messagesOf(text, 'method-mismatch'))[0]).toContain('is 8 kg, and Soft wants 6 kg');
    });

    test('a tenth more or less is the same', async () => {
        const close = today(
            '    method soft\n    port short corner { outfit own  lure broad }',
            soft + own('hooked 6.5 kg'),
        );
        expect(await messagesOf(close, 'method-mismatch')).toEqual([]);
        const strict = close.replace(
            '    method soft',
            '    rule method-mismatch { slack 5 % }\n    method soft',
        );
        expect(await messagesOf(strict, 'method-mismatch')).toHaveLength(1);
    });

    test('slack and waiting have no place in a direct strike', async () => {
        await expectMarked(
            today(`
    method firm
    port short corner { outfit medium-1  lure broad  loop 80 cm }
    //                                                    ^^^^^ method-mismatch: has a loop of 80 cm, and Firm drives the hook at the bite
    port long corner { outfit medium-2  lure dart  wait 2 s }
    //                                                  ^^^ method-mismatch: has a wait of 2 s
    port long rigger { outfit medium-3  lure wisp  loop 0 m }`),
            'method-mismatch',
        );
    });

    test('a circle hook sets itself: a direct strike pulls it out', async () => {
        const bait = 'bait scad "Scad" { kind dead  hooks circle { gap 20 mm } }';
        await expectMarked(
            today(
                `
    method firm
    port short corner { outfit medium-1  bait scad  back 20 m }
    //                                        ^^^^ method-mismatch: Port short corner fishes a circle hook, and Firm drives the hook at the bite.`,
                bait,
            ),
            'method-mismatch',
        );
        await expectMarked(
            today(
                `
    port short corner { outfit medium-1  bait scad  back 20 m  method firm }
    //                                                                ^^^^ method-mismatch: fishes a circle hook
    port long corner { bait scad  back 30 m  method soft }`,
                bait + soft,
            ),
            'method-mismatch',
        );
    });

    test.each([
        ['drag { set 3 kg }', 'set 2 kg'],
        ['loop 6 ft', 'loop 3.3 ft'],
        ['wait 6 s', 'wait 3 s'],
        ['wraps 6', 'wraps 10'],
    ])('is mended by the method’s own figure: %s', async (said, mending) => {
        const text = today(`    method soft\n    port short corner { lure broad  ${said} }`, soft);
        const after = await mended(text, 'method-mismatch');
        expect(after).toContain(mending);
        expect(await messagesOf(after, 'method-mismatch')).toEqual([]);
    });

    test('a line with a method of its own is held to that one', async () => {
        const text = today(
            '    method firm\n    port short corner { lure broad  method soft  loop 1 m }',
            soft,
        );
        expect(await messagesOf(text, 'method-mismatch')).toEqual([]);
    });
});
