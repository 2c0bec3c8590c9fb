import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const own = (tested: string) => `outfit own "Own" { drag { set 3 kg } ${tested} }`;
const line = '    port short corner { outfit own  lure broad  back wave 2 }';
const dated = (date: string, tested: string) => today(`    date ${date}\n${line}`, own(tested));

describe('drag-untested', () => {
    test('a drag that no scale has seen', async () => {
        expect(await messagesOf(dated('2026-03-14', ''), 'drag-untested')).toEqual([
            'The drag of Own has no scale test. Marks on a lever say little; a scale says what the line will feel. Pull it over a scale with the rod in its holder, and write down the day.',
        ]);
    });

    test('a test holds for thirty days of the plan’s own calendar', async () => {
        expect(await messagesOf(dated('2026-03-31', 'tested 2026-03-01'), 'drag-untested')).toEqual([]);
        expect((await messagesOf(dated('2026-04-01', 'tested 2026-03-01'), 'drag-untested'))[0]).toMatch(
            /^The drag of Own was tested 31 days before this plan, and a test holds for 30 days\./,
        );
    });

    test('a team may test more often', async () => {
        const weekly = dated('2026-03-10', 'tested 2026-03-01').replace(
            line,
            `    rule drag-untested { age 7 d }\n${line}`,
        );
        expect((await messagesOf(weekly, 'drag-untested'))[0]).toContain(
            '9 days before this plan, and a test holds for 7 days',
        );
    });

    test('no rule reads the clock: a plan without a date is not judged', async () => {
        await expectMarked(today(line, own('')), 'drag-untested');
    });

    test('nor is an outfit without a drag to test', async () => {
        await expectMarked(today(`    date 2026-03-14\n${line}`, 'outfit own { }'), 'drag-untested');
    });
});
