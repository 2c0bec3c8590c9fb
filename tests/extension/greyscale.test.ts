import { beforeAll, describe, expect, test } from 'vitest';
import { drawArcs, drawCurve } from '../../extension/view/turn-curve.ts';
import { drawWater } from '../../extension/view/turn-water.ts';
import { type PaletteName, palettes } from '../../language/src/drawing/palette.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneOfChanges } from '../../language/src/drawing/scene-compare.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { sceneOfStrike } from '../../language/src/drawing/scene-strike.ts';
import { sceneOfTurn, turnToLookAt } from '../../language/src/drawing/scene-turn.ts';
import { svgOf, svgOfChanges } from '../../language/src/drawing/svg.ts';
import { svgOfSide } from '../../language/src/drawing/svg-side.ts';
import { svgOfStrike } from '../../language/src/drawing/svg-strike.ts';
import { turnInTime } from '../../language/src/plan/analyse/turn-in-time.ts';
import { type ExamplePlan, examplePlans } from '../drawing/examples.ts';

/** Relative luminance of a colour, WCAG 2.2: what is left of it in greyscale. */
function grey(colour: string): number {
    const [red, green, blue] = [1, 3, 5].map((at) => {
        const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
    const [light, dark] = [grey(a), grey(b)].sort((x, y) => y - x) as [number, number];
    return (light + 0.05) / (dark + 0.05);
}

let examples: readonly ExamplePlan[];
beforeAll(async () => {
    examples = await examplePlans();
});

const turnOf = ({ plan, findings }: ExamplePlan) => {
    const chosen = turnToLookAt(plan);
    return sceneOfTurn(plan, chosen, turnInTime(plan, chosen.side, chosen.radius), findings);
};
const size = { width: 1600, height: 1400 };
const views: Readonly<Record<string, (example: ExamplePlan, palette: PaletteName) => string>> = {
    'from above': ({ plan, findings }, palette) => svgOf(sceneFromAbove(plan, findings), { palette }),
    'from the side': ({ plan, findings }, palette) => svgOfSide(sceneFromSide(plan, findings), { palette }),
    'of a turn': (example, palette) => drawWater(turnOf(example), palettes[palette], size).svg,
    'of how near two lines come': (example, palette) =>
        drawCurve(turnOf(example), palettes[palette], size, 28),
    'of the clean turns': (example, palette) => drawArcs(turnOf(example), palettes[palette]),
    'of a bite': ({ plan }, palette) => svgOfStrike(sceneOfStrike(plan), { palette }),
    'of two versions': ({ plan, findings }, palette) =>
        svgOfChanges(sceneOfChanges(examples[0]!.plan, plan, findings), { palette }),
};

describe.each(Object.keys(palettes) as PaletteName[])('in greyscale, in the inks for %s,', (name) => {
    const { paper, accent, onAccent } = palettes[name];

    test.each(Object.keys(views))('every word of the view %s can be read', (view) => {
        let words = 0;
        for (const example of examples.slice(0, 4)) {
            for (const [, before, fill] of views[view]!(example, name).matchAll(
                /<text ([^>]*)fill="(#[0-9a-f]{6})"/g,
            )) {
                // The band around letters, and letters inside a shape that has the accent for its paper.
                if (before!.includes('stroke=') || fill === paper) continue;
                words++;
                const ground = fill === onAccent ? accent : paper;
                expect(contrast(fill!, ground), `${fill} on ${ground}`).toBeGreaterThanOrEqual(4.5);
            }
        }
        expect(words).toBeGreaterThan(4);
    });
});
