import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const plans = `
spread later "Later" like today {
    port long rigger { lure wisp  back wave 5 }
}
`;

function logged(events: string): string {
    return (
        today('    port short corner { lure broad  back wave 2 }\n    spare dart') +
        plans +
        `log 2026-03-14 {\n${events}\n}\n`
    );
}

describe('log-mismatch', () => {
    test('the plan in use at the hour is the one that counts', async () => {
        await expectMarked(
            logged(`
    using today
    using later from 10:00
    at 09:59 bite port long rigger
    //            ^^^^^^^^^^^^^^^^ log-mismatch: Today has no port long rigger
    at 10:00 bite port long rigger`),
            'log-mismatch',
        );
    });

    test('a lure that neither the plan nor its spares have is a hint', async () => {
        const text = logged(`
    using today
    at 07:00 bite port short corner lure dart
    at 07:30 bite port short corner lure pin
    //                                   ^^^ log-mismatch: carries no lure pin`);
        const sheet = await expectMarked(text, 'log-mismatch');
        expect(sheet.findings.find(({ rule }) => rule === 'log-mismatch')?.severity).toBe('hint');
    });

    test('a log without a plan compares with nothing', async () => {
        expect(await messagesOf(logged('    at 07:00 bite shotgun'), 'log-mismatch')).toEqual([]);
    });

    test('before the first plan was taken up there is none', async () => {
        expect(
            await messagesOf(logged('    using later from 10:00\n    at 07:00 bite shotgun'), 'log-mismatch'),
        ).toEqual([]);
    });
});
