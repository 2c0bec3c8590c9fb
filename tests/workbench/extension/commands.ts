import { readdirSync, readFileSync } from 'node:fs';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';
import { closeAll, diagramOf } from './diagram-page.ts';

/** What the commands do. */
export function testCommands(bench: () => Workbench): void {
    const diagram = diagramOf(bench);
    const told = () => expect.poll(async () => (await bench().notifications()).join('\n'), soon);
    const onDisk = (file: string) => readFileSync(path.join(bench().folder, file));

    test('the workspace is checked, and the result is said', async () => {
        await bench().command('Layback: Check the Workspace');
        // Turns are judged too, which takes longest.
        await expect
            .poll(async () => (await bench().notifications()).join(), { ...soon, timeout: 50_000 })
            .toMatch(/\d+ errors(, \d+ warnings)? and \d+ (warnings|hints?) in 2 of \d+ files\./);
        await bench().command('Notifications: Clear All Notifications');
    });

    test('a finding is waived, with the reason that was asked for', async () => {
        await bench().openFile('plans/what-findings-look-like.spread');
        await bench().select('back 19 m');
        await bench().command('Layback: Waive With a Reason…');
        await bench().answer('tried "as it is" last year');
        await bench().select('waive wave-face');
        await expect
            .poll(() => bench().text(), soon)
            .toContain('waive wave-face on port short corner because "tried ’as it is’ last year"');
        await bench().undo();
        await expect.poll(() => bench().dirty(), soon).toBe(false);
    });

    test('the figures of a plan open as a text that follows the plan and cannot be written to', async () => {
        await bench().openFile('ours/plans/first.spread');
        await bench().command('Layback: Show Figures');
        const lines = bench().page.locator('.monaco-editor[data-uri^="layback-figures:"] .view-line');
        const shown = async () => (await lines.allInnerTexts()).sort();
        await expect.poll(async () => (await shown()).join('\n'), soon).toMatch(/^Position\s+Tows/m);
        const before = await shown();
        await bench().openFile('ours/plans/first.spread');
        await bench().select('back wave 2');
        await bench().type('back 13.5 m');
        await expect.poll(shown, soon).not.toEqual(before);
        await bench().select('back 13.5 m');
        await bench().type('back wave 2');
        await expect.poll(shown, soon).toEqual(before);
    });

    test('what one change would do is worked out when asked, and says so once the plan is another one', async () => {
        await bench().openFile('plans/blue-marlin.spread');
        await bench().select('lure tar-barrel');
        await bench().command('Layback: Show What One Change Would Do');
        const lines = bench().page.locator('.monaco-editor[data-uri^="layback-sensitivity:"] .view-line');
        const shown = async () => (await lines.allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
        await expect.poll(shown, { ...soon, timeout: 50_000 }).toMatch(/^as it is\s+~?\d/m);
        expect(await shown()).not.toContain('has changed since');
        await bench().openFile('plans/blue-marlin.spread');
        await bench().select('lure tar-barrel');
        await bench().type('lure tar-barrel ');
        await expect.poll(shown, soon).toContain('The file has changed since this was worked out.');
        const undone = async () => {
            await bench().undo();
            return bench().dirty();
        };
        await expect.poll(undone, soon).toBe(false);
        await closeAll(bench());
    });

    test('a rule is made an error for the team, in its own rules', async () => {
        await bench().openFile('ours/plans/first.spread');
        await bench().command('Layback: Set the Severity of a Rule for the Team…');
        await bench().choose('drag-untested');
        await bench().choose('Own rules');
        await bench().choose('error');
        await told().toContain('Own rules says drag-untested { severity error } now.');
        await bench().openFile('ours/rules.spread');
        await expect.poll(() => bench().text(), soon).toMatch(/^ {4}rule drag-untested { severity error }$/m);
        await bench().undo();
        await bench().command('Notifications: Clear All Notifications');
    });

    test('the diagram is exported in light inks, as a drawing and as pixels', async () => {
        await bench().theme('dark');
        await bench().openFile('plans/fast-fish.spread');
        await bench().command('Layback: Export the Diagram as SVG…');
        await bench().saveAs(/\/plans\/[\w-]+\.svg$/);
        await told().toMatch(/Wrote plans\/.+\.svg\./);
        await bench().openFile('plans/fast-fish.spread');
        await bench().command('Layback: Export the Diagram as PNG…');
        await bench().saveAs(/\/plans\/[\w-]+\.png$/);
        await told().toMatch(/Wrote plans\/.+\.png\./);
        const written = readdirSync(path.join(bench().folder, 'plans'));
        const svg = onDisk(`plans/${written.find((name) => name.endsWith('.svg'))}`).toString();
        expect(svg).toMatch(/^<svg /);
        expect(/<rect [^>]*fill="([^"]+)"/.exec(svg)?.[1]).toBe('#ffffff');
        expect(svg).not.toMatch(/tabindex|foreignObject|var\(--/);
        const png = onDisk(`plans/${written.find((name) => name.endsWith('.png'))}`);
        expect(png.subarray(1, 4).toString()).toBe('PNG');
        // A4 upright at 150 dots to the inch.
        expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1240, 1754]);
        await bench().theme('light');
        await bench().command('Notifications: Clear All Notifications');
    });

    test('a new plan goes where the team keeps its plans, whatever is open', async () => {
        await closeAll(bench());
        await bench().command('Layback: New Plan…');
        const asked = bench().page.locator('.quick-input-message');
        await expect
            .poll(() => asked.allInnerTexts(), soon)
            .toEqual([expect.stringMatching(/^A file in plans /)]);
        await bench().answer('Blue Marlin');
        await expect
            .poll(() => asked.allInnerTexts(), soon)
            .toEqual([expect.stringMatching(/^plans\/blue-marlin\.spread is there already\./)]);
        await bench().page.keyboard.press('Escape');
    });

    test('the settings of the folder are obeyed as soon as they are written', async () => {
        await bench().openFile('plans/blue-marlin.spread');
        await bench().select('lure tar-barrel');
        await bench().command('Layback: Open the Diagram');
        const bow = () => diagram.view().locator('#stage > svg').getAttribute('data-bow');
        await expect.poll(bow, soon).toBe('up');
        const hints = async () => (await bench().text()).includes('back wave 3 = 23 m');
        await expect.poll(hints, soon).toBe(true);
        await mkdir(path.join(bench().folder, '.vscode'));
        const settings = { 'layback.inlayHints.waves': false, 'layback.diagram.bow': 'right' };
        await writeFile(path.join(bench().folder, '.vscode/settings.json'), JSON.stringify(settings));
        await expect.poll(bow, soon).toBe('right');
        await expect.poll(hints, soon).toBe(false);
        await bench().screenshot('diagram-bow-right');
        await rm(path.join(bench().folder, '.vscode'), { recursive: true });
        await expect.poll(bow, soon).toBe('up');
        await expect.poll(hints, soon).toBe(true);
        await closeAll(bench());
    });

    test('the count in the status bar leads to the problems', async () => {
        await bench().openFile('plans/what-findings-look-like.spread');
        await bench().command('View: Hide Panel');
        await bench().page.locator('.markers-panel').waitFor({ state: 'hidden' });
        await bench()
            .page.getByRole('button', { name: /^In this file: / })
            .click();
        await bench().page.locator('.markers-panel').waitFor();
    });

    test('the server is started again, and finds everything again', async () => {
        await bench().openFile('plans/what-findings-look-like.spread');
        await bench().command('Layback: Restart Language Server');
        await bench().page.getByText('The Layback language server runs again.').first().waitFor();
        await bench().select('back 19 m');
        await expect
            .poll(() => bench().squiggles(), soon)
            .toEqual(expect.arrayContaining([{ severity: 'warning', text: 'back 19 m' }]));
    });

    test('the page of a rule opens to be read', async () => {
        await bench().command('Layback: Explain a Rule…');
        await bench().choose('wave-face');
        await expect.poll(() => bench().tabs(), soon).toContain('Preview wave-face.md');
        await expect
            .poll(() => bench().webview().locator('body').allInnerTexts(), soon)
            .toEqual([expect.stringMatching(/^wave-face\b[\s\S]+Why/)]);
    });
}
