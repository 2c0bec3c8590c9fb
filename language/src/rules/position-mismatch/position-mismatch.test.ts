import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('position-mismatch', () => {
    test('a short line runs inside the long one of its side', async () => {
        await expectMarked(
            today(`
    port short corner { lure broad  back 25 m }
    //                              ^^^^^^^^^ position-mismatch: Port short corner runs 25 m (82 ft) back, behind port long corner at 60 ft
    port long corner { lure dart  back 60 ft }
    starboard short corner { lure gulp  back 20 m }`),
            'position-mismatch',
        );
    });

    test('where each side has but one of the two, they are compared across', async () => {
        await expectMarked(
            today(`
    port short rigger { lure dart  back 45 m }
    //                             ^^^^^^^^^ position-mismatch: behind starboard long rigger
    starboard long rigger { lure wisp  back 34 m }`),
            'position-mismatch',
        );
    });

    test('where both sides have both, each side is its own', async () => {
        await expectMarked(
            today(`
    port short rigger { lure dart  back 44 m }
    port long rigger { lure wisp  back 55 m }
    starboard short rigger { lure gulp  back 30 m }
    starboard long rigger { lure pin  back 38 m }`),
            'position-mismatch',
        );
    });

    test('a rigger line leaves a halyard', async () => {
        await expectMarked(
            today(`
    port short rigger { lure dart  back 34 m  from rod tip }
    //                                        ^^^^^^^^^^^^ position-mismatch: Port short rigger is towed from a rod tip
    port long rigger { lure dart  back 45 m  from halyard 1 }
    starboard short corner { lure broad  back 12 m  from rod tip }`),
            'position-mismatch',
        );
    });

    test('teasers and gear standing by have no place in the order', async () => {
        await expectMarked(
            today(`
    port bridge teaser { back 80 m }
    shotgun { lure pin  back 66 m }
    centre standby { outfit medium-1  bait live "scad" }`),
            'position-mismatch',
        );
    });

    test('is mended by letting the two change their distances, waves and metres alike', async () => {
        for (const [short, long] of [
            ['back wave 3', 'back wave 2'],
            ['back 75 ft', 'back 12 m'],
            ['back 23 m', 'back wave 2'],
        ]) {
            const text = today(
                `    port short corner { lure broad  ${short} }\n    port long corner { lure dart  ${long} }`,
            );
            const after = await mended(text, 'position-mismatch');
            expect(after).toContain(`lure broad  ${long}`);
            expect(after).toContain(`lure dart  ${short}`);
            expect(await messagesOf(after, 'position-mismatch')).toEqual([]);
        }
    });
});
