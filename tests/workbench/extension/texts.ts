import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';

/** What the margins of the example plans that went wrong on purpose say: `// ! crew, stagger`. */
function saidInMargins(folder: string, files: readonly string[]): string[] {
    return files
        .flatMap((file) =>
            readFileSync(path.join(folder, file), 'utf8')
                .split('\n')
                .flatMap((line, index) =>
                    (/\/\/ ! (.+)$/.exec(line)?.[1]?.split(', ') ?? []).map((code) => `${index + 1} ${code}`),
                ),
        )
        .sort();
}

/** The language in files: what is underlined, listed, offered, mended, renamed, laid out and found. */
export function testTexts(bench: () => Workbench): void {
    test('what is wrong in the example team is underlined, listed with its rule, and counted', async () => {
        await bench().openFile('plans/what-findings-look-like.spread');
        await expect
            .poll(() => bench().squiggles(), soon)
            .toEqual(expect.arrayContaining([{ severity: 'error', text: '9.3 m' }]));
        const said = saidInMargins(bench().folder, [
            'plans/what-findings-look-like.spread',
            'plans/what-slips-look-like.spread',
        ]);
        expect(said.length).toBeGreaterThan(15);
        await expect
            .poll(
                async () => (await bench().problems()).map(({ line, code }) => `${line} ${code}`).sort(),
                soon,
            )
            .toEqual(said);
        const problems = await bench().problems();
        expect(problems.find(({ code }) => code === 'leader-length')).toMatchObject({
            severity: 'error',
            source: 'layback',
            message: expect.stringMatching(/^The leader of Brick is 9\.3 m long/),
        });
        const status = bench().page.getByRole('button', { name: /^In this file: / });
        expect(await status.getAttribute('aria-label')).toMatch(
            /^In this file: \d errors?, \d+ warnings?\. Click to see them\.$/,
        );
        await bench().screenshot('extension-findings');
    });

    test('a quick fix is applied, and undone', async () => {
        await bench().select('back 19 m');
        const move = (await bench().quickFixes()).find((title) => title.startsWith('Move it to'));
        await bench().quickFix(move ?? 'Move it');
        await expect.poll(() => bench().text(), soon).not.toContain('back 19 m');
        await expect
            .poll(() => bench().squiggles(), soon)
            .not.toEqual(expect.arrayContaining([{ severity: 'warning', text: 'back 19 m' }]));
        await bench().undo();
        await expect.poll(() => bench().text(), soon).toContain('back 19 m');
        await expect.poll(() => bench().dirty(), soon).toBe(false);
    });

    test('a hover over a position says what was computed there, and who decided', async () => {
        await bench().openFile('ours/plans/first.spread');
        expect(await bench().hoverOver('port short corner')).toMatch(/Back\s+wave 2 = 12\.8 m .*said here/);
    });

    test('completion offers the outfit that is still free', async () => {
        await bench().select('outfit four');
        await bench().type('outfit ');
        const offered = await bench().complete();
        expect(offered).toContain('four');
        expect(offered).not.toContain('one');
        await bench().press('Escape');
        await bench().type('four');
        await expect.poll(() => bench().text(), soon).toContain('outfit four');
    });

    test('a name is renamed in every file that uses it', async () => {
        await bench().openFile('ours/tackle.spread');
        await bench().select('bramble');
        await bench().rename('bracken');
        await expect.poll(() => bench().text(), soon).toContain('lure bracken "Bramble"');
        await bench().openFile('ours/plans/first.spread');
        await expect.poll(() => bench().text(), soon).toContain('lure bracken ');
    });

    test('a file is laid out anew, and a second time changes nothing', async () => {
        await bench().select('crew 2');
        await bench().type('crew    2');
        await bench().command('Format Document');
        await expect.poll(() => bench().text(), soon).toMatch(/^ {4}crew 2$/m);
        const once = await bench().text();
        await bench().command('Format Document');
        await bench().press('ArrowUp');
        await bench().press('ArrowDown');
        expect(await bench().text()).toBe(once);
    });

    test('a definition leads into the built-in library, which cannot be written to', async () => {
        await bench().select('mahi');
        await bench().press('F12');
        await expect.poll(() => bench().tabs(), soon).toContain('species.spread');
        await expect.poll(() => bench().text(), soon).toMatch(/species mahi/);
        const before = await bench().text();
        await bench().type('x');
        expect(await bench().text()).toBe(before);
        expect(await bench().dirty()).toBe(false);
    });
}
