import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { palettes } from '../../language/src/drawing/palette.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { type SvgWishes, svgOf } from '../../language/src/drawing/svg.ts';
import { svgOfSide } from '../../language/src/drawing/svg-side.ts';
import { textWidth } from '../../language/src/drawing/text-width.ts';
import { contrast } from './contrast.ts';
import { dense, diamond, finding, type Made, makePlan, seven } from './plans.ts';

interface Tag {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
}

/** Reads as a strict XML reader would; throws on anything that is not well formed. */
function parse(svg: string): { tags: Tag[]; texts: string[] } {
    const tags: Tag[] = [];
    const texts: string[] = [];
    const parser = new SaxesParser();
    parser.on('error', (error) => {
        throw error;
    });
    parser.on('opentag', ({ name, attributes }) =>
        tags.push({ name, attributes: attributes as Tag['attributes'] }),
    );
    parser.on('text', (text) => texts.push(text));
    parser.write(svg).close();
    return { tags, texts };
}

const views: readonly [string, (made: Made, wishes?: SvgWishes) => string][] = [
    ['above', (made, wishes) => svgOf(sceneFromAbove(makePlan(made), findings), wishes)],
    ['side', (made, wishes) => svgOfSide(sceneFromSide(makePlan(made), findings), wishes)],
];

const findings = [finding('stagger', 'warning', ['port long rigger'], 'They touch.', 'Move one.')];

const hostile = [
    '</text></svg><script>alert(1)</script>',
    '" onload="alert(1)',
    "' onmouseover='x",
    '<![CDATA[ & &amp; &#0; ]]>',
    '<!--',
    'a\u0000b\u0007c\u001b[31m\ufffe\ud800',
    '\u202eterces\u2066',
    'javascript:alert(1) url(http://example.com/x) @import',
    '<foreignObject><style>*{fill:var(--x)}</style></foreignObject>',
    '漁船 🎣 шторм',
];

describe.each(views)('an SVG from %s', (_, draw) => {
    test('is made of plain shapes and text with resolved colours, and of nothing else', () => {
        const allowed = ['svg', 'title', 'desc', 'g', 'path', 'rect', 'circle', 'text'];
        for (const made of [diamond, seven, dense]) {
            for (const palette of Object.keys(palettes) as (keyof typeof palettes)[]) {
                const svg = draw(made, { palette, fans: true });
                const { tags } = parse(svg);
                expect(
                    [...new Set(tags.map(({ name }) => name))].filter((name) => !allowed.includes(name)),
                ).toEqual([]);
                for (const { attributes } of tags) {
                    for (const [name, value] of Object.entries(attributes)) {
                        expect(name).not.toMatch(/^on|^style$|^class$|href|^id$|^transform$/);
                        if (name === 'fill' || name === 'stroke')
                            expect(value).toMatch(/^(none|#[0-9a-f]{6})$/);
                    }
                }
                expect(svg).not.toMatch(
                    /var\(|url\(|NaN|undefined|Infinity|<style|http:\/\/(?!www\.w3\.org\/2000\/svg")/,
                );
            }
        }
    });

    test('carries its name and its words for who cannot see it', () => {
        const svg = draw(diamond);
        const { tags } = parse(svg);
        expect(tags[0]?.attributes.role).toBe('img');
        expect(tags.slice(1, 3).map(({ name }) => name)).toEqual(['title', 'desc']);
        const [, title, description] = /<title>(.*?)<\/title><desc>(.*?)<\/desc>/s.exec(svg)!;
        expect(title).toMatch(/^Four-line diamond, seen from (above|the side)\.$/);
        expect(description).toContain('Port short corner: Ink, pusher, 330 mm; 13.1 m astern');
    });

    test('names every element that a view can select', () => {
        const { tags } = parse(draw(diamond));
        const ids = tags.flatMap(({ attributes }) => attributes['data-id'] ?? []);
        for (const position of ['port short corner', 'starboard long corner', 'starboard short rigger']) {
            for (const kind of ['line', 'tow', 'lure', 'note']) expect(ids).toContain(`${kind}:${position}`);
        }
        expect(new Set(ids).size).toBe(ids.length);
    });

    test.each(hostile)('shows a hostile name as letters: %j', (name) => {
        const made: Made = {
            ...diamond,
            name,
            title: name,
            boat: { title: name, length: 10, beam: 3 },
            lines: diamond.lines.map((line) => ({ ...line, gear: name })),
        };
        const clean = parse(
            draw({ ...made, ...{ name: 'x', title: 'x', boat: { title: 'x', length: 10, beam: 3 } } }),
        );
        const { tags, texts } = parse(draw(made, { live: true }));
        // As many elements of each kind that no text makes, and no attribute that a text brought.
        const count = (list: Tag[], kind: string) => list.filter((tag) => tag.name === kind).length;
        for (const kind of ['path', 'circle', 'svg', 'desc']) {
            expect(count(tags, kind)).toBe(count(clean.tags, kind));
        }
        expect(tags.some(({ attributes }) => 'onload' in attributes || 'onmouseover' in attributes)).toBe(
            false,
        );
        expect(tags.some(({ name }) => ['script', 'style', 'foreignObject'].includes(name))).toBe(false);
        expect(texts.join('')).not.toMatch(/[\u0000-\u0008\u202e\u2066]/);
    });

    test('is the same, letter for letter, every time', () => {
        const analysed = draw(seven);
        expect(draw(seven)).toBe(analysed);
    });

    test('is a group of reachable, named elements where a view is live', () => {
        const { tags } = parse(draw(diamond, { live: true }));
        expect(tags[0]?.attributes.role).toBe('group');
        const lure = tags.find(({ attributes }) => attributes['data-id'] === 'lure:port short corner');
        expect(lure?.attributes).toMatchObject({ tabindex: '0', role: 'img', 'data-role': 'lure' });
        expect(lure?.attributes['aria-label']).toContain('13.1 m astern');
    });
});

describe('a sheet from above', () => {
    test('is light unless asked otherwise', () => {
        expect(views[0]![1](diamond)).toBe(views[0]![1](diamond, { palette: 'light' }));
    });

    test('says its size, its scale and where the transom is, so that a view can read the water off it', () => {
        const { tags } = parse(views[0]![1](diamond));
        const root = tags[0]!.attributes;
        expect(root.width).toBe('210mm');
        expect(root.viewBox).toBe('0 0 2100 2970');
        const [ox, oy] = root['data-transom']!.split(' ').map(Number) as [number, number];
        const perMetre = Number(root['data-per-metre']);
        const rows = views[0]![1](diamond).match(/<text [^>]*>20<\/text>/g)!;
        const twenty = Number(/ y="([\d.]+)"/.exec(rows.at(-1)!)![1]);
        // The ruler's 20 stands 20 m below the transom; its baseline a third of its height lower.
        expect(twenty - oy - 20 * perMetre).toBeCloseTo(30 * 0.36, 0);
        expect(ox).toBeGreaterThan(0);
    });

    test('keeps its lines as long as they are in our faces, whichever faces a viewer has', () => {
        const svg = views[0]![1](diamond);
        const fitted = [
            ...svg.matchAll(/<text [^>]*font-size="([\d.]+)"([^>]*)textLength="([\d.]+)"[^>]*>([^<&]+)</g),
        ];
        expect(fitted.length).toBeGreaterThan(20);
        for (const [, size, between, length, words] of fitted) {
            const weight = between!.includes('bold') ? 'bold' : 'regular';
            expect(Number(length)).toBeCloseTo(textWidth(words!, Number(size), weight), 1);
        }
        // A name in letters that we cannot measure is left as its viewer sets it.
        const other = views[0]![1]({ ...diamond, title: '漁船の計画' });
        expect(other).toMatch(/<text [^>]*font-weight="bold" fill="#15191d">漁船の計画</);
    });

    test('leaves out the title block where a card brings its own', () => {
        const svg = views[0]![1](diamond, { foot: false });
        expect(svg).not.toContain('planning aids');
        expect(svg).toContain('Port short corner');
    });

    test('carries the caution, the title and the facts of the plan', () => {
        const { texts } = parse(views[0]![1](diamond));
        for (const words of [
            'Four-line diamond',
            'Sandpiper',
            'White marlin',
            '8 kn',
            '0.7 m (2.3 ft)',
            '2026-02-14',
        ]) {
            expect(texts).toContain(words);
        }
        expect(texts.join(' ')).toContain('Figures are planning aids');
    });

    test('marks a finding by shape, number and word', () => {
        const svg = svgOf(
            sceneFromAbove(makePlan(diamond), [
                finding('drag-over-class', 'error', ['port long rigger'], 'Over the class.'),
                finding('drag-untested', 'hint', ['port short corner'], 'Never tested.'),
            ]),
        );
        const note = (position: string) => new RegExp(`data-id="note:${position}".*?</g>`).exec(svg)![0];
        // Eight corners filled for an error, a ring for a hint.
        expect(note('port long rigger')).toMatch(/<path d="[^"]*Z" fill="#a8005c"/);
        expect(
            note('port long rigger')
                .match(/<path d="([^"]*)Z"/)![1]!
                .split(/[ML ]/)
                .filter(Boolean),
        ).toHaveLength(16);
        expect(note('port long rigger')).toContain('>drag over class</text>');
        expect(note('port short corner')).toMatch(/<circle [^>]*fill="#ffffff" stroke="#a8005c"/);
        expect(note('port short corner')).toContain('>drag untested</text>');
    });

    test('has text that can be read on its paper in every palette', () => {
        for (const { paper, ink, soft, accent, onAccent, face, lower } of Object.values(palettes)) {
            // WCAG 2.1, success criterion 1.4.3: 4.5 to 1.
            expect(contrast(ink, paper)).toBeGreaterThan(7);
            expect(contrast(soft, paper)).toBeGreaterThan(4.5);
            expect(contrast(accent, paper)).toBeGreaterThan(4.5);
            expect(contrast(onAccent, accent)).toBeGreaterThan(4.5);
            // Lines cross the shaded water.
            expect(contrast(ink, face)).toBeGreaterThan(7);
            expect(contrast(ink, lower)).toBeGreaterThan(7);
        }
    });

    test('is drawn in a few milliseconds', () => {
        const analysed = makePlan(seven);
        const times = Array.from({ length: 120 }, () => {
            const begun = performance.now();
            svgOf(sceneFromAbove(analysed, findings));
            return performance.now() - begun;
        });
        // The best of many: what the work takes when nothing else runs.
        expect(Math.min(...times)).toBeLessThan(5);
    });
});
