import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

// Flat clips 1.4 m out to either side, 2.8 m apart; the shotgun down the middle is 1.4 m from each.
const lines = `
    port short corner { lure broad  back wave 2 }
    starboard long corner { lure dart  back wave 3 }
    shotgun { lure pin  back wave 6 }`;

describe('lateral-gap', () => {
    test('is off until a team wants it', async () => {
        await expectMarked(today(lines), 'lateral-gap');
    });

    test('compares neighbours, seen from astern', async () => {
        const messages = await messagesOf(
            today(`    rule lateral-gap { severity hint }${lines}`),
            'lateral-gap',
        );
        expect(messages.map((message) => message.split('.')[0])).toEqual(
            ['port short corner', 'starboard long corner'].map((_) =>
                expect.stringContaining('Shotgun runs 1'),
            ),
        );
    });

    test('asks for the gap that the team set', async () => {
        const set = (gap: string) => today(`    rule lateral-gap { severity hint  gap ${gap} }${lines}`);
        expect(await messagesOf(set('1.3 m'), 'lateral-gap')).toEqual([]);
        expect(await messagesOf(set('1.5 m'), 'lateral-gap')).toHaveLength(2);
    });
});
