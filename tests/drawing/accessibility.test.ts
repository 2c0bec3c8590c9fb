import axe, { type AxeResults } from 'axe-core';
import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { cardHtml } from '../../language/src/drawing/card/html.ts';
import { cardPages } from '../../language/src/drawing/card/pages.ts';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { launchBrowser } from '../workbench/browser.ts';
import { type Carded, cardedText, exampleOf, hostile } from './card-plans.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

// What people have set on their machines: how light the screen is, and whether its colours are their own.
const screens = {
    light: { colorScheme: 'light' },
    dark: { colorScheme: 'dark' },
    'high contrast, dark': { colorScheme: 'dark', forcedColors: 'active', contrast: 'more' },
    'high contrast, light': { colorScheme: 'light', forcedColors: 'active', contrast: 'more' },
    'a telephone': { colorScheme: 'light', viewport: { width: 360, height: 740 } },
} as const satisfies Record<string, BrowserContextOptions>;

let browser: Browser;
let settled: Carded;
beforeAll(async () => {
    [browser, settled] = await Promise.all([launchBrowser(), exampleOf('bank-settled')]);
});
afterAll(() => browser?.close());

/** What the engine finds wrong in a page, and how many of its rules had something to look at. */
async function audit(html: string, screen: BrowserContextOptions) {
    const page = await browser.newPage(screen);
    try {
        await page.setContent(html);
        await page.evaluate(axe.source);
        const { violations, passes } = (await page.evaluate('axe.run()')) as AxeResults;
        const wrong = violations.flatMap(({ id, nodes }) =>
            nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary}`),
        );
        return { wrong, rules: passes.map(({ id }) => id) };
    } finally {
        await page.close();
    }
}

describe.each(Object.entries(screens))('on a screen that is %s', (_, screen) => {
    test('the engine finds nothing wrong with the card for a telephone', async () => {
        for (const { card, scene } of [settled, await cardedText(hostile)]) {
            const { wrong, rules } = await audit(cardHtml(card, scene), screen);
            expect(wrong).toEqual([]);
            expect(rules).toEqual(
                expect.arrayContaining(['document-title', 'html-has-lang', 'color-contrast']),
            );
            expect(rules.length).toBeGreaterThan(10);
        }
    });

    test('nor with a drawing and a card that stand in a page', async () => {
        const { card, scene } = settled;
        for (const svg of [svgOf(scene), svgOf(scene, { palette: 'dark' }), cardPages(card, scene)[0]!]) {
            const page = `<!DOCTYPE html><html lang="en"><title>A plan</title><main><h1>A plan</h1>${svg}</main></html>`;
            const { wrong, rules } = await audit(page, screen);
            expect(wrong).toEqual([]);
            expect(rules).toContain('svg-img-alt');
        }
    });
});

test('the engine finds what is wrong', async () => {
    const bad =
        '<!DOCTYPE html><html><body><p style="color:#bbb;background:#fff">pale</p><svg role="img"/></body></html>';
    const { wrong } = await audit(bad, screens.light);
    const found = wrong.map((each) => each.split(':')[0]);
    expect(found).toEqual(expect.arrayContaining(['color-contrast', 'html-has-lang', 'svg-img-alt']));
});
