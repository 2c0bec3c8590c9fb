import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openWorkbench, soon, type Workbench } from './driver.ts';
import { project } from './project.ts';

describe('a .spread file in the editor', { timeout: 60_000 }, () => {
    let bench: Workbench;
    beforeAll(async () => {
        // What is typed here shows what the editor does by itself: no list of suggestions takes a key away from it.
        bench = await openWorkbench({
            workspace: path.join(project, 'examples'),
            settings: {
                'editor.quickSuggestions': { other: 'off', comments: 'off', strings: 'off' },
                'editor.suggestOnTriggerCharacters': false,
            },
        });
    }, 90_000);
    afterAll(() => bench?.close());

    test('is known by its ending, has its own icon, and is coloured before anything has been computed', async () => {
        await bench.openFile('plans/blue-marlin.spread');
        await bench.page.getByRole('button', { name: 'Layback', exact: true }).waitFor();
        const colours = () =>
            bench.page
                .locator('.view-line span span')
                .evaluateAll((spans) => new Set(spans.map((span) => getComputedStyle(span).color)).size);
        await expect.poll(colours, soon).toBeGreaterThan(5);
        const icon = await bench.page
            .locator('.tab.active .monaco-icon-label')
            .evaluate((label) => getComputedStyle(label, '::before').backgroundImage);
        expect(icon).toContain('/extension/extension/media/spread-light.svg');
        await bench.screenshot('language-light');
        await bench.theme('dark');
        await bench.screenshot('language-dark');
        await bench.theme('hc');
        await bench.screenshot('language-hc');
        await bench.theme('light');
    });

    test('helps with brackets, indentation and comments', async () => {
        await writeFile(path.join(bench.folder, 'weekend.spread'), '');
        await bench.openFile('weekend.spread');
        await bench.type('spread weekend {\nport short corner {\nlure penny\n');
        await bench.press('ArrowDown');
        await bench.press('End');
        await bench.type('\nsea 1 m');
        const written = [
            'spread weekend {',
            '    port short corner {',
            '        lure penny',
            '',
            '    }',
            '    sea 1 m',
            '}',
        ];
        await expect.poll(() => bench.text(), soon).toBe(written.join('\n'));
        await bench.press('ControlOrMeta+/');
        await expect.poll(() => bench.text(), soon).toContain('    // sea 1 m');
        await bench.press('ControlOrMeta+Home');
        await bench.type('/** For two.\nOr three.');
        await expect.poll(() => bench.text(), soon).toMatch(/^\/\*\* For two\.\n \* Or three\.( \*\/)?/);
    });

    test('takes a hyphened name as one word', async () => {
        await bench.openFile('tackle.spread');
        await bench.select('lever-24');
        await bench.press('ArrowLeft');
        // Selects the word at the cursor.
        await bench.press('ControlOrMeta+d');
        await bench.page.getByRole('button', { name: `(${'lever-24'.length} selected)` }).waitFor();
    });
});
