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

    test('a bite outside its hours, by the log', async () => {
        const hours = 'rules open "Open" {\n    lines in 07:30\n    lines out 16:30\n}\n';
        await expectMarked(
            `use "cockpit.spread"
${hours}
spread today { boat fulmar  event open  port short corner { lure broad  back 12 m } }
log 2026-03-07 {
    zone "+10:00"
    using today
    at 07:12 bite port short corner hooked
    // ^^^^^ event: A bite is logged at 07:12, and Open has lines in at 07:30.
    at 07:29 raise port short corner
    at 07:30 bite port short corner lost
    at 16:31 bite port short corner hooked
    // ^^^^^ event: A bite is logged at 16:31, and Open has lines out at 16:30.
}
`,
            'event',
        );
    });

    test('an event through the night ends on the next day', async () => {
        const night = `use "cockpit.spread"
rules dark "Dark" {
    lines in 20:00
    lines out 04:00
}
spread tonight { boat fulmar  event dark  port short corner { lure broad  back 12 m } }
log 2026-03-07 {
    zone "+10:00"
    using tonight
    at 23:50 bite port short corner hooked
    at 03:59 bite port short corner hooked
    at 04:01 bite port short corner hooked
    // ^^^^^ event: A bite is logged at 04:01, and Dark has lines out at 04:00.
}
`;
        await expectMarked(night, 'event');
    });
});
