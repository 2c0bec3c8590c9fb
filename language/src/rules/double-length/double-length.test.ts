import { describe, expect, test } from 'vitest';
import { mended, messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(length: string, lineClass: string): string {
    return today(
        '    event harbour-cup\n    port short corner { outfit own  lure broad  back wave 2 }',
        `outfit own "Own" {\n    line nylon { class ${lineClass} }\n    double { length ${length} }\n}`,
    );
}

// IGFA saltwater: 4.57 m up to and including 10 kg, 9.14 m above.
describe('double-length', () => {
    test.each([
        ['10 kg', '4.58 m', 'allows 4.57 m'],
        ['15 kg', '9.15 m', 'allows 9.14 m'],
    ])('on the %s class %s is too long', async (lineClass, length, limit) => {
        expect((await messagesOf(fished(length, lineClass), 'double-length'))[0]).toContain(limit);
    });

    test('what one class allows another does not', async () => {
        expect(await messagesOf(fished('8 m', '15 kg'), 'double-length')).toEqual([]);
        expect(await messagesOf(fished('8 m', '10 kg'), 'double-length')).toHaveLength(1);
    });

    test('is mended by shortening it', async () => {
        const after = await mended(fished('9.5 m', '24 kg'), 'double-length');
        expect(after).toContain('double { length 8.9 m }');
        expect(await messagesOf(after, 'double-length')).toEqual([]);
    });
});
