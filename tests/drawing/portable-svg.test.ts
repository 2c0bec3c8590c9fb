import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, test } from 'vitest';
import { cardPages, cardSheet } from '../../language/src/drawing/card/pages.ts';
import { palettes } from '../../language/src/drawing/palette.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneOfChanges } from '../../language/src/drawing/scene-compare.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { sceneOfStrike } from '../../language/src/drawing/scene-strike.ts';
import { sceneOfTurn, turnToLookAt } from '../../language/src/drawing/scene-turn.ts';
import { svgOf, svgOfChanges } from '../../language/src/drawing/svg.ts';
import { svgOfSide } from '../../language/src/drawing/svg-side.ts';
import { svgOfStrike } from '../../language/src/drawing/svg-strike.ts';
import { svgOfTurn } from '../../language/src/drawing/svg-turn.ts';
import { turnInTime } from '../../language/src/plan/analyse/turn-in-time.ts';
import { type Carded, cardedText, examples, hostile } from './card-plans.ts';

let drawn: readonly (readonly [what: string, svg: string])[];
beforeAll(async () => {
    const all = [...(await examples()), await cardedText(hostile)];
    drawn = all.flatMap((each) => everyDrawingOf(each, all[0]!));
}, 60_000);

function everyDrawingOf({ analysed, card, scene }: Carded, other: Carded) {
    const chosen = turnToLookAt(analysed);
    const turn = turnInTime(analysed, chosen.side, chosen.radius);
    const { name } = analysed.plan;
    return [
        ...Object.keys(palettes).map((palette) => {
            const above = svgOf(sceneFromAbove(analysed, []), { palette: palette as keyof typeof palettes });
            return [`${name} above, ${palette}`, above] as const;
        }),
        [`${name} from the side`, svgOfSide(sceneFromSide(analysed, []))] as const,
        [`${name} in a turn`, svgOfTurn(sceneOfTurn(analysed, chosen, turn, []))] as const,
        [`${name} at a strike`, svgOfStrike(sceneOfStrike(analysed, {}, []))] as const,
        [`${name} over another`, svgOfChanges(sceneOfChanges(other.analysed, analysed, []))] as const,
        [`${name} as a card`, cardSheet(card, scene)] as const,
        ...cardPages(card, scene).map((page, at) => [`${name}, page ${at + 1} of its card`, page] as const),
    ];
}

// What drawing programs, office suites and browsers all draw alike. Styles, classes, links, symbols used elsewhere,
// filters and what holds HTML are each left out or drawn otherwise by one of them.
const elements: ReadonlySet<string> = new Set([
    ...['svg', 'g', 'title', 'desc', 'text', 'path', 'rect', 'circle'],
]);
/** Attributes that paint, and what they may say: a colour as it is, or none. */
const inks = ['fill', 'stroke'] as const;

describe('every drawing and every card', () => {
    test('holds elements that are drawn alike everywhere, and nothing that refers or runs', () => {
        expect(drawn.length).toBeGreaterThan(80);
        for (const [what, svg] of drawn) {
            for (const { name, attributes } of tagsOf(svg)) {
                expect(elements, `${what}: <${name}>`).toContain(name);
                for (const [key, value] of Object.entries(attributes)) {
                    if (/^(aria-|data-)/.test(key)) continue;
                    expect(key, what).not.toMatch(
                        /^(style|class|filter|mask|clip-path|href|xlink:href|on\w+)$/,
                    );
                    if (key !== 'xmlns')
                        expect(value, `${what}: ${key}`).not.toMatch(/url\(|var\(|https?:|javascript:/i);
                }
            }
        }
    });

    test('says each colour as it is', () => {
        for (const [what, svg] of drawn) {
            const painted = tagsOf(svg).flatMap(({ attributes }) =>
                inks.flatMap((ink) => attributes[ink] ?? []),
            );
            expect(painted.length, what).toBeGreaterThan(5);
            expect(
                painted.filter((colour) => !/^(none|#[0-9a-f]{3}|#[0-9a-f]{6})$/i.test(colour)),
                what,
            ).toEqual([]);
        }
    });

    test('writes words as text that can be found and copied, in faces that end in one that is everywhere', () => {
        for (const [what, svg] of drawn) {
            const tags = tagsOf(svg);
            expect(tags.filter(({ name }) => name === 'text').length, what).toBeGreaterThan(5);
            for (const { attributes } of tags) {
                const faces = attributes['font-family'];
                if (faces) expect(faces, what).toMatch(/sans-serif$/);
            }
        }
    });
});

interface Tag {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
}

function tagsOf(svg: string): Tag[] {
    const tags: Tag[] = [];
    const parser = new SaxesParser();
    parser.on('error', (error) => {
        throw error;
    });
    parser.on('opentag', ({ name, attributes }) =>
        tags.push({ name, attributes: attributes as Tag['attributes'] }),
    );
    parser.write(svg).close();
    return tags;
}
