import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';
import { project } from '../project.ts';
import { diagramOf } from './diagram-page.ts';

const starter = path.join(project, 'language/src/command/starter');

/** From nothing to a first clean plan, along the walkthrough. */
export function testFirstPlan(bench: () => Workbench): void {
    const diagram = diagramOf(bench);
    const input = () => bench().page.locator('.quick-input-widget:visible input.input');
    const steps = () => bench().page.locator('.getting-started-step');
    const done = () =>
        bench()
            .page.locator(
                '.getting-started-step:has(.codicon-getting-started-step-checked.complete) .step-title',
            )
            .allInnerTexts();

    test('the walkthrough opens', async () => {
        await bench().command('Welcome: Open Walkthrough...');
        await bench().choose('Plan a Spread with Layback');
        await steps().first().waitFor();
        expect(await steps().locator('.step-title').allInnerTexts()).toEqual([
            'Start a folder for the team',
            'Measure the boat',
            'See the plan from above',
            'Read what was found',
            'Write a plan of your own',
            'Save your first clean plan',
        ]);
        // The page beside the steps, which shows what a plan looks like, in the language's own colours.
        const shown = bench().webview().locator('code', { hasText: 'port short corner {' }).locator('span');
        await shown.first().waitFor();
        await bench().screenshot('walkthrough');
    });

    test('a team folder is started, the same as the command line starts', async () => {
        await bench().page.getByRole('button', { name: 'New Team Folder…', exact: true }).click();
        await input().waitFor();
        await input().fill('../elsewhere');
        await expect
            .poll(() => bench().page.locator('.quick-input-message').allInnerTexts(), soon)
            .toEqual([expect.stringMatching(/^Name a folder inside this one/)]);
        await bench().answer('heron');
        await expect.poll(() => bench().tabs(), soon).toContain('first.spread');
        for (const [there, here] of [
            ['boat.spread', 'boat.spread'],
            ['tackle.spread', 'tackle.spread'],
            ['README.md', 'README.md'],
            ['plans/first.spread', 'first.spread'],
        ] as const) {
            const written = readFileSync(path.join(bench().folder, 'heron', there), 'utf8');
            expect(written).toBe(readFileSync(path.join(starter, here), 'utf8'));
        }
        await bench().command('Notifications: Clear All Notifications');
    });

    test('a plan is written from nothing, drawn while it grows, and saved clean', async () => {
        await bench().command('Layback: Open the Diagram');
        await expect.poll(() => diagram.plan(), soon).toBe('first');
        await bench().openFile('heron/plans/first.spread');
        await bench().command('Layback: New Plan…');
        await bench().answer('Saturday, early');
        await expect.poll(() => bench().tabs(), soon).toContain('saturday-early.spread');
        await expect.poll(() => bench().text(), soon).toContain('spread saturday-early "Saturday, early" {');
        await expect.poll(() => diagram.plan(), soon).toBe('saturday-early');

        await bench().type('Two on deck.');
        await bench().press('Escape');
        const write = (...lines: string[]) => bench().type(lines.map((line) => `${line}\n`).join(''));
        await bench().select('    boat ');
        await write('    boat heron', 'method our-strike', 'date 2026-03-14', 'crew 2');
        await bench().press('Delete');
        await bench().select('    target ');
        await bench().type('    target mahi');
        await bench().press('Escape');
        await bench().select('sea 0.5 m');
        await write('sea 0.4 m', 'port short corner {', 'outfit one', 'lure bramble', 'back wave 2', '}');
        await expect.poll(() => diagram.label('port short corner'), soon).toContain('wave 2');
        await write('starboard long corner {');
        await bench().type('outfit ');
        expect(await bench().complete()).not.toContain('one');
        await bench().press('Escape');
        await write('two', 'lure thistle', 'back wave 3', '}');
        await expect.poll(() => bench().text(), soon).toMatch(/outfit two\n +lure thistle.*\n +back wave 3/);
        await expect.poll(() => diagram.label('starboard long corner'), soon).toContain('wave 3');
        await bench().command('Format Document');
        await expect.poll(() => bench().text(), soon).toMatch(/long corner { outfit two {2}lure thistle/);
        await expect.poll(() => bench().squiggles(), soon).toEqual([]);
        await bench().save();
        await bench().page.getByRole('button', { name: 'Nothing was found in this file.' }).waitFor();
        await bench().screenshot('first-plan');
    });

    test('with that, the walkthrough is through', async () => {
        await bench().command('Welcome: Open Walkthrough...');
        await bench().choose('Plan a Spread with Layback');
        await steps().first().waitFor();
        await expect.poll(done, soon).toContain('Save your first clean plan');
        expect(await done()).toEqual(
            expect.arrayContaining(['Start a folder for the team', 'See the plan from above']),
        );
    });
}
