import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { plan, team } from './team.ts';

const april = 'use "march.spread"\nuse "./may/late.spread"\nspread april like morning { }\n';
const late = 'use "../../tackle.spread"\nuse "../march.spread"\n';
let editor: Editor;
beforeEach(async () => {
    editor = await editorOver({ ...team, 'plans/april.spread': april, 'plans/may/late.spread': late });
});
afterEach(() => editor.stop());

const moves = (...files: readonly (readonly [from: string, to: string])[]) => ({
    files: files.map(([from, to]) => ({ oldUri: editor.uri(from), newUri: editor.uri(to) })),
});
async function edited(...files: readonly (readonly [from: string, to: string])[]) {
    return editor.applied(await editor.ask<WorkspaceEdit>('workspace/willRenameFiles', moves(...files)));
}

test('whoever uses a file that gets another name, uses it under that', async () => {
    expect(await edited(['tackle.spread', 'gear.spread'])).toEqual({
        'plans/march.spread': plan.replace('../tackle.spread', '../gear.spread'),
        'plans/may/late.spread': late.replace('../../tackle.spread', '../../gear.spread'),
    });
});

test('a file that moves still finds what it uses, and is found', async () => {
    expect(await edited(['plans/march.spread', 'march.spread'])).toEqual({
        'plans/march.spread': plan.replaceAll('"../', '"'),
        'plans/april.spread': april.replace('"march.spread"', '"../march.spread"'),
        'plans/may/late.spread': late.replace('"../march.spread"', '"../../march.spread"'),
    });
});

test('a line stays as it is where what it uses goes to where no line can use it', async () => {
    expect(await edited(['tackle.spread', 'tackle.txt'])).toEqual({});
    expect(await edited(['tackle.spread', '../tackle.spread'])).toEqual({});
});

test('a folder that moves keeps what leads about inside it', async () => {
    expect(await edited(['plans', 'old/plans'])).toEqual({
        'plans/march.spread': plan.replaceAll('"../', '"../../'),
        'plans/may/late.spread': late.replace('../../tackle', '../../../tackle'),
    });
    expect(await edited(['plans/may', 'plans/june'])).toEqual({
        'plans/april.spread': april.replace('./may/late', './june/late'),
    });
});

test('two files that change places are told apart', async () => {
    const swapped = await edited(
        ['plans/march.spread', 'plans/may/late.spread'],
        ['plans/may/late.spread', 'plans/march.spread'],
    );
    expect(swapped['plans/april.spread']).toBe(
        april
            .replace('"march.spread"', '"./may/late.spread"'.replace('./', ''))
            .replace('"./may/late.spread"', '"./march.spread"'),
    );
});

test('the library has no place that could change', async () => {
    expect(await edited(['plans/march.spread', 'plans/spring.spread'])).toEqual({
        'plans/april.spread': april.replace('"march', '"spring'),
        'plans/may/late.spread': late.replace('/march', '/spring'),
    });
});

test('after the renaming all is as it was, without a watcher’s help', async () => {
    for (const [path, text] of Object.entries(await edited(['tackle.spread', 'stores/gear.spread'])))
        await editor.write(path, text);
    await editor.write('stores/keep.spread', '', true);
    renameSync(join(editor.folder, 'tackle.spread'), join(editor.folder, 'stores/gear.spread'));
    await editor.connection.sendNotification(
        'workspace/didRenameFiles',
        moves(['tackle.spread', 'stores/gear.spread']),
    );
    expect((await editor.findings('plans/march.spread')).filter((each) => /use|unknown/.test(each))).toEqual(
        [],
    );
    expect((await editor.findings('stores/gear.spread')).filter((each) => /use|unknown/.test(each))).toEqual(
        [],
    );
});
