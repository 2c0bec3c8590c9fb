import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { ask } from './ask.ts';
import { project } from './project.ts';

/** Starts the script as `npm run workbench` does, on plain Node, from somewhere else. */
function run(...words: string[]) {
    const child = spawn(process.execPath, [path.join(project, 'tests/workbench/run.mjs'), ...words], {
        cwd: tmpdir(),
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    const said = { out: '', err: '' };
    child.stdout.on('data', (part) => (said.out += part));
    child.stderr.on('data', (part) => (said.err += part));
    const ended = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)));
    return { child, said, ended };
}

test('the script prints its address, serves the folder with this extension, and ends when asked to', async () => {
    const workspace = mkdtempSync(path.join(tmpdir(), 'serve-'));
    onTestFinished(() => rmSync(workspace, { recursive: true }));
    writeFileSync(path.join(workspace, 'a.spread'), 'spread a {}\n');
    const { child, said, ended } = run(workspace, '--theme', 'dark');
    await expect.poll(() => said.out, { timeout: 20_000 }).toMatch(/^http:\/\/vscode\.localhost:\d+\/\n/);
    const port = Number(/:(\d+)\//.exec(said.out)?.[1]);
    expect((await ask(port, '/files/a.spread')).body).toBe('spread a {}\n');
    expect(JSON.parse((await ask(port, '/extension/package.json')).body).name).toBe('layback');
    expect((await ask(port, '/file-system/package.json')).status).toBe(200);
    expect((await ask(port, '/')).body).toContain('"workbench.colorTheme":"Default Dark Modern"');
    child.kill('SIGINT');
    expect(await ended).toBe(0);
    expect(said.err).toBe('');
}, 30_000);

test.each([
    [['--port', 'seven'], '"seven" is not a port'],
    [['--theme', 'pink'], '"pink" is not a theme'],
    [['--sing'], "Unknown option '--sing'"],
    [['one', 'two'], 'One folder'],
    [['no-such-folder'], 'ENOENT'],
])('%s ends it with the reason and its usage', async (words, reason) => {
    const { said, ended } = run(...words);
    expect(await ended).toBe(2);
    expect(said.err).toContain(reason);
    expect(said.err).toContain('npm run workbench -- [folder]');
    expect(said.out).toBe('');
});
