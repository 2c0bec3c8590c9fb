import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

function rigged(hooks: string, what = 'lure'): string {
    const own = what === 'lure' ? 'lure own "Own" pusher' : 'bait own "Own"';
    return today(
        `    event harbour-cup\n    port short corner { ${what} own  back wave 2 }`,
        `${own} {\n    hooks twin { length 90 mm  ${hooks} }\n}`,
    );
}

// IGFA: eyes at least a hook's length and at most 30.48 cm apart in a skirted lure, 45.72 cm on a bait.
describe('hook-spacing', () => {
    test('the eyes are at least one hook’s length apart', async () => {
        expect((await messagesOf(rigged('spacing 89 mm'), 'hook-spacing'))[0]).toContain(
            "89 mm apart, and IGFA saltwater wants a hook's length, 90 mm, at least",
        );
        expect(await messagesOf(rigged('spacing 90 mm'), 'hook-spacing')).toEqual([]);
    });

    test.each([
        ['lure', 304, 305, '30.48 cm'],
        ['bait', 457, 458, '45.72 cm'],
    ])('and not too far apart on a %s', async (what, most, over, limit) => {
        expect(await messagesOf(rigged(`spacing ${most} mm`, what), 'hook-spacing')).toEqual([]);
        expect((await messagesOf(rigged(`spacing ${over} mm`, what), 'hook-spacing'))[0]).toContain(
            `${over} mm apart, and IGFA saltwater wants ${limit} at most`,
        );
    });

    test('one hook may pass through the other’s eye, in a lure and in a bait', async () => {
        expect(await messagesOf(rigged('spacing 20 mm\n linked'), 'hook-spacing')).toEqual([]);
        expect(await messagesOf(rigged('spacing 20 mm\n linked', 'bait'), 'hook-spacing')).toEqual([]);
    });

    test('one hook has no spacing', async () => {
        await expectMarked(rigged('count 1  spacing 20 mm'), 'hook-spacing');
    });
});
