import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pngOf } from '../../language/src/drawing/png.ts';
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
import { type ExamplePlan, examplePlans } from '../drawing/examples.ts';
import { launchBrowser } from './browser.ts';

// Two renderers that share no code: resvg, which makes our PNG files, and a browser's own.

const pressFile = (name: string) => readFileSync(resolve(import.meta.dirname, '../../dist/press', name));
const press = {
    renderer: pressFile('renderer.wasm'),
    faces: ['regular.ttf', 'bold.ttf', 'italic.ttf'].map(pressFile),
};

const width = 840;

let examples: readonly ExamplePlan[];
let browser: Browser;
beforeAll(async () => {
    examples = await examplePlans();
    browser = await launchBrowser();
});
afterAll(() => browser?.close());

const views: Readonly<Record<string, (example: ExamplePlan) => string>> = {
    above: ({ plan, findings }) => svgOf(sceneFromAbove(plan, findings)),
    side: ({ plan, findings }) => svgOfSide(sceneFromSide(plan, findings)),
    turn: ({ plan, findings }) => {
        const chosen = turnToLookAt(plan);
        return svgOfTurn(sceneOfTurn(plan, chosen, turnInTime(plan, chosen.side, chosen.radius), findings));
    },
    strike: ({ plan, findings }) => svgOfStrike(sceneOfStrike(plan, {}, findings)),
    compare: ({ plan, findings }) => svgOfChanges(sceneOfChanges(examples[0]!.plan, plan, findings)),
};

interface Difference {
    /** Mean of the differences in brightness, 0 to 1. */
    readonly mean: number;
    /** The share of tiles of 12 pixels whose mean brightness differs by more than a tenth. */
    readonly tiles: number;
    /** How much of the picture is not paper: an empty one would be like any other empty one. */
    readonly inked: number;
}

/** One SVG as the browser draws it against another as resvg does. */
async function compared(svg: string, other = svg): Promise<Difference> {
    const png = Buffer.from(await pngOf(other, press, { width })).toString('base64');
    const page = await browser.newPage();
    try {
        return await page.evaluate(
            async ([drawn, made, across]) => {
                const load = async (address: string) => {
                    const image = new Image();
                    image.src = address;
                    await image.decode();
                    return image;
                };
                const [svgImage, pngImage] = [await load(drawn), await load(made)];
                // Sizes of an SVG are rounded to whole pixels of the screen before it is asked for its own.
                const high = pngImage.naturalHeight;
                const pixels = (image: HTMLImageElement) => {
                    const context = new OffscreenCanvas(across, high).getContext('2d')!;
                    context.drawImage(image, 0, 0, across, high);
                    return context.getImageData(0, 0, across, high);
                };
                const [a, b] = [pixels(svgImage), pixels(pngImage)];
                const tile = 12;
                const sums = new Map<number, number>();
                let [apart, inked] = [0, 0];
                for (let y = 0; y < high; y++) {
                    for (let x = 0; x < across; x++) {
                        const at = 4 * (y * across + x);
                        const bright = (image: ImageData) =>
                            (image.data[at]! + image.data[at + 1]! + image.data[at + 2]!) / 765;
                        const difference = bright(a) - bright(b);
                        apart += Math.abs(difference);
                        if (bright(a) < 0.9) inked++;
                        const key = Math.floor(y / tile) * 1000 + Math.floor(x / tile);
                        sums.set(key, (sums.get(key) ?? 0) + difference / tile ** 2);
                    }
                }
                const tiles = [...sums.values()].filter((sum) => Math.abs(sum) > 0.1).length / sums.size;
                return { mean: apart / (high * across), tiles, inked: inked / (high * across) };
            },
            [
                `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`,
                `data:image/png;base64,${png}`,
                width,
            ] as const,
        );
    } finally {
        await page.close();
    }
}

describe.each(Object.keys(views))('an SVG of the view %s', (view) => {
    test.each(['bank-settled', 'too-much', 'slow-baits'])(
        'of %s looks the same in a browser and in resvg',
        async (name) => {
            const svg = views[view]!(examples.find((each) => each.name === name)!);
            const { mean, tiles, inked } = await compared(svg);
            expect(inked).toBeGreaterThan(0.01);
            // Two renderers smooth edges and space letters in their own ways, a fraction of a pixel each: that
            // blurs letters, and moves the brightness of hardly any tile.
            expect(mean).toBeLessThan(0.4 * inked);
            expect(tiles).toBeLessThan(0.006);
        },
    );
});

test('pictures that differ are told apart by the same measure', async () => {
    const [one, other] = ['bank-settled', 'bank-rough'].map((name) =>
        views.above!(examples.find((each) => each.name === name)!),
    ) as [string, string];
    const { mean, tiles, inked } = await compared(one, other);
    expect(mean).toBeGreaterThan(0.5 * inked);
    expect(tiles).toBeGreaterThan(0.02);
});
