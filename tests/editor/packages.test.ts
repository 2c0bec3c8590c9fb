import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import type { CompletionList, Hover, LocationLink, MarkupContent } from 'vscode-languageserver-protocol';
import { type Editor, editorOver, type Files } from './client.ts';

let editor: Editor;
const folders: string[] = [];
afterEach(async () => {
    await editor.stop();
    for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const path = 'plans/day.spread';
const gear = 'lure lamp "Lamp" jet { length 240 mm }\n';
const user = `use "package:reef-pack/gear.spread"
spread day "Our day" {
    rule incomplete { severity off }
    shotgun { lure lamp  back 60 m }
}
`;
const inPack = (name: string) => `node_modules/reef-pack/${name}`;
const installed: Files = {
    [path]: user,
    [inPack('gear.spread')]: gear,
    [inPack('package.json')]: '{ "version": "1.4.0" }',
};
const uses = async () =>
    (await editor.diagnostics(path)).filter(({ code }) => code === 'use').map(({ message }) => message);

test('a package is read from the team’s `node_modules`, and leads there', async () => {
    editor = await editorOver(installed);
    await editor.open(path);
    expect(await uses()).toEqual([]);
    const [link] = await editor.ask<LocationLink[]>('textDocument/definition', editor.at(path, 'lamp', 1));
    expect(editor.path(link!.targetUri)).toBe(inPack('gear.spread'));
    const hover = await editor.ask<Hover>('textDocument/hover', editor.at(path, 'package:', 3));
    expect((hover.contents as MarkupContent).value).toContain('lure lamp');
    const links = await editor.ask<{ target: string }[]>('textDocument/documentLink', editor.whole(path));
    expect(links.map(({ target }) => editor.path(target))).toEqual([inPack('gear.spread')]);
});

test('a package that is in use is offered for another `use`, by its name', async () => {
    editor = await editorOver(installed);
    await editor.open('plans/new.spread', 'use ""\n');
    const { items } = await editor.ask<CompletionList>(
        'textDocument/completion',
        editor.at('plans/new.spread', '"', 1),
    );
    expect(items.map(({ label }) => label)).toContain('package:reef-pack/gear.spread');
});

test('what is found in a package is told when somebody opens it', async () => {
    const broken = `${gear}lure broken { lenth 3 m }\n`;
    editor = await editorOver({ ...installed, [inPack('gear.spread')]: broken });
    expect(await editor.diagnostics(inPack('gear.spread'))).toEqual([]);
    await editor.open(inPack('gear.spread'));
    expect((await editor.diagnostics(inPack('gear.spread'))).map(({ code }) => code)).toContain(
        'unknown-word',
    );
});

test('a package that is installed meanwhile mends whoever waited for it, one that goes is missed', async () => {
    editor = await editorOver({ [path]: user });
    await editor.open(path);
    expect(await uses()).toEqual([expect.stringContaining('is not installed in this folder')]);
    await editor.write(inPack('other.spread'), gear, true);
    expect(await uses()).toEqual([expect.stringContaining('it has other.spread')]);
    await editor.write(inPack('gear.spread'), gear, true);
    expect(await uses()).toEqual([]);
    await editor.remove('node_modules');
    expect(await uses()).toEqual([expect.stringContaining('is not installed in this folder')]);
});

test('a package that is linked from outside is refused until the person allows it', async () => {
    editor = await editorOver({ [path]: user });
    const elsewhere = mkdtempSync(join(tmpdir(), 'layback-pack-'));
    folders.push(elsewhere);
    writeFileSync(join(elsewhere, 'gear.spread'), gear);
    mkdirSync(join(editor.folder, 'node_modules'));
    symlinkSync(elsewhere, join(editor.folder, 'node_modules/reef-pack'), 'junction');
    await editor.watched(['node_modules/reef-pack', 1]);
    await editor.open(path);
    expect(await uses()).toEqual([expect.stringContaining('is of a package linked from outside the folder')]);
    editor.settings = { linkedPackages: true };
    await editor.ask('layback/tally', {});
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: {} });
    await expect.poll(uses).toEqual([]);
});
