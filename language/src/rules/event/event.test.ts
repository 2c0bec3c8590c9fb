import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const club = 'rules club "Club" {\n    at most 2 lines per angler\n    teasers hookless\n}\n';
const chain = (hooks: string) => `teaser chain "Chain" {\n    kind chain\n    ${hooks}\n}`;

describe('event', () => {
    test('so many lines for each angler, blamed on the first too many', async () => {
        await expectMarked(
            today(
                `
    event club
    port short corner { lure broad  angler "Ines" }
    starboard long corner { lure dart  angler "Ines" }
    port short rigger { lure gulp  angler "Tove" }
    port long rigger { lure wisp  angler "Ines" }
    //                                   ^^^^^^ event: Ines has 3 lines, and Club allows 2 for each angler
    shotgun { lure pin }`,
                club,
            ),
            'event',
        );
    });

    test('teasers without hooks', async () => {
        const towed = (hooks: string) =>
            today('    event club\n    port squid chain { teaser chain  back 12 m }', club + chain(hooks));
        expect(await messagesOf(towed('hooks single { gap 30 mm }'), 'event')).toHaveLength(1);
        expect(await messagesOf(towed(''), 'event')).toEqual([]);
        expect(
            await messagesOf(towed('hooks single { gap 30 mm }').replace('hookless', 'any'), 'event'),
        ).toEqual([]);
    });
});
