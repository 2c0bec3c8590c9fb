import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';
import { caretOf, closeAll, diagramOf } from './diagram-page.ts';

/** The diagram beside the text. */
export function testDiagram(bench: () => Workbench): void {
    const diagram = diagramOf(bench);
    /** How far an element is from where it was, px. */
    const wayFrom = async (id: string, was: Awaited<ReturnType<typeof diagram.placeOf>>) => {
        const is = await diagram.placeOf(id);
        return is && was ? Math.hypot(is.x - was.x, is.y - was.y) : Number.POSITIVE_INFINITY;
    };
    const onScreen = (id: string) => expect.poll(() => diagram.placeOf(id), soon);

    test('with no plan open, it says what to do', async () => {
        await closeAll(bench());
        await bench().command('Layback: Open the Diagram');
        await expect.poll(() => diagram.words(), soon).toMatch(/^No plan is open\. Open a \.spread file/);
        await diagram.view().getByRole('button', { name: 'New Plan…' }).waitFor();
        await bench().screenshot('diagram-empty');
    });

    test('it draws the plan at the caret, and the next one when the caret goes there', async () => {
        await bench().openFile('plans/blue-marlin.spread');
        // The file has come to lie over the panel: asked for again, it goes beside.
        await bench().command('Layback: Open the Diagram');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-settled');
        await bench().select('spread bank-rough');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-rough');
    });

    test('the line above a plan opens that plan, and it stays until the caret moves', async () => {
        await bench().select('spread bank-rough');
        await bench().press('ArrowDown');
        await bench().select('note "gloves');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-rough');
        await bench().clickLens('Open the diagram', 'spread bank-afternoon');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-afternoon');
        await bench().select('lure tar-barrel');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-settled');
    });

    test('the lure that the caret is at is marked, in the picture and in the table', async () => {
        await expect.poll(() => diagram.marked(), soon).toEqual(['starboard long corner']);
        expect(await diagram.rings()).toBe(2);
        await bench().select('port short corner {');
        await expect.poll(() => diagram.marked(), soon).toEqual(['port short corner']);
        expect(await diagram.view().locator('tr.marked').getAttribute('data-position')).toBe(
            'port short corner',
        );
        await bench().select('crew 4');
        await expect.poll(() => diagram.marked(), soon).toEqual([]);
    });

    test('a click on a lure leads to where the plan says it, not to what it is', async () => {
        await diagram.view().locator('g[data-id="lure:port long rigger"]').click();
        await expect.poll(() => bench().tabs(), soon).not.toContain('lures.spread');
        await expect.poll(() => diagram.marked(), soon).toEqual(['port long rigger']);
        await bench().type('x');
        await expect.poll(() => bench().text(), soon).toContain('lure xold-rope');
        await bench().undo();
        await expect.poll(() => bench().dirty(), soon).toBe(false);
    });

    test('one can walk through it by keyboard, and go to the text from there', async () => {
        await bench().select('crew 4');
        await diagram.view().locator('#zoom-in').focus();
        await bench().page.keyboard.press('Tab');
        const active = () =>
            diagram
                .view()
                .locator(':focus')
                .evaluate((e) => `${e.getAttribute('role')} ${e.getAttribute('aria-label')}`);
        await expect.poll(active, soon).toMatch(/^button .+ astern/);
        const first = await active();
        // With the bow up these go from part to part; the others would let the lure back or take it in.
        await bench().page.keyboard.press('ArrowRight');
        await expect.poll(active, soon).not.toBe(first);
        await bench().page.keyboard.press('ArrowLeft');
        await expect.poll(active, soon).toBe(first);
        await bench().page.keyboard.press('Enter');
        await expect.poll(() => diagram.marked(), soon).toHaveLength(1);
        expect(first).toContain((await diagram.marked())[0]!.slice(1));
    });

    test('an edit moves the lure, and nothing else: neither zoom nor place', async () => {
        await diagram.view().locator('#zoom-in').click();
        await diagram.view().locator('#zoom-in').click();
        const sight = await diagram.sight();
        const hull = await diagram.placeOf('hull');
        await bench().select('back wave 3');
        await bench().type('back 26 m');
        await expect.poll(() => diagram.label('starboard long corner'), soon).toContain('26 m');
        expect(await diagram.sight()).toEqual(sight);
        await expect.poll(() => wayFrom('hull', hull), soon).toBeLessThan(2);
    });

    test('a longer spread is drawn at another scale, and the boat stays where she is on the screen', async () => {
        const [, , width] = await diagram.sight();
        const hull = await diagram.placeOf('hull');
        await bench().select('back wave 7');
        await bench().type('back 95 m');
        await expect.poll(() => diagram.label('shotgun'), soon).toContain('95 m');
        await expect.poll(async () => (await diagram.sight())[2], soon).not.toBe(width);
        await expect.poll(() => wayFrom('hull', hull), soon).toBeLessThan(4);
        await bench().select('back 95 m');
        await bench().type('back wave 7');
        await expect.poll(() => diagram.label('shotgun'), soon).toContain('wave 7');
    });

    test('a text that cannot be read keeps the last picture, says so, and comes back', async () => {
        const sight = await diagram.sight();
        await bench().select('back 26 m');
        await bench().press('End');
        await bench().type(' {');
        await expect.poll(() => diagram.banner(), soon).toMatch(/^Not the text as it stands\. ./);
        expect(await diagram.label('starboard long corner')).toContain('26 m');
        expect(await diagram.sight()).toEqual(sight);
        await bench().screenshot('diagram-last-good');
        await bench().undo();
        await expect.poll(() => diagram.banner(), soon).toBe('');
        expect(await diagram.plan()).toBe('bank-settled');
    });

    test('pinned, it stays with its plan; then it follows again', async () => {
        await diagram.view().locator('#zoom-fit').click();
        await bench().command('Layback: Pin the Diagram');
        // A file opens where one looks last: the text, not the panel.
        await bench().select('lure tar-barrel');
        await expect.poll(() => bench().tabs(), soon).toContain('Settled day on the bank (pinned)');
        await expect.poll(() => diagram.marked(), soon).toEqual(['starboard long corner']);
        await bench().openFile('plans/sailfish-on-bait.spread');
        await expect.poll(() => diagram.marked(), soon).toEqual([]);
        // What is asked later is answered later: by now a picture would have come.
        await bench().hoverOver('slow-baits');
        expect(await diagram.plan()).toBe('bank-settled');
        await bench().command('Layback: Follow the Plan at the Caret');
        await expect.poll(() => diagram.plan(), soon).toBe('slow-baits');
    });

    test('it shows the side and the table too, and the table leads to the text', async () => {
        await bench().openFile('plans/blue-marlin.spread');
        await bench().select('crew 4');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-settled');
        await diagram.view().getByRole('radio', { name: 'From the side' }).click();
        await expect
            .poll(() => diagram.view().locator('#stage > svg').getAttribute('data-view'), soon)
            .toBe('side');
        await bench().screenshot('diagram-side');
        await diagram.view().getByRole('button', { name: 'Table' }).click();
        expect(await diagram.view().locator('#stage').isVisible()).toBe(false);
        const heads = diagram.view().getByRole('columnheader');
        expect(await heads.allInnerTexts()).toEqual(expect.arrayContaining(['Position', 'Astern', 'Wave']));
        await bench().screenshot('diagram-table');
        await diagram.view().getByRole('button', { name: 'Starboard short rigger' }).click();
        await expect.poll(() => diagram.marked(), soon).toEqual(['starboard short rigger']);
        await diagram.view().getByRole('button', { name: 'Table' }).click();
        await diagram.view().getByRole('radio', { name: 'From above' }).click();
        await expect
            .poll(() => diagram.view().locator('#stage > svg').getAttribute('data-bow'), soon)
            .toBe('up');
    });

    test('it survives a reload, zoom and all, while the text that it shows cannot be read', async () => {
        await diagram.view().locator('#zoom-in').click();
        const eye = await diagram.eye();
        // What the page has to say arrives in its order: with the click, the zoom before it is known.
        await diagram.view().locator('g[data-id="lure:starboard long corner"]').click();
        await expect.poll(() => diagram.marked(), soon).toEqual(['starboard long corner']);
        await bench().select('back 26 m');
        await bench().press('End');
        await bench().type(' {');
        await expect.poll(() => diagram.banner(), soon).not.toBe('');
        await bench().reload();
        await expect.poll(() => diagram.plan(), soon).toBe('bank-settled');
        await expect.poll(() => diagram.banner(), soon).toMatch(/^Not the text as it stands\./);
        const [x = 0, y = 0, pixel] = await diagram.eye();
        expect(Math.hypot(x - eye[0]!, y - eye[1]!)).toBeLessThan(5);
        expect(pixel).toBe(eye[2]);
        expect(await diagram.label('starboard long corner')).toContain('26 m');
        await bench().select('back 26 m');
        await bench().press('Shift+End');
        await bench().type('back wave 3');
        await expect.poll(() => diagram.banner(), soon).toBe('');
        await expect.poll(() => diagram.label('starboard long corner'), soon).toContain('wave 3');
        await diagram.view().locator('#zoom-fit').click();
        await bench().save();
    });

    test('its words can be read in any room, and one keeps looking at the same place', async () => {
        const name = () =>
            diagram
                .view()
                .locator('g[data-id="note:port short corner"] text')
                .first()
                .evaluate((text) => text.getBoundingClientRect().height);
        const { page } = bench();
        expect(await name()).toBeGreaterThan(11);
        await diagram.view().locator('#zoom-in').click();
        const centre = async (id: string) => {
            const box = await diagram.view().locator(`g[data-id="${id}"]`).boundingBox();
            const stage = await diagram.view().locator('#stage').boundingBox();
            return box && stage && Math.round(box.x + box.width / 2 - stage.x - stage.width / 2);
        };
        const across = await centre('hull');
        const drawn = await diagram.sheet();
        await page.setViewportSize({ width: 760, height: 700 });
        await expect.poll(() => diagram.sheet(), soon).not.toBe(drawn);
        await expect.poll(() => centre('hull'), soon).toSatisfy((at: number) => Math.abs(at - across!) < 3);
        await diagram.view().locator('#zoom-fit').click();
        // As small as it gets, and still there.
        expect(await name()).toBeGreaterThan(5);
        await bench().screenshot('diagram-narrow');
        await page.setViewportSize({ width: 1280, height: 800 });
        await expect.poll(name, soon).toBeGreaterThan(11);
    });

    test('it takes the inks of the theme', async () => {
        await bench().select('lure tar-barrel');
        const papers: Record<string, string | null> = {};
        for (const theme of ['dark', 'hc', 'hc-light', 'light'] as const) {
            const before = await diagram.paper();
            await bench().theme(theme);
            if (theme !== 'light') await expect.poll(() => diagram.paper(), soon).not.toBe(before);
            await onScreen('lure:port long rigger').not.toBe(null);
            papers[theme] = await diagram.paper();
            await bench().screenshot(`diagram-${theme}`);
        }
        expect(papers).toEqual({ dark: '#11161b', hc: '#000000', 'hc-light': '#ffffff', light: '#ffffff' });
        expect(await caretOf(bench())).toMatch(/^Ln \d+/);
    });

    test('nothing in it was held back by its own policy', () => {
        expect(bench().complaints()).toEqual([]);
    });
}
