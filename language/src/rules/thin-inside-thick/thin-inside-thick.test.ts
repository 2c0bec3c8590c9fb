import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const fine = (diameter: string) => `outfit fine "Fine" { line nylon { diameter ${diameter} } }`;
const mixed = (corner: string, rigger: string, diameter = '0.55 mm') =>
    today(
        `    port short corner { outfit ${corner}  back 12 m }\n    port short rigger { outfit ${rigger}  back 34 m }`,
        fine(diameter),
    );

describe('thin-inside-thick', () => {
    test('thin line close in, thick line above it', async () => {
        expect((await messagesOf(mixed('fine', 'medium-1'), 'thin-inside-thick'))[0]).toMatch(
            /^Port short corner fishes 0\.55 mm line inside the 0\.71 mm line of port short rigger\./,
        );
    });

    test('the other way round is as it should be', async () => {
        expect(await messagesOf(mixed('medium-1', 'fine'), 'thin-inside-thick')).toEqual([]);
    });

    test('is mended by letting the two outfits change places', async () => {
        const after = await mended(mixed('fine', 'medium-1'), 'thin-inside-thick');
        expect(after).toContain('port short corner { outfit medium-1 ');
        expect(await messagesOf(after, 'thin-inside-thick')).toEqual([]);
    });

    test('a hair thinner is the same', async () => {
        expect(await messagesOf(mixed('fine', 'medium-1', '0.67 mm'), 'thin-inside-thick')).toEqual([]);
        expect(await messagesOf(mixed('fine', 'medium-1', '0.65 mm'), 'thin-inside-thick')).toHaveLength(1);
    });

    test('without two diameters there is nothing to compare', async () => {
        await expectMarked(mixed('fine', 'medium-1').replace('diameter 0.55 mm', ''), 'thin-inside-thick');
    });
});
