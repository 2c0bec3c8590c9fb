import { URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';
import { type FileText, load } from '../../plan/load.ts';
import { createServices } from '../../plan/services.ts';
import { checkAll } from '../check.ts';

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

    test('a log in a file of its own goes by what the plan in use set, each event by its own', async () => {
        const log =
            'use "plans.spread"\nlog 2026-03-14 {\n    using strict\n    using lax from 10:00\n' +
            '    at 09:00 bite shotgun\n    at 11:00 bite shotgun\n    at 11:30 bite port long corner\n}\n';
        const plan = (name: string, setting: string) =>
            `spread ${name} { ${setting}  event cup  port short corner { } }\n`;
        const plans = (severity: string, rule = 'log-mismatch') =>
            'rules cup { lines out 08:00 }\n' +
            plan('strict', '') +
            plan('lax', `rule ${rule} { severity ${severity} }`);
        const found = async (plans: string, rule = 'log-mismatch') => {
            const uri = URI.file('/season/log.spread');
            const loaded = await load(createServices(), [uri], (asked): FileText => {
                if (asked.path.endsWith('/log.spread')) return { kind: 'text', text: log };
                return asked.path.endsWith('/plans.spread')
                    ? { kind: 'text', text: plans }
                    : { kind: 'missing' };
            });
            const { findings } = checkAll(loaded, { turns: false }).find(
                ({ uri }) => String(uri) === 'file:///season/log.spread',
            )!;
            return findings.filter((one) => one.rule === rule).map(({ severity }) => severity);
        };
        expect(await found(plans('warning'))).toEqual(['warning', 'warning', 'warning']);
        expect(await found(plans('off'))).toEqual(['warning']);
        expect(await found(plans('error'))).toEqual(['warning', 'error', 'error']);
        expect(await found(plans('hint', 'event'), 'event')).toEqual(['warning', 'hint', 'hint']);
        expect(await found(plans('off', 'event'), 'event')).toEqual(['warning']);
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
