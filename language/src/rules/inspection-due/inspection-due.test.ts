import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const own = `outfit own "Own" { line nylon { class 24 kg  fitted 2026-01-01 } }
lure mine "Mine" pusher {
    hooks single { gap 48 mm  inspected 2026-02-01 }
    leader nylon { breaks 90 kg  inspected 2026-02-01 }
}`;
const on = (date: string, more = '') =>
    today(`    date ${date}\n    ${more}\n    port short corner { outfit own  lure mine  back wave 2 }`, own);

describe('inspection-due', () => {
    test('leaders and hooks hold thirty days, line half a year, of the plan’s own calendar', async () => {
        expect(await messagesOf(on('2026-03-03'), 'inspection-due')).toEqual([]);
        expect(await messagesOf(on('2026-03-04'), 'inspection-due')).toEqual([
            'The hooks of Mine were inspected 31 days before this plan, and this team allows 30 days. What nobody has looked at parts on the fish that was waited for. Check and sharpen them, and write down the day.',
            'The leader of Mine was inspected 31 days before this plan, and this team allows 30 days. What nobody has looked at parts on the fish that was waited for. Go over it for nicks, and write down the day.',
        ]);
        expect(await messagesOf(on('2026-06-30'), 'inspection-due')).toHaveLength(2);
        expect(await messagesOf(on('2026-07-01'), 'inspection-due')).toHaveLength(3);
        expect((await messagesOf(on('2026-07-01'), 'inspection-due'))[0]).toMatch(
            /^The line of Own was fitted 181 days before this plan, and this team allows 180 days\./,
        );
    });

    test('a team may look more often, or less', async () => {
        const often = on('2026-02-10', 'rule inspection-due { leader 7 d }');
        expect(await messagesOf(often, 'inspection-due')).toHaveLength(1);
        const seldom = on('2026-03-04', 'rule inspection-due { leader 60 d  hooks 60 d }');
        expect(await messagesOf(seldom, 'inspection-due')).toEqual([]);
    });

    test('stands at the day that was written', async () => {
        await expectMarked(
            today(`
    date 2026-05-01
    port short corner { outfit medium-1  lure broad  back wave 2  hooks { gap 48 mm  inspected 2026-03-01 } }
    //                                                                                         ^^^^^^^^^^ inspection-due: 61 days before this plan`),
            'inspection-due',
        );
    });

    test('a plan without a date, tackle without a day: nothing to say', async () => {
        await expectMarked(on('2026-07-01').replace('date 2026-07-01', ''), 'inspection-due');
        await expectMarked(
            today('    date 2026-07-01\n    port short corner { outfit medium-1  lure broad  back wave 2 }'),
            'inspection-due',
        );
    });
});
