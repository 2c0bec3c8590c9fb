import { expect, test } from 'vitest';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { textWidth, wrap } from '../../language/src/drawing/text-width.ts';
import { cardedText, examples } from './card-plans.ts';

/** Where the numbers of the bar of metres stand, and how wide they are. */
function barOf(svg: string) {
    const texts = [
        ...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" font-size="30"[^>]*>([^<]+)<\/text>/g),
    ].map(([, x, y, words]) => ({ x: Number(x), y: Number(y), words: words! }));
    const metres = texts.filter(({ words }) => / m$/.test(words)).at(-1);
    const zero = texts.filter(({ words, y }) => words === '0' && y === metres?.y).at(0);
    return { zero: zero!, metres: metres! };
}

test('the numbers of a scale bar stand apart, on any paper', async () => {
    // Far astern the same paper holds more metres, and their number is longer.
    const far = await cardedText('spread far "Far" { shotgun { back 900 m } }');
    for (const { scene, card } of [far, ...(await examples())]) {
        for (const paper of [
            { width: 210, height: 297 },
            { width: 100, height: 90 },
            { width: 60, height: 50 },
            { width: 40, height: 300 },
        ]) {
            const drawn = svgOf(scene, { bow: 'right', paper, foot: false });
            const { zero, metres } = barOf(drawn);
            expect([card.plan, zero.words, metres.words]).toEqual([
                card.plan,
                '0',
                expect.stringMatching(/^\d+ m$/),
            ]);
            expect(zero.x + textWidth('0', 30) / 2).toBeLessThan(
                metres.x - textWidth(metres.words, 30) / 2 - 5,
            );
        }
    }
});

test('no per cent stands at the beginning of a line', () => {
    const lines = wrap('hooked drag 10.4 kg, 28 % of class', 330, 30);
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(line).not.toMatch(/^%/);
});
