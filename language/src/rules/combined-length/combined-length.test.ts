import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(double: string, leader: string, lineClass = '24 kg'): string {
    return today(
        '    event harbour-cup\n    port short corner { outfit own  lure own  back wave 2 }',
        `outfit own "Own" {\n    line nylon { class ${lineClass} }\n    double { length ${double} }\n}
lure own "Own lure" pusher { leader nylon { length ${leader} } }`,
    );
}

// IGFA saltwater: 6.10 m up to and including 10 kg, 12.19 m above.
describe('combined-length', () => {
    test('each within its limit, the two may be too long together', async () => {
        const text = fished('6.2 m', '6 m');
        expect(await messagesOf(text, 'double-length')).toEqual([]);
        expect(await messagesOf(text, 'leader-length')).toEqual([]);
        expect((await messagesOf(text, 'combined-length'))[0]).toContain(
            '12.2 m long, and IGFA saltwater allows 12.19 m',
        );
    });

    test('lengths in two systems add up', async () => {
        // 20 ft is 6.096 m; with 6.09 m that is 12.186 m, four millimetres under the limit and inside the margin.
        expect((await messagesOf(fished('20 ft', '6.09 m'), 'combined-length'))[0]).toContain(
            'inside the 15 cm kept',
        );
        expect(await messagesOf(fished('20 ft', '5.9 m'), 'combined-length')).toEqual([]);
    });

    test('is mended by a shorter leader', async () => {
        const after = await mended(fished('6.2 m', '6 m'), 'combined-length');
        expect(after).toContain('leader nylon { length 5.8 m }');
        expect(await messagesOf(after, 'combined-length')).toEqual([]);
    });

    test('a light class allows half', async () => {
        expect(await messagesOf(fished('3 m', '2.9 m', '10 kg'), 'combined-length')).toEqual([]);
        expect(await messagesOf(fished('3 m', '3.2 m', '10 kg'), 'combined-length')).toHaveLength(1);
    });

    test('with one of the two unknown there is no sum', async () => {
        await expectMarked(fished('6 m', '9 m').replace('length 9 m', ''), 'combined-length');
    });
});
