import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { layOut } from '../../extension/package.mjs';
import { openWorkbench, type Workbench } from './driver.ts';
import { testAccessibility } from './extension/accessibility.ts';
import { testCommands } from './extension/commands.ts';
import { testDeckCard } from './extension/deck-card.ts';
import { testDiagram } from './extension/diagram.ts';
import { notes, testFences } from './extension/fences.ts';
import { testFirstPlan } from './extension/first-plan.ts';
import { testTexts } from './extension/texts.ts';
import { project } from './project.ts';

/** Every file below a folder, by its path there. */
function filesIn(folder: string, below = ''): Record<string, string> {
    return Object.fromEntries(
        readdirSync(path.join(project, folder), { recursive: true, encoding: 'utf8' })
            .filter((name) => /\.(spread|md)$/.test(name))
            .map((name) => [`${below}${name}`, readFileSync(path.join(project, folder, name), 'utf8')]),
    );
}

/** The example team, and beside it a team of our own that the tests know every word of. */
function workspace(): Record<string, string> {
    const { 'first.spread': first, 'README.md': _, ...shelves } = filesIn('language/src/command/starter');
    return {
        ...filesIn('examples'),
        ...Object.fromEntries(Object.entries(shelves).map(([name, text]) => [`ours/${name}`, text])),
        'ours/rules.spread': shelves['rules.spread']!.replace('"Our rules"', '"Own rules"'),
        'ours/plans/first.spread': first!,
        'notes/day.md': notes,
    };
}

// As it is installed from its package, so that what the manifest declares is enforced: the least VS Code, and that a
// folder that nobody trusts is no hindrance.
describe('the extension, installed, in a folder that is not trusted', { timeout: 60_000 }, () => {
    let bench: Workbench;
    const installed = mkdtempSync(path.join(tmpdir(), 'layback-installed-'));
    beforeAll(async () => {
        layOut(installed);
        bench = await openWorkbench({
            workspace: workspace(),
            extension: { folder: installed },
            installed: true,
            trusted: false,
            // A test says every key: what is offered must not take one, and no brace comes by itself.
            settings: { 'editor.acceptSuggestionOnEnter': 'off', 'editor.autoClosingBrackets': 'never' },
        });
    }, 90_000);
    afterAll(async () => {
        await bench?.close();
        rmSync(installed, { recursive: true });
    });

    describe('a first plan', () => testFirstPlan(() => bench));
    describe('texts', () => testTexts(() => bench));
    describe('the diagram', () => testDiagram(() => bench));
    describe('the deck card', () => testDeckCard(() => bench));
    describe('for everybody', () => testAccessibility(() => bench));
    describe('notes', () => testFences(() => bench));
    describe('commands', () => testCommands(() => bench));
});

test('where the editor is older than what the manifest asks for, the extension does not run', async () => {
    const installed = mkdtempSync(path.join(tmpdir(), 'layback-installed-'));
    layOut(installed);
    const manifest = path.join(installed, 'package.json');
    const { engines, ...rest } = JSON.parse(readFileSync(manifest, 'utf8'));
    // The editor of these tests is the very least that the manifest asks for.
    expect(engines.vscode).toBe('^1.91.0');
    writeFileSync(manifest, JSON.stringify({ ...rest, engines: { ...engines, vscode: '^1.92.0' } }));
    const held = await openWorkbench({
        workspace: { 'plan.spread': 'spread' },
        extension: { folder: installed },
        installed: true,
    });
    try {
        await held.openFile('plan.spread');
        await held.page.getByRole('button', { name: 'Plain Text' }).waitFor();
        await expect(held.command('Layback: Open the Diagram')).rejects.toThrow(/not offered/);
    } finally {
        await held.close();
        rmSync(installed, { recursive: true });
    }
}, 90_000);
