import { loadSync } from 'opentype.js';
import { describe, expect, test } from 'vitest';
import { cutToWidth, textWidth, wrap } from '../../language/src/drawing/text-width.ts';

const folder = 'node_modules/@expo-google-fonts/arimo';
const faces = [
    ['regular', `${folder}/400Regular/Arimo_400Regular.ttf`],
    ['bold', `${folder}/700Bold/Arimo_700Bold.ttf`],
    ['italic', `${folder}/400Regular_Italic/Arimo_400Regular_Italic.ttf`],
] as const;

describe.each(faces)('widths of the %s face', (weight, file) => {
    const font = loadSync(file);

    test('are those of the font’s own tables, for every letter of Western European languages', () => {
        const codes = [...range(0x20, 0x7e), ...range(0xa1, 0xac), ...range(0xae, 0xff)];
        for (const character of codes.map((code) => String.fromCharCode(code))) {
            const own = (font.charToGlyph(character).advanceWidth! / font.unitsPerEm) * 1000;
            expect([character, textWidth(character, 1000, weight)]).toEqual([character, Math.round(own)]);
        }
    });

    test('of the marks that we print ourselves are in the table', () => {
        for (const character of '–’·°…×') {
            const own = (font.charToGlyph(character).advanceWidth! / font.unitsPerEm) * 1000;
            expect(textWidth(character, 1000, weight)).toBe(Math.round(own));
        }
    });
});

test('a letter of another script counts as wide as any', () => {
    expect(textWidth('漁', 40)).toBe(40);
    expect(textWidth('🎣', 40)).toBe(40);
});

test('what is cut fits, and says that it was cut', () => {
    const name = 'The unreasonably long name of a boat that nobody shortened';
    const cut = cutToWidth(name, 500, 40, 'bold');
    expect(cut).toMatch(/^The unreason.*…$/);
    expect(textWidth(cut, 40, 'bold')).toBeLessThanOrEqual(500);
    expect(cutToWidth('Short', 500, 40)).toBe('Short');
});

test('wrapped lines fit and lose no word', () => {
    const words = 'Move the short rigger out to 38 m, or in to 30 m.';
    const lines = wrap(words, 400, 30);
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(textWidth(line, 30)).toBeLessThanOrEqual(400);
    expect(lines.join(' ')).toBe(words);
});

function range(from: number, to: number): number[] {
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}
