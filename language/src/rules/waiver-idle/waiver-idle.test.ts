import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';
import { judge } from '../judge.ts';
import { firstRules } from '../registry.ts';

const off = '    port short rigger { lure dart  back 29 m }';

describe('waiver-idle', () => {
    test('a waiver that waives something, for a reason, in its time, is not idle', async () => {
        await expectMarked(
            today(`
    date 2026-03-14
${off}
    waive wave-face on port short rigger because "looked good" until 2026-03-14`),
            'wave-face',
            'waiver-idle',
        );
    });

    test('one that has run out waives nothing, and says so', async () => {
        await expectMarked(
            today(`
    date 2026-03-15
    port short rigger { lure dart  back 29 m }
    //                             ^^^^^^^^^ wave-face: on the back of wave 3
    waive wave-face because "looked good" until 2026-03-14
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ waiver-idle: ran out on 2026-03-14, and this plan is for 2026-03-15`),
            'wave-face',
            'waiver-idle',
        );
    });

    test('without a date of the plan there is no day on which it could run out', async () => {
        const undated = today(`${off}\n    waive wave-face because "looked good" until 1999-01-01`);
        await expectMarked(undated, 'wave-face', 'waiver-idle');
    });

    test('one without a reason waives nothing', async () => {
        await expectMarked(
            today(`
    port short rigger { lure dart  back 29 m }
    //                             ^^^^^^^^^ wave-face: on the back of wave 3
    waive wave-face
//  ^^^^^^^^^^^^^^^ waiver-idle: gives no reason, so it waives nothing`),
            'wave-face',
            'waiver-idle',
        );
    });

    test('one for another position waives nothing', async () => {
        await expectMarked(
            today(`
    port short rigger { lure dart  back 29 m }
    //                             ^^^^^^^^^ wave-face: on the back of wave 3
    waive wave-face on shotgun because "looked good"
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ waiver-idle: The waiver of wave-face waives nothing`),
            'wave-face',
            'waiver-idle',
        );
    });

    test('nor does one of a rule that is switched off', async () => {
        const off = today('    rule crew { severity off }\n    waive crew because "guests help"');
        expect((await messagesOf(off, 'waiver-idle'))[0]).toContain('waives nothing');
    });

    test('a waiver that was taken over is judged where it stands', async () => {
        const two = today(`${off}\n    waive wave-face because "looked good"`).concat(
            'spread tomorrow like today { port short rigger { back wave 4 } }\n',
        );
        await expectMarked(two, 'wave-face', 'waiver-idle');
    });

    test('while turns are still to come a waiver of a rule about them waits; without a turn it does nothing now', async () => {
        const idleAtOnce = async (turn: string) => {
            const sheet = await checkText(
                today(
                    `    ${turn}\n    port short corner { lure broad  back wave 2 }\n    waive turn-foul because "we go wide"`,
                ),
            );
            const { findings } = judge(sheet.resolved, sheet.plans, firstRules);
            return findings.filter(({ rule }) => rule === 'waiver-idle');
        };
        expect(await idleAtOnce('turn within 90 m')).toEqual([]);
        expect((await idleAtOnce('')).map(({ what }) => what)).toEqual([
            'The waiver of turn-foul waives nothing.',
        ]);
    });

    test('is mended by taking the waiver out', async () => {
        const idle = today('    waive crew because "two guests help"');
        expect(await messagesOf(await mended(idle, 'waiver-idle'), 'waiver-idle')).toEqual([]);
    });
});
