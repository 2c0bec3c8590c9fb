import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('speed-range', () => {
    test('holds each lure to the speeds that its owner wrote', async () => {
        const slow = today(`
    port short corner { lure broad  back wave 2 }
    port long rigger { lure wisp  back wave 5 }
    //                      ^^^^ speed-range: Wisp runs at 7 kn to 14 kn, and this plan tows at 6.5 kn`);
        await expectMarked(slow.replace('8 kn', '6.5 kn'), 'speed-range');
    });

    test('says the limit that was missed, in the words of the lure’s owner', async () => {
        const [message] = await messagesOf(
            today(
                '    port short corner { lure imperial  back wave 2 }',
                'lure imperial { runs 4 mph to 8 mph }',
            ),
            'speed-range',
        );
        expect(message).toMatch(/runs at 4 mph to 8 mph, and this plan tows at 8 kn\./);
        expect(message).toMatch(/Tow at 8 mph/);
    });

    test('falls back on what is usual for the head', async () => {
        const bare = today(
            `
    port short corner { lure bare  back wave 2 }
    //                       ^^^^ speed-range: Bare has a chugger head, which usually runs at 5 kn to 9 kn, and this plan tows at 10 kn`,
            'lure bare "Bare" chugger { }',
        );
        await expectMarked(bare.replace('8 kn', '10 kn'), 'speed-range');
    });

    test('knows nothing of a lure without speeds and without a head', async () => {
        await expectMarked(today('    port short corner { lure plain }', 'lure plain { }'), 'speed-range');
    });

    test('holds the plan to the speeds of its method, once for all lines', async () => {
        const text = today(
            `
    method bait-drop
    //     ^^^^^^^^^ speed-range: Bait drop-back is meant for 1 kn to 6.5 kn, and this plan tows at 8 kn
    port short corner { lure broad  back wave 2 }
    port long corner { lure dart  back wave 3 }`,
            'use "layback:methods"',
        );
        await expectMarked(text, 'speed-range');
    });

    test('lets a tenth of a knot pass', async () => {
        const almost = today('    port short corner { lure dart  back wave 2 }');
        expect(await messagesOf(almost.replace('8 kn', '9.1 kn'), 'speed-range')).toEqual([]);
        expect(await messagesOf(almost.replace('8 kn', '9.2 kn'), 'speed-range')).toHaveLength(1);
    });
});
