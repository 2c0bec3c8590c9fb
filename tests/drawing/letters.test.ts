import { parse } from 'opentype.js';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { cardPages } from '../../language/src/drawing/card/pages.ts';
import { drawingInOurLetters, hasStrangeLetters, inOurLetters } from '../../language/src/drawing/letters.ts';
import { faces, printed, readPdf } from './card-pdf.ts';
import { cardedText } from './card-plans.ts';

const plan = (title: string, angler: string) => `
spread away "${title}" {
    port short corner { back 12 m  angler "${angler}" }
    starboard short corner { back 14 m  angler "Ada" }
}
`;

describe('letters that the faces lack', () => {
    const held = faces.map(
        (face) => parse(face.buffer.slice(face.byteOffset, face.byteOffset + face.byteLength)).tables.cmap!,
    );
    const glyphs = held.map(({ glyphIndexMap }) => glyphIndexMap as Record<number, number>);

    test('are all the letters that any of the three faces lacks', () => {
        let kept = 0;
        for (let code = 0x20; code < 0x1_1000; code++) {
            if (code >= 0xd800 && code < 0xe000) continue;
            const letter = String.fromCodePoint(code);
            if (hasStrangeLetters(letter) || letter !== letter.normalize('NFC')) continue;
            kept++;
            expect(
                glyphs.every((map) => map[code]),
                code.toString(16),
            ).toBe(true);
        }
        // Latin with all that Europe and Vietnam put on it, Greek and Cyrillic.
        expect(kept).toBeGreaterThan(1000);
        for (const name of ['Łódź', 'Ñandú', 'Đặng Thị', 'Ξιφίας', 'Щука', 'Þór', '½ × 3 °C'])
            expect(inOurLetters(name)).toBe(name.normalize('NFC'));
    });

    test.each([
        ['شاهین 5', '[5 letters] 5'],
        ['דג גדול', '[6 letters]'],
        ['金枪鱼, 12 m', '[3 letters], 12 m'],
        ['🎣🐟🎣', '[3 signs]'],
        ['👨‍👩‍👧 and 👍🏽', '[sign] and [sign]'],
        ['鱼🐟', '[letter, sign]'],
        ['a\u0308', 'ä'],
        ['', ''],
    ])('%s is printed as %s', (name, told) => {
        expect(inOurLetters(name)).toBe(told);
    });

    test('are counted in the words of a drawing, not in its markup', () => {
        expect(drawingInOurLetters('<svg aria-label="鱼"><text x="1">鱼 &lt; 3</text></svg>')).toBe(
            '<svg aria-label="鱼"><text x="1">[letter] &lt; 3</text></svg>',
        );
    });
});

describe('a card of a plan with such letters', () => {
    test('says how many there are, on every page the same, and where they can be read', async () => {
        const away = await cardedText(plan('Away 金枪鱼', 'شاهین'));
        const read = await readPdf(await printed(away));
        const said = read.pages.flatMap(({ runs }) => runs.map(({ words }) => words)).join(' ');
        expect(said).toContain('Away [3 letters]');
        expect(said).toContain('[5 letters]');
        expect(said).toMatch(/no face for/);
        // What the file says of itself is no print.
        expect(read.title).toBe('Away 金枪鱼');
        const pages = cardPages(away.card, away.scene);
        for (const page of pages) new SaxesParser().write(page).close();
        const drawn = pages.join('').replace(/<[^>]*>/g, '');
        expect(hasStrangeLetters(drawn)).toBe(false);
    });

    test('says nothing of it where there are none', async () => {
        const said = cardPages(...pair(await cardedText(plan('Ørnen', 'Ægir')))).join('');
        expect(said).not.toMatch(/no face for|letters\]/);
        expect(said).toContain('Ørnen');
    });
});

function pair({ card, scene }: Awaited<ReturnType<typeof cardedText>>) {
    return [card, scene] as const;
}
