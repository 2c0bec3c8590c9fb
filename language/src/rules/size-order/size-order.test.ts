import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('size-order', () => {
    test('neighbours across the boat are compared', async () => {
        await expectMarked(
            today(`
    port short corner { lure dart  back 12 m }
    starboard long corner { lure broad  back 23 m }
    //                           ^^^^^ size-order: Broad (340 mm) runs outside Dart (290 mm)`),
            'size-order',
        );
    });

    test('and lines that follow one another on a side, each blamed once', async () => {
        await expectMarked(
            today(`
    port short corner { lure pin  back 12 m }
    port short rigger { lure wisp  back 34 m }
    //                       ^^^^ size-order: Wisp (210 mm) runs outside Pin (180 mm)
    port long rigger { lure dart  back 45 m }
    //                      ^^^^ size-order: Dart (290 mm) runs outside`),
            'size-order',
        );
    });

    test('two are swapped only where that puts them in order: a third lure may be in between', async () => {
        const three = (outer: string) =>
            today(`
    port short corner { lure dart  back 12 m }
    port short rigger { lure pin  back 34 m }
    port long rigger { lure ${outer}  back 45 m }`);
        expect(await mended(three('wisp'), 'size-order')).toMatch(
            /lure wisp {2}back 34 m[\s\S]*lure pin {2}back 45 m/,
        );
        // Broad would run outside Dart as well.
        expect(await messagesOf(three('broad'), 'size-order')).toHaveLength(1);
        await expect(mended(three('broad'), 'size-order')).rejects.toThrow('offers no fix');
    });

    test('larger lures close in are in order', async () => {
        await expectMarked(
            today(`
    port short corner { lure broad  back wave 2 }
    starboard long corner { lure dart  back wave 3 }
    starboard short rigger { lure gulp  back wave 4 }
    port long rigger { lure wisp  back wave 5 }
    shotgun { lure pin  back wave 6 }`),
            'size-order',
        );
    });

    test('lures about equal, or equally far back, have no order', async () => {
        const near = 'lure near-dart { length 300 mm }';
        const two = (back: string, lure: string) =>
            today(
                `    port short corner { lure dart  back 23 m }\n    starboard long corner { lure ${lure}  back ${back} }`,
                near,
            );
        expect(await messagesOf(two('34 m', 'near-dart'), 'size-order')).toEqual([]);
        expect(await messagesOf(two('23 m', 'broad'), 'size-order')).toEqual([]);
        expect(await messagesOf(two('34 m', 'broad'), 'size-order')).toHaveLength(1);
        const strict = two('34 m', 'near-dart').replace(
            '    boat',
            '    rule size-order { slack 5 mm }\n    boat',
        );
        expect(await messagesOf(strict, 'size-order')).toHaveLength(1);
    });

    test('says lengths in the words of each lure’s owner', async () => {
        const imperial = today(
            '    port short corner { lure small  back 12 m }\n    starboard long corner { lure broad  back 23 m }',
            'lure small "Small" { length 8.5 in }',
        );
        expect((await messagesOf(imperial, 'size-order'))[0]).toContain(
            'Broad (340 mm) runs outside Small (8.5 in)',
        );
    });

    test('is mended by swapping the two', async () => {
        const wrong = today(`
    port short corner { lure dart  back 12 m }
    starboard long corner { lure broad  back 23 m }`);
        const after = await mended(wrong, 'size-order');
        expect(after).toContain('port short corner { lure broad ');
        expect(after).toContain('starboard long corner { lure dart ');
        expect(await messagesOf(after, 'size-order')).toEqual([]);
    });

    test('a lure without a length, a bait, a teaser: nothing to compare', async () => {
        await expectMarked(
            today(
                `
    port short corner { lure plain  back 12 m }
    starboard long corner { lure broad  back 23 m }
    port short rigger { bait live "scad"  back 34 m }
    starboard squid chain { teaser chain  back 40 m  from bridge }`,
                'lure plain { }\nteaser chain { length 2 m }',
            ),
            'size-order',
        );
    });

    test('a long line that runs inside the short one has its distance as the cause, and not its lure', async () => {
        const changed = today(`
    port short corner { outfit medium-1  lure broad  back wave 3 }
    port long corner { outfit medium-2  lure dart  back wave 2 }`);
        expect(await messagesOf(changed, 'position-mismatch')).toHaveLength(1);
        expect(await messagesOf(changed, 'size-order')).toEqual([]);
    });
});
