import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { cardHtml } from '../../language/src/drawing/card/html.ts';
import { launchBrowser } from '../workbench/browser.ts';
import { type Carded, cardedText, examples, hostile, sparse } from './card-plans.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 120_000 });

type Node = DefaultTreeAdapterTypes.ChildNode;
type Element = DefaultTreeAdapterTypes.Element;

let all: Carded[];
let settled: Carded;
let ugly: Carded;

beforeAll(async () => {
    all = await examples();
    settled = all.find(({ card }) => card.plan === 'bank-settled')!;
    ugly = await cardedText(hostile);
});

describe('the page', () => {
    test('is HTML without a fault, for every example and for hostile names', async () => {
        for (const { card, scene } of [...all, ugly, await cardedText(sparse)]) {
            const faults: string[] = [];
            parse(cardHtml(card, scene), { onParseError: ({ code }) => faults.push(code) });
            expect(faults, card.plan).toEqual([]);
        }
    });

    test('runs nothing, fetches nothing, and says so to the browser', () => {
        for (const { card, scene } of [settled, ugly]) {
            const elements = elementsOf(cardHtml(card, scene));
            const names = new Set(elements.map(({ tagName }) => tagName));
            for (const name of ['script', 'link', 'img', 'iframe', 'object', 'foreignObject', 'a', 'form'])
                expect(names).not.toContain(name);
            const fetching = elements.flatMap(({ tagName, attrs }) =>
                attrs
                    .filter(({ name }) => /^(on|src|href|xlink|action|style$)/.test(name))
                    .map(({ name }) => `${tagName} ${name}`),
            );
            expect(fetching).toEqual([]);
            const csp = elements.find(
                (each) => attributeOf(each, 'http-equiv') === 'Content-Security-Policy',
            );
            expect(attributeOf(csp!, 'content')).toBe("default-src 'none'; style-src 'unsafe-inline'");
            expect(cardHtml(card, scene)).not.toMatch(/@import|url\(/);
        }
    });

    test('has no id twice, and every label leads to one', () => {
        const elements = elementsOf(cardHtml(settled.card, settled.scene));
        const ids = elements.flatMap((each) => attributeOf(each, 'id') ?? []);
        expect(new Set(ids).size).toBe(ids.length);
        for (const label of elements.flatMap((each) => attributeOf(each, 'aria-labelledby') ?? []))
            expect(ids).toContain(label);
    });

    test('has a language, one first heading, and tables with captions and scopes', () => {
        const elements = elementsOf(cardHtml(settled.card, settled.scene));
        const named = (name: string) => elements.filter(({ tagName }) => tagName === name);
        expect(attributeOf(named('html')[0]!, 'lang')).toBe('en');
        expect(named('h1')).toHaveLength(1);
        expect(textOf(named('h1')[0]!)).toBe('Settled day on the bank');
        expect(named('table')).toHaveLength(2);
        for (const table of named('table')) {
            expect(textOf(below(table).find(({ tagName }) => tagName === 'caption')!)).not.toBe('');
            for (const row of below(table).filter(({ tagName }) => tagName === 'tr')) {
                const heads = below(row).filter(({ tagName }) => tagName === 'th');
                expect(heads.length).toBeGreaterThan(0);
                for (const head of heads) expect(attributeOf(head, 'scope')).toMatch(/^(col|row)$/);
            }
        }
        const rows = below(named('table')[0]!).filter(({ tagName }) => tagName === 'tr');
        expect(rows).toHaveLength(1 + settled.analysed.lines.length);
        for (const { line, drags } of settled.analysed.lines) {
            const row = rows.find((each) => textOf(each).toLowerCase().includes(line.position.name))!;
            const loads = [...textOf(row).matchAll(/([\d.]+) kg/g)].map(([, kg]) => Number(kg));
            for (const { force } of drags) {
                const kg = force.si / 9.80665;
                expect(loads.some((load) => Math.abs(load - kg) <= 0.051)).toBe(true);
            }
        }
    });
});

describe('in a browser', () => {
    let browser: Browser;
    beforeAll(async () => {
        browser = await launchBrowser();
    });
    afterAll(() => browser?.close());

    test.each(['light', 'dark'] as const)(
        'fits a telephone of 320 pixels, %s, with scripts off',
        async (colorScheme) => {
            for (const { card, scene } of [settled, ugly]) {
                const context = await browser.newContext({
                    viewport: { width: 320, height: 640 },
                    javaScriptEnabled: false,
                    colorScheme,
                    offline: true,
                });
                const page = await context.newPage();
                const asked: string[] = [];
                page.on('request', ({ url }) => asked.push(url()));
                const said: string[] = [];
                page.on('console', (message) => said.push(message.text()));
                await page.setContent(cardHtml(card, scene));
                const wide = await page.locator('html').evaluate((html) => html.scrollWidth);
                expect(wide).toBeLessThanOrEqual(320);
                for (const heading of await page.locator('h1, h2, p, dd').all()) {
                    const box = await heading.boundingBox();
                    expect(box!.x + box!.width).toBeLessThanOrEqual(320);
                }
                // Neither a column of single letters nor a table to be pushed about.
                for (const fact of await page.locator('dd').all())
                    expect((await fact.boundingBox())!.width).toBeGreaterThan(120);
                for (const cell of await page.locator('td:visible, tbody th').all()) {
                    const box = await cell.boundingBox();
                    expect(box!.width).toBeGreaterThan(80);
                    expect(box!.x + box!.width).toBeLessThanOrEqual(320);
                }
                expect(await page.locator('.picture:visible').count()).toBe(1);
                expect(await page.title()).toContain('deck card');
                const [ink, paper] = await page
                    .locator('body')
                    .evaluate((body) => [
                        getComputedStyle(body).color,
                        getComputedStyle(body).backgroundColor,
                    ]);
                expect(contrast(ink!, paper!)).toBeGreaterThan(7);
                expect(asked).toEqual([]);
                expect(said).toEqual([]);
                await context.close();
            }
        },
    );
});

function elementsOf(html: string): Element[] {
    return parse(html).childNodes.flatMap((node) => (isElement(node) ? [node, ...below(node)] : []));
}

function below(element: Element): Element[] {
    return element.childNodes.filter(isElement).flatMap((child) => [child, ...below(child)]);
}

function isElement(node: Node): node is Element {
    return 'tagName' in node;
}

function attributeOf({ attrs }: Element, name: string): string | undefined {
    return attrs.find((each) => each.name === name)?.value;
}

function textOf(element: Element): string {
    return element.childNodes
        .map((node) => (isElement(node) ? textOf(node) : 'value' in node ? node.value : ''))
        .join(' ')
        .replace(/\s+/g, ' ')
        .trim();
}

/** WCAG 2.2, contrast ratio and relative luminance. */
function contrast(a: string, b: string): number {
    const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
    return (light + 0.05) / (dark + 0.05);
}

function luminance(rgb: string): number {
    const [r, g, b] = rgb.match(/\d+/g)!.map((part) => {
        const share = Number(part) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
