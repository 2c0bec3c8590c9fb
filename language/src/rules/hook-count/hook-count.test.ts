import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

function rigged(kind: string, count: number, event = 'harbour-cup'): string {
    const own = { lure: 'lure own "Own" pusher', plug: 'lure own "Own" diver', bait: 'bait own "Own"' }[kind];
    return today(
        `    event ${event}\n    port short corner { ${kind === 'bait' ? 'bait' : 'lure'} own  back wave 2 }`,
        `${own} {\n    hooks circle { count ${count} }\n}`,
    );
}

// IGFA: two singles on a skirted lure or a natural bait, three hooks on a plug.
describe('hook-count', () => {
    test.each([
        ['lure', 2, 'skirted lure'],
        ['bait', 2, 'natural bait'],
        ['plug', 3, 'plug'],
    ])('a %s may carry %i hooks', async (kind, most, gear) => {
        expect(await messagesOf(rigged(kind, most), 'hook-count')).toEqual([]);
        expect(await messagesOf(rigged(kind, most + 1), 'hook-count')).toEqual([
            `Own has ${most + 1} hooks, and IGFA saltwater allows ${most} on a ${gear}. A fish on it does not count. Take off 1 hook.`,
        ]);
    });

    test('is mended by taking hooks off', async () => {
        expect(await messagesOf(await mended(rigged('plug', 5), 'hook-count'), 'hook-count')).toEqual([]);
    });

    test('outside an event there is no rule', async () => {
        await expectMarked(rigged('lure', 4).replace('    event harbour-cup\n', ''), 'hook-count');
    });

    test('the event’s own word comes before the pack’s', async () => {
        const strict = rigged('lure', 2, 'strict').replace(
            '\nspread',
            '\nrules strict "Strict" { written saltwater  skirted { count 1 } }\nspread',
        );
        expect((await messagesOf(strict, 'hook-count'))[0]).toContain('Strict allows 1 on a skirted lure');
    });
});
