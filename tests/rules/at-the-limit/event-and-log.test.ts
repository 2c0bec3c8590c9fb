import { describe, expect, test } from 'vitest';
import { messagesOf, relatedOf, today } from '../../language/marked.ts';

/*
 * What an event counts, and what a log tells of. What is exactly at its limit keeps it, what is a hair beyond does not; and the
 * sentences that only a rare plan brings about. Each test is named after the rule that it is about.
 */

describe('event', () => {
    const logged = (hours: string, events: string) => `use "cockpit.spread"
rules open "Open" { ${hours} }
spread today { boat fulmar  event open  port short corner { lure broad  back 12 m } }
log 2026-03-07 {
    zone "+10:00"
    using today
    ${events}
}
`;

    test('event: an event may say only when lines go in, or only when they come out', async () => {
        const bites = 'at 05:00 bite port short corner lost\n    at 21:00 bite port short corner lost';
        expect(await messagesOf(logged('', bites), 'event')).toEqual([]);
        expect(await messagesOf(logged('lines in 07:30', bites), 'event')).toEqual([
            'A bite is logged at 05:00, and Open has lines in at 07:30. A fish from outside the hours does not count. Put the time right, or leave it out of what you call in.',
        ]);
        expect(await messagesOf(logged('lines out 16:30', bites), 'event')).toEqual([
            'A bite is logged at 21:00, and Open has lines out at 16:30. A fish from outside the hours does not count. Put the time right, or leave it out of what you call in.',
        ]);
    });

    test('event: what counts decides, whatever else is said of the fish', async () => {
        const found = (what: string) =>
            messagesOf(logged('lines in 07:30', `at 05:00 ${what} port short corner`), 'event');
        expect((await found('raise bite'))[0]).toMatch(/^A bite is logged at 05:00/);
        expect((await found('lost released'))[0]).toMatch(/^A fish is logged at 05:00/);
        expect(await found('raise lost')).toEqual([]);
    });

    test('event: the minute of the hour itself is inside', async () => {
        const hours = 'lines in 07:30  lines out 16:30';
        const bites = 'at 07:30 bite port short corner lost\n    at 16:30 bite port short corner lost';
        expect(await messagesOf(logged(hours, bites), 'event')).toEqual([]);
        expect(
            await messagesOf(
                logged('lines in 07:30  lines out 07:30', 'at 07:31 bite port short corner'),
                'event',
            ),
        ).toHaveLength(1);
    });

    test('event: a plan without an event has no hours, and a bite before any plan has none', async () => {
        const bite = 'at 05:00 bite port short corner lost';
        expect(await messagesOf(logged('lines in 07:30', bite).replace('event open', ''), 'event')).toEqual(
            [],
        );
        const late = logged('lines in 07:30', bite).replace('using today', 'using today from 06:00');
        expect(await messagesOf(late, 'event')).toEqual([]);
    });
});

describe('log-mismatch', () => {
    const logged = (events: string) =>
        `${today('    port short corner { lure broad  back wave 2 }\n    starboard short rigger { bait live "scad"  back 20 m }\n    port squid chain { teaser toy  back 12 m }\n    spare dart', 'teaser toy "Toy" { }')}log 2026-03-14 {\n    using today\n${events}\n}\n`;

    test('log-mismatch: what is towed and what is spare may have been bitten, nothing else', async () => {
        for (const lure of ['broad', 'dart', 'toy'])
            expect(
                await messagesOf(logged(`    at 07:00 bite port short corner lure ${lure}`), 'log-mismatch'),
            ).toEqual([]);
        const strange = logged('    at 07:00 bite port short corner lure pin');
        expect(await messagesOf(strange, 'log-mismatch')).toEqual([
            'Today carries no lure pin. Figures by lure count it for one that was not fished. Name it as a spare in the plan, if it was aboard.',
        ]);
        expect(await relatedOf(strange, 'log-mismatch')).toEqual(['The plan in use at that hour.']);
    });
});

test('line-count: an event that counts no lines, and no event at all, allow any number', async () => {
    const lines = 'port short corner { lure broad  back wave 2 }';
    expect(
        await messagesOf(today(`    event open\n    ${lines}`, 'rules open "Open" { }'), 'line-count'),
    ).toEqual([]);
    expect(await messagesOf(today(`    ${lines}`), 'line-count')).toEqual([]);
});

test('unused: a log is kept for its own sake, and a plan is there to be fished', async () => {
    const text = `${today('    port short corner { lure broad  back wave 2 }')}log 2026-03-14 {\n    using today\n}\n`;
    expect(await messagesOf(text, 'unused')).toEqual([]);
});
