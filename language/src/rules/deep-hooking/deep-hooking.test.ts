import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const baited = (hooks: string, event = '') =>
    today(
        `    ${event}\n    port short corner { outfit medium-1  bait own  back 20 m }`,
        `bait own "Own" { kind dead  hooks ${hooks} }`,
    );

describe('deep-hooking', () => {
    test('bait on a J hook is worth a hint', async () => {
        const sheet = await expectMarked(
            today(
                `
    port short corner { outfit medium-1  bait own  back 20 m }`,
                `bait own "Own" { kind dead  hooks { gap 20 mm  kind J } }
    //                                              ^ deep-hooking: Own is on a J hook, and fish swallow bait.`,
            ),
            'deep-hooking',
        );
        expect(sheet.findings.find(({ rule }) => rule === 'deep-hooking')?.severity).toBe('hint');
    });

    test.each(['circle { gap 20 mm }', 'circle { gap 20 mm  offset }', '{ gap 20 mm }'])(
        'not on hooks %s',
        async (hooks) => {
            expect(await messagesOf(baited(hooks), 'deep-hooking')).toEqual([]);
        },
    );

    test('where the event wants circle hooks, that is said instead', async () => {
        const { findings } = await checkText(baited('single { gap 20 mm }', 'event harbour-cup'));
        const said = findings.map(({ rule }) => rule);
        expect(said).toContain('hook-kind');
        expect(said).not.toContain('deep-hooking');
    });

    test('lures are not swallowed', async () => {
        await expectMarked(today('    port short corner { lure broad  back wave 2 }'), 'deep-hooking');
    });
});
