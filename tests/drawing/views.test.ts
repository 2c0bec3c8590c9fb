import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, test } from 'vitest';
import { palettes } from '../../language/src/drawing/palette.ts';
import { sceneOfChanges } from '../../language/src/drawing/scene-compare.ts';
import { sceneOfStrike } from '../../language/src/drawing/scene-strike.ts';
import { sceneOfTurn, turnToLookAt } from '../../language/src/drawing/scene-turn.ts';
import { layOut } from '../../language/src/drawing/sheet.ts';
import { type SvgWishes, svgOfChanges } from '../../language/src/drawing/svg.ts';
import { svgOfStrike } from '../../language/src/drawing/svg-strike.ts';
import { svgOfTurn } from '../../language/src/drawing/svg-turn.ts';
import { turnInTime } from '../../language/src/plan/analyse/turn-in-time.ts';
import { overlaps } from './boxes.ts';
import { contrast, luminance } from './contrast.ts';
import { type ExamplePlan, examplePlans } from './examples.ts';
import { finding } from './plans.ts';

let examples: readonly ExamplePlan[];
beforeAll(async () => {
    examples = await examplePlans();
});

type Draw = (example: ExamplePlan, wishes?: SvgWishes) => string;

const views: readonly [string, Draw][] = [
    [
        'turn',
        ({ plan, findings }, wishes) => {
            const chosen = turnToLookAt(plan);
            return svgOfTurn(
                sceneOfTurn(plan, chosen, turnInTime(plan, chosen.side, chosen.radius), findings),
                wishes,
            );
        },
    ],
    ['strike', ({ plan, findings }, wishes) => svgOfStrike(sceneOfStrike(plan, {}, findings), wishes)],
    [
        'compare',
        ({ plan, findings }, wishes) =>
            svgOfChanges(sceneOfChanges(examples[0]!.plan, plan, findings), wishes),
    ],
];

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

describe.each(views)('an SVG of a %s', (view, draw) => {
    test('is made of plain shapes and text with resolved colours, and of nothing else', () => {
        const allowed = new Set(['svg', 'title', 'desc', 'g', 'path', 'rect', 'circle', 'text']);
        for (const example of examples) {
            for (const palette of Object.keys(palettes) as (keyof typeof palettes)[]) {
                const svg = draw(example, { palette });
                for (const { name, attributes } of tagsOf(svg)) {
                    expect(allowed).toContain(name);
                    for (const [attribute, value] of Object.entries(attributes)) {
                        expect(attribute).not.toMatch(/^on|^style$|^class$|href|^id$|^transform$/);
                        if (attribute === 'fill' || attribute === 'stroke')
                            expect(value).toMatch(/^(none|#[0-9a-f]{6})$/);
                    }
                }
                expect(svg).not.toMatch(
                    /var\(|url\(|NaN|undefined|Infinity|<style|http:\/\/(?!www\.w3\.org\/2000\/svg")/,
                );
            }
        }
    });

    test('has ids of its own for all that it names, words for who cannot see it, and is the same every time', () => {
        for (const example of examples) {
            const svg = draw(example);
            expect(draw(example)).toBe(svg);
            const ids = tagsOf(svg).flatMap(({ attributes }) => attributes['data-id'] ?? []);
            expect(new Set(ids).size).toBe(ids.length);
            expect(/<desc>([^<]+)</.exec(svg)![1]!.length).toBeGreaterThan(40);
        }
    });

    test('shows hostile names as letters', () => {
        const hostile = '</text></svg><script>alert(1)</script>" onload="x';
        const example = examples.find(({ name }) => name === 'bank-settled')!;
        const { plan } = example.plan;
        const hostilePlan = { ...example.plan, plan: { ...plan, title: hostile, name: hostile } };
        const findings = [finding('stagger', 'warning', ['port short corner'], hostile)];
        const tags = tagsOf(draw({ ...example, plan: hostilePlan, findings }));
        expect(tags.some(({ name }) => name === 'script')).toBe(false);
        expect(tags.some(({ attributes }) => 'onload' in attributes)).toBe(false);
    });

    test('marks what was found on the thing that it concerns', () => {
        const example = examples.find(({ name }) => name === 'bank-settled')!;
        const findings = [finding('stagger', 'error', ['port short corner'], 'They touch.')];
        const [bare, marked] = [draw({ ...example, findings: [] }), draw({ ...example, findings })];
        const octagons = (svg: string) =>
            (svg.match(new RegExp(`<path d="[^"]+Z" fill="${palettes.light.accent}"/>`, 'g')) ?? []).length;
        // Once beside the position, once before its words at the foot.
        expect(octagons(marked) - octagons(bare)).toBe(2);
        expect(marked).toContain('They touch.');
    });

    test('is light', () => {
        for (const example of examples)
            expect(draw(example).length).toBeLessThan(view === 'compare' ? 70_000 : 60_000);
    });
});

test('a comparison keeps its labels apart', () => {
    for (const { plan, findings } of examples) {
        const scene = sceneOfChanges(examples[0]!.plan, plan, findings);
        const { labels } = layOut({ ...scene, view: 'above' });
        expect(labels).toHaveLength(scene.notes.length);
        expect(overlaps(labels.map(({ box }) => box))).toEqual([]);
    }
});

test('a comparison of a plan with itself shows no ghost and tells no change', () => {
    for (const { plan } of examples) {
        const scene = sceneOfChanges(plan, plan);
        expect([scene.told, scene.ghosts]).toEqual([[], []]);
        expect(scene.remarks[0]).toMatch(/^Nothing has changed since /);
    }
});

describe('a comparison', () => {
    test('ghosts what lies elsewhere and says what changed beside it', () => {
        const of = (name: string) => examples.find((each) => each.name === name)!.plan;
        const scene = sceneOfChanges(of('bank-settled'), of('bank-rough'));
        const ghosts = scene.ghosts.filter(({ role }) => role === 'lure').map(({ position }) => position);
        expect(ghosts).toContain('starboard short rigger');
        const at = (position: string) => scene.notes.find((note) => note.position === position)?.changes;
        expect(at('starboard short rigger')).toContain('clip: 5.4 kg → 4.8 kg');
        expect(scene.notes.find(({ title }) => title === 'Shotgun')?.changes).toEqual(['gone']);
        expect(at('starboard squid chain')).toEqual([]);
        expect(scene.remarks.join(' ')).toContain('Speed: 8 kn → 7 kn.');
    });
});

/** The colour as a photocopier sees it: the grey of the same luminance. */
function grey(colour: string): string {
    const y = luminance(colour);
    const part = Math.round(255 * (y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055));
    return `#${part.toString(16).padStart(2, '0').repeat(3)}`;
}

describe.each(Object.entries(palettes))('the inks of %s', (_, palette) => {
    test('can be read in greys: texts at 4.5 to 1, lines at 3 to 1, against paper and against shaded water', () => {
        for (const ink of ['ink', 'soft', 'accent'] as const) {
            for (const ground of ['paper', 'face'] as const) {
                expect(contrast(grey(palette[ink]), grey(palette[ground]))).toBeGreaterThanOrEqual(4.5);
            }
        }
        expect(contrast(grey(palette.onAccent), grey(palette.accent))).toBeGreaterThanOrEqual(4.5);
        expect(contrast(grey(palette.water), grey(palette.paper))).toBeGreaterThanOrEqual(3);
    });
});

describe.each(views)('every text of a %s', (_, draw) => {
    test('stands out from its paper at 4.5 to 1 when all colours are greys, and no two kinds differ by colour alone', () => {
        const svg = draw(examples.find(({ name }) => name === 'too-much')!);
        const fills = tagsOf(svg).flatMap(({ name, attributes }) =>
            name === 'text' && !attributes['aria-hidden'] ? attributes.fill! : [],
        );
        expect(fills.length).toBeGreaterThan(20);
        for (const fill of new Set(fills)) {
            if (fill === palettes.light.onAccent) continue;
            expect(contrast(grey(fill), grey(palettes.light.paper))).toBeGreaterThanOrEqual(4.5);
        }
    });
});
