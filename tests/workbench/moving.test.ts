import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openWorkbench, soon, type Workbench } from './driver.ts';
import { diagramOf } from './extension/diagram-page.ts';
import { project } from './project.ts';

describe('a lure taken by hand', { timeout: 60_000 }, () => {
    let bench: Workbench;
    const diagram = diagramOf(() => bench);
    beforeAll(async () => {
        bench = await openWorkbench({ workspace: path.join(project, 'examples') });
    }, 90_000);
    afterAll(() => bench?.close());

    const lure = (position: string) => diagram.view().locator(`g[data-id="lure:${position}"]`);
    /** Lets a lure back by so many metres, and keeps hold of it. */
    const drag = async (position: string, metres: number, steps = 12) => {
        const way = metres * (await diagram.metre());
        const box = (await lure(position).boundingBox())!;
        const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
        await bench.page.mouse.move(x, y);
        await bench.page.mouse.down();
        await bench.page.mouse.move(x, y + way, { steps });
    };
    /** From one crest to the next at the plan's speed, m. */
    const oneWave = 10.9;
    const trial = () => diagram.view().locator('#trial');
    /** What the text says of how far back a lure runs, with whatever the editor adds to it. */
    const written = async (block: string) => {
        const lines = (await bench.text()).split('\n');
        const from = lines.findIndex((line) => line.includes(`${block} {`));
        return lines
            .slice(from)
            .find((line) => /^\s+back /.test(line))
            ?.trim();
    };
    const focused = () => diagram.view().locator(':focus').getAttribute('data-id');

    test('there is a diagram to move it in', async () => {
        await bench.openFile('plans/blue-marlin.spread');
        await bench.select('port long rigger {');
        await bench.command('Layback: Open the Diagram');
        await expect.poll(() => diagram.plan(), soon).toBe('bank-settled');
        await expect.poll(() => diagram.marked(), soon).toEqual(['port long rigger']);
    });

    test('it goes from face to face, says what would follow, and is written as one step', async () => {
        const before = (await written('port long rigger'))!;
        expect(before).toContain('back wave 5');
        await drag('port long rigger', oneWave);
        await expect
            .poll(() => trial().textContent(), soon)
            .toMatch(/^Port long rigger: back wave 6, 5\d\.\d m/);
        await expect.poll(() => diagram.label('port long rigger'), soon).toContain('wave 6');
        await expect.poll(() => trial().textContent(), soon).toContain('Turns cleanly down to');
        await bench.screenshot('moving');
        expect(await written('port long rigger')).toBe(before);
        await bench.page.mouse.up();
        await expect.poll(() => written('port long rigger'), soon).toContain('back wave 6');
        await expect.poll(() => trial().isVisible(), soon).toBe(false);
        await bench.undo();
        await expect.poll(() => written('port long rigger'), soon).toBe(before);
        await expect.poll(() => diagram.label('port long rigger'), soon).toContain('wave 5');
    });

    test('it is given up with Escape, and where it is put back nothing is written', async () => {
        await drag('port long rigger', oneWave);
        await expect.poll(() => diagram.label('port long rigger'), soon).toContain('wave 6');
        await bench.page.keyboard.press('Escape');
        await expect.poll(() => diagram.label('port long rigger'), soon).toContain('wave 5');
        expect(await trial().isVisible()).toBe(false);
        await bench.page.mouse.up();
        expect(await bench.dirty()).toBe(false);
    });

    test('arrow keys take it in and let it back; Enter writes it', async () => {
        await bench.select('starboard long corner {');
        await lure('starboard long corner').focus();
        await bench.page.keyboard.press('ArrowDown');
        await expect.poll(() => trial().textContent(), soon).toMatch(/^Starboard long corner: back wave 4/);
        expect(await focused()).toBe('lure:starboard long corner');
        await bench.page.keyboard.press('ArrowDown');
        await expect.poll(() => trial().textContent(), soon).toMatch(/^Starboard long corner: back wave 5/);
        await bench.page.keyboard.press('ArrowUp');
        await expect.poll(() => trial().textContent(), soon).toMatch(/^Starboard long corner: back wave 4/);
        await bench.screenshot('moving-keys');
        await bench.page.keyboard.press('Enter');
        await expect.poll(() => written('starboard long corner'), soon).toContain('back wave 4');
        expect(await focused()).toBe('lure:starboard long corner');
        await bench.undo();
        await expect.poll(() => written('starboard long corner'), soon).toContain('back wave 3');
        await expect.poll(() => diagram.label('starboard long corner'), soon).toContain('wave 3');
    });

    const choose = async (position: string, item: string) => {
        await lure(position).click({ button: 'right' });
        const offered = bench.page.getByRole('menuitem', { name: item });
        // For a moment after it opened a menu takes no click, lest the one that opened it counts.
        for (let tries = 0; tries < 10 && (tries === 0 || (await offered.isVisible())); tries++) {
            await offered.click();
            await offered.waitFor({ state: 'hidden', timeout: 500 }).catch(() => undefined);
        }
    };

    test('a right click offers what fits: one wave in or out, the other side, the text', async () => {
        await bench.select('port long rigger {');
        await choose('port long rigger', 'Let Back One Wave');
        await expect.poll(() => written('port long rigger'), soon).toContain('back wave 6');
        await expect.poll(() => diagram.label('port long rigger'), soon).toContain('wave 6');
        await choose('port long rigger', 'Take In One Wave');
        await expect.poll(() => written('port long rigger'), soon).toContain('back wave 5');
        await expect.poll(() => diagram.label('port long rigger'), soon).toContain('wave 5');
        await choose('starboard long corner', 'Swap Sides (Orders and Tow Points Stay)');
        await expect.poll(() => bench.text(), soon).toContain('port long corner {');
        await lure('port long corner').waitFor();
        await bench.screenshot('moving-swapped');
        await bench.undo();
        await lure('starboard long corner').waitFor();
        await choose('shotgun', 'Go to the Text');
        await expect.poll(() => diagram.marked(), soon).toEqual(['shotgun']);
    });

    test('nothing in it was held back by its own policy', () => {
        expect(bench.complaints()).toEqual([]);
    });
});
