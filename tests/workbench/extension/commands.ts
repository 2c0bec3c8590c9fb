import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';

/** What the commands do. */
export function testCommands(bench: () => Workbench): void {
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
