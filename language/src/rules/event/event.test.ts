import { describe, test } from 'vitest';
import { expectMarked } from '../../../../tests/language/marked.ts';

const hours = 'rules open "Open" {\n    lines in 07:30\n    lines out 16:30\n}\n';

describe('event', () => {
    test('a bite outside its hours, by the log', async () => {
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

    test('a hook-up or a fish that nobody logged a bite of; one that was on may come aboard after the hours', async () => {
        await expectMarked(
            `use "cockpit.spread"
${hours}
spread today { boat fulmar  event open  port short corner { lure broad  back 12 m } }
log 2026-03-07 {
    zone "+10:00"
    using today
    at 07:10 released port short corner
    // ^^^^^ event: A fish is logged at 07:10, and Open has lines in at 07:30.
    at 07:20 raise port short corner
    at 16:20 bite port short corner hooked
    at 16:31 hooked port short corner
    // ^^^^^ event: A hook-up is logged at 16:31, and Open has lines out at 16:30.
    at 16:50 landed port short corner
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
