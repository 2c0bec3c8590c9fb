import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CancellationTokenSource, type CodeLens } from 'vscode-languageserver-protocol';
import { commands, sensitivity } from '../../language/src/editor/protocol.ts';
import { type Editor, editorOver } from './client.ts';
import { plan, team } from './team.ts';

const path = 'plans/march.spread';
const turning = plan.replace('speed 8 kn', 'speed 8 kn\n    turn within 60 m');
let editor: Editor;
beforeAll(async () => {
    const options = { commands: Object.values(commands) };
    editor = await editorOver({ ...team, [path]: turning }, { options });
});
afterAll(() => editor.stop());
const wanted = () => ({ uri: editor.uri(path), plan: 'morning' });
const within = { timeout: 60_000 };

test('what one change would do is what the command prints', within, async () => {
    const found = await editor.connection.sendRequest<{ title: string; text: string }>(
        sensitivity.method,
        wanted(),
    );
    const command = join(import.meta.dirname, '../../dist/layback.mjs');
    const printed = execFileSync(
        process.execPath,
        [command, 'figures', '--sensitivity', '--plan', 'morning', path],
        { cwd: editor.folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
    );
    const table = (text: string) => /^What one change would make[\s\S]*?\n\n/m.exec(text)?.[0];
    expect(table(found.text)).toBe(table(printed));
    expect(table(found.text)?.split('\n').length).toBeGreaterThan(8);
});

test('it is left off when nobody wants it any more, and when the plan changes', within, async () => {
    await editor.open(path);
    // Another plan than any before: nothing of it is remembered.
    await editor.replace(path, 'speed 8 kn', 'speed 7.9 kn');
    await editor.settled();
    const unwanted = new CancellationTokenSource();
    const cancelled = editor.connection.sendRequest(sensitivity.method, wanted(), unwanted.token);
    setTimeout(() => unwanted.cancel(), 50);
    await expect(cancelled).rejects.toMatchObject({ code: -32_800 });

    const changed = editor.connection.sendRequest(sensitivity.method, wanted());
    setTimeout(() => void editor.replace(path, 'speed 7.9 kn', 'speed 7.8 kn'), 50);
    await expect(changed).rejects.toMatchObject({ code: -32_801 });
});

test('meanwhile others are answered', within, async () => {
    let isThere = false;
    const asked = editor.connection.sendRequest(sensitivity.method, wanted()).then(() => (isThere = true));
    await editor.ask('textDocument/hover', editor.at(path, 'petrel'));
    await editor.ask('textDocument/hover', editor.at(path, 'petrel'));
    expect(isThere).toBe(false);
    await asked;
});

test('the lens that says how tightly a plan turns leads to it', within, async () => {
    const lenses = () => editor.ask<CodeLens[]>('textDocument/codeLens', editor.whole(path));
    const leading = async () =>
        (await lenses()).flatMap(({ command }) => (command?.title.startsWith('Turns') ? [command] : []));
    await expect.poll(leading, within).not.toEqual([]);
    expect((await leading())[0]).toMatchObject({
        command: commands.showSensitivity,
        arguments: [editor.uri(path), 'morning'],
    });
});

test('of a file without plans, or one that is not there, there is nothing to work out', async () => {
    const of = (name: string) => editor.ask(sensitivity.method, { uri: editor.uri(name) });
    expect(await of('boats.spread')).toBeNull();
    expect(await of('nowhere.spread')).toBeNull();
});
