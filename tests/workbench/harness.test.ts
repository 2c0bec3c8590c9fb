import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openWorkbench, soon, type Workbench } from './driver.ts';
import { fixture } from './fixture.ts';

describe('a workbench with an extension', { timeout: 60_000 }, () => {
    let bench: Workbench;
    beforeAll(async () => {
        const tally = 'scad\nshark\nsardin\nscad\n';
        bench = await openWorkbench({
            workspace: { 'a.tally': tally, 'trips/b.tally': tally },
            extension: fixture(),
        });
    }, 90_000);
    afterAll(() => bench?.close());

    test('opens a file, and says how long everything took', async () => {
        const before = performance.now();
        await bench.openFile('a.tally');
        const opened = performance.now() - before;
        expect(await bench.text()).toBe('scad\nshark\nsardin\nscad\n');
        const [browser, workbench] = [bench.times.browser, bench.times.workbench].map(Math.round);
        console.log(`browser ${browser} ms, workbench ${workbench} ms, file ${Math.round(opened)} ms`);
    });

    test('underlines what the extension finds, and lists it', async () => {
        const wanted = [
            { severity: 'error', text: 'shark' },
            { severity: 'warning', text: 'sardin' },
        ];
        await expect.poll(() => bench.squiggles(), soon).toEqual(wanted);
        expect(await bench.problems()).toEqual([
            {
                severity: 'error',
                message: 'A shark is not bait.',
                source: 'tally',
                code: 'no-shark',
                line: 2,
                column: 1,
            },
            {
                severity: 'warning',
                message: 'Did you mean sardine?',
                source: 'tally',
                code: 'spelling',
                line: 3,
                column: 1,
            },
        ]);
    });

    test('lists more problems than fit in sight', async () => {
        await bench.openFile('trips/b.tally');
        await bench.press('ControlOrMeta+End');
        await bench.type('shark\n'.repeat(40));
        await expect.poll(async () => (await bench.problems()).length, soon).toBe(2 + 42);
        await bench.press('ControlOrMeta+a');
        await bench.type('scad');
        await bench.save();
        await expect.poll(async () => (await bench.problems()).length, soon).toBe(2);
    });

    test('hovers, completes, fixes and renames', async () => {
        await bench.openFile('a.tally');
        expect(await bench.hoverOver('shark')).toMatch(/A shark is not bait.*shark is counted once/s);
        expect(await bench.hoverOver('scad', 2)).toMatch(/^scad is counted once/);

        await bench.select('sardin');
        expect(await bench.quickFixes()).toEqual(['Write sardine']);
        await bench.quickFix('Write sardine');
        await expect.poll(() => bench.text(), soon).toBe('scad\nshark\nsardine\nscad\n');

        await bench.select('scad', 2);
        await bench.rename('herring');
        await expect.poll(() => bench.text(), soon).toBe('herring\nshark\nsardine\nherring\n');

        await bench.press('ControlOrMeta+End');
        expect(await bench.complete()).toEqual(['mackerel', 'sardine', 'scad']);
        await bench.accept('scad');
        await expect.poll(() => bench.text(), soon).toBe('herring\nshark\nsardine\nherring\nscad');
    });

    test('saves to the disk, and not before', async () => {
        const file = path.join(bench.folder, 'a.tally');
        expect(await bench.dirty()).toBe(true);
        expect(await readFile(file, 'utf8')).toBe('scad\nshark\nsardin\nscad\n');
        await bench.save();
        expect(await readFile(file, 'utf8')).toBe('herring\nshark\nsardine\nherring\nscad');
        expect(await bench.dirty()).toBe(false);
    });

    test('sees a change that is made outside the editor', async () => {
        await writeFile(path.join(bench.folder, 'a.tally'), 'mackerel\n');
        await expect.poll(() => bench.text(), soon).toBe('mackerel\n');
        await writeFile(path.join(bench.folder, 'late.tally'), 'scad\n');
        await expect
            .poll(() => bench.page.locator('.explorer-folders-view').textContent(), soon)
            .toContain('late.tally');
    });

    test('shows a web view whose policy holds, and whose button edits the document', async () => {
        await bench.command('Tally: Show Count');
        const view = bench.webview();
        await expect.poll(() => view.locator('#count').textContent(), soon).toBe('1 counted');
        expect(await view.locator('#inline').textContent()).toBe('inline scripts are held back');
        expect(bench.complaints().join()).toMatch(/Content Security Policy.*script-src/);

        await view.getByRole('button', { name: 'Add a scad' }).click();
        await expect.poll(() => bench.text(), soon).toBe('mackerel\nscad\n');
        await expect.poll(() => view.locator('#count').textContent(), soon).toBe('2 counted');
        await bench.undo();
        await expect.poll(() => bench.text(), soon).toBe('mackerel\n');
        await expect.poll(() => view.locator('#count').textContent(), soon).toBe('1 counted');
    });

    test('takes pictures, in every theme', async () => {
        const pictures: string[] = [];
        for (const theme of ['dark', 'hc', 'hc-light', 'light'] as const) {
            await bench.theme(theme);
            const file = await bench.screenshot(`harness-${theme}`);
            const image = await readFile(file);
            expect(image.subarray(1, 4).toString()).toBe('PNG');
            expect([image.readUInt32BE(16), image.readUInt32BE(20)]).toEqual([1280, 800]);
            pictures.push(image.toString('base64'));
        }
        expect(new Set(pictures).size).toBe(4);
    });

    test('comes back as it was left when the page is loaded anew', async () => {
        await bench.openFile('trips/b.tally');
        await bench.press('ControlOrMeta+Home');
        await bench.type('sardin ');
        await bench.reload();
        await expect.poll(() => bench.text(), soon).toBe('sardin scad');
        expect(await bench.dirty()).toBe(true);
        expect(await bench.tabs()).toContain('a.tally');
        await expect.poll(() => bench.squiggles(), soon).toEqual([{ severity: 'warning', text: 'sardin' }]);
        await bench.select('sardin ');
        await bench.press('Delete');
        await expect.poll(() => bench.problems(), soon).toEqual([]);
    });

    test('says what cannot be done, and takes a picture of it', async () => {
        await expect(bench.command('Tally: Sing')).rejects.toThrow(
            /^run "Tally: Sing": "Tally: Sing" is not offered, but: .*\n.*see .*failed-run-Tally-Sing-\.png$/s,
        );
        await bench.page.keyboard.press('Escape');
        await bench.openFile('a.tally');
        await expect(bench.select('whale')).rejects.toThrow(/select "whale": it does not stand in the file/);
    });
});

describe('modes', { timeout: 90_000 }, () => {
    const workspace = { 'a.tally': 'shark\n' };

    test('a workspace that is not trusted opens restricted, in the theme and with the settings asked for', async () => {
        const settings = { 'editor.lineNumbers': 'off' };
        // Only what could run on a desktop too is held to what it declares.
        const extension = fixture({
            main: './extension.js',
            capabilities: { untrustedWorkspaces: { supported: false, description: 'It asks for trust.' } },
        });
        const options = {
            workspace,
            extension,
            installed: true,
            trusted: false,
            theme: 'hc',
            settings,
        } as const;
        const bench = await openWorkbench(options);
        try {
            await bench.openFile('a.tally');
            await bench.page
                .getByRole('button', { name: /Restricted Mode/ })
                .first()
                .waitFor();
            await bench.page.getByRole('button', { name: 'Plain Text' }).waitFor();
            expect(await bench.squiggles()).toEqual([]);
            expect(await bench.page.locator('.monaco-workbench.hc-black').count()).toBe(1);
            expect(await bench.page.locator('.line-numbers').count()).toBe(0);
            await bench.screenshot('harness-restricted');
        } finally {
            await bench.close();
        }
    });
});
