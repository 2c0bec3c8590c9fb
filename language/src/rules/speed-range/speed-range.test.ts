import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

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
        expect(message).toMatch(/Keep to 8 mph, or choose another one\./);
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

    test('holds the helm’s own speeds to it too, and says which end strays', async () => {
        const loose = today(`
    speeds 7 kn to 9.6 kn
    //             ^^^^^^ speed-range: Dart runs at 6 kn to 9 kn, and the helm may run up to 9.6 kn.
    port short corner { lure dart  back wave 2 }`);
        await expectMarked(loose, 'speed-range');
        expect(await mended(loose, 'speed-range')).toContain('speeds 7 kn to 9 kn');
        const slow = loose.replace('7 kn to 9.6 kn', '5.5 kn to 8.5 kn');
        expect((await messagesOf(slow, 'speed-range'))[0]).toContain('the helm may slow to 5.5 kn');
    });

    test('speeds that several lures cannot bear are said once, with those that suit all of them', async () => {
        const loose = today(
            `
    speeds 7 kn to 9.6 kn
    //             ^^^^^^ speed-range: Dart and Mild are not meant for this speed: the helm may run up to 9.6 kn.
    port short corner { lure dart  back wave 2 }
    port long rigger { lure mild  back wave 5 }`,
            'lure mild "Mild" like wisp { runs 5 kn to 8.5 kn }',
        );
        const { findings } = await expectMarked(loose, 'speed-range');
        const [finding] = findings.filter(({ rule }) => rule === 'speed-range');
        expect(finding?.related.map(({ what }) => what)).toEqual([
            'Dart runs at 6 kn to 9 kn.',
            'Mild runs at 5 kn to 8.5 kn.',
        ]);
        const after = await mended(loose, 'speed-range');
        expect(after).toContain('speeds 7 kn to 8.5 kn');
        expect(await messagesOf(after, 'speed-range')).toEqual([]);
    });

    test('a plan that is like another and tows faster has the fault in its speed, once', async () => {
        const fast = today(
            `
    port short corner { lure dart  back wave 2 }
    port long rigger { lure mild  back wave 5 }`,
            'lure mild "Mild" like wisp { runs 5 kn to 8.5 kn }',
        ).concat(
            `spread fast like today { speed 9.4 kn }
    //                         ^^^^^^ speed-range: Dart and Mild are not meant for this speed: this plan tows at 9.4 kn.`,
        );
        await expectMarked(fast, 'speed-range');
        const after = await mended(fast, 'speed-range');
        expect(after).toContain('speed 8.5 kn');
        expect(await messagesOf(after, 'speed-range')).toEqual([]);
    });

    test('lures that no one speed suits are not mended by one', async () => {
        const preset = today(
            '    port short corner { lure slow  back wave 2 }\n    port long rigger { lure fast  back wave 5 }',
            'lure slow { runs 5 kn to 6 kn }\nlure fast { runs 7 kn to 8 kn }',
        ).replace('speed 8 kn', '');
        const text = `${preset}spread now like today { speed 9 kn }\n`;
        expect(await messagesOf(text, 'speed-range')).toEqual([
            'Slow and fast are not meant for this speed: this plan tows at 9 kn. Outside its speeds it hangs dead, spins or flies. Choose others, or another speed.',
        ]);
        await expect(mended(text, 'speed-range')).rejects.toThrow('offers no fix');
    });

    test('a teaser has its speeds too', async () => {
        const teased = today(
            `
    port short corner { lure broad  back wave 2 }
    port squid chain { teaser bucket  back 12 m  from bridge }
    //                        ^^^^^^ speed-range: Bucket runs at 4 kn to 7 kn, and this plan tows at 8 kn.`,
            'teaser bucket "Bucket" { runs 4 kn to 7 kn }',
        );
        await expectMarked(teased, 'speed-range');
    });

    test.each([
        ['9.5 kn', 'speed 9 kn'],
        ['5 kn', 'speed 6 kn'],
        ['11 mph', 'speed 10.3 mph'],
    ])('is mended by its limit: %s', async (at, mending) => {
        const text = today('    port short corner { lure dart  back wave 2 }').replace('8 kn', at);
        const after = await mended(text, 'speed-range');
        expect(after).toContain(mending);
        expect(await messagesOf(after, 'speed-range')).toEqual([]);
    });

    test('a boat that does not troll so fast', async () => {
        const fast = today('    port long rigger { lure wisp  back 90 m }').replace('8 kn', '13 kn');
        await expectMarked(
            fast.replace(
                '13 kn',
                '13 kn\n    //    ^^^^^ speed-range: Fulmar trolls at 5 kn to 12 kn, and this plan tows at 13 kn.',
            ),
            'speed-range',
        );
    });
});
