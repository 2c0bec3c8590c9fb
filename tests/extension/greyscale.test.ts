import { beforeAll, describe, expect, test } from 'vitest';
import { drawArcs, drawCurve } from '../../extension/view/turn-curve.ts';
import { drawWater } from '../../extension/view/turn-water.ts';
import { type PaletteName, palettes } from '../../language/src/drawing/palette.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneOfChanges } from '../../language/src/drawing/scene-compare.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { sceneOfStrike } from '../../language/src/drawing/scene-strike.ts';
import { svgOf, svgOfChanges } from '../../language/src/drawing/svg.ts';
import { svgOfSide } from '../../language/src/drawing/svg-side.ts';
import { svgOfStrike } from '../../language/src/drawing/svg-strike.ts';
import { contrast } from '../drawing/contrast.ts';
import { type ExamplePlan, examplePlans, turnSceneOf } from '../drawing/examples.ts';

let examples: readonly ExamplePlan[];
beforeAll(async () => {
    examples = await examplePlans();
});

const size = { width: 1600, height: 1400 };
const views: Readonly<Record<string, (example: ExamplePlan, palette: PaletteName) => string>> = {
    'from above': ({ plan, findings }, palette) => svgOf(sceneFromAbove(plan, findings), { palette }),
    'from the side': ({ plan, findings }, palette) => svgOfSide(sceneFromSide(plan, findings), { palette }),
    'of a turn': (example, palette) => drawWater(turnSceneOf(example), palettes[palette], size).svg,
    'of how near two lines come': (example, palette) =>
        drawCurve(turnSceneOf(example), palettes[palette], size, 28),
    'of the clean turns': (example, palette) => drawArcs(turnSceneOf(example), palettes[palette]),
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
