import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Location } from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({
        ...team,
        'plans/april.spread':
            'use "march.spread"\nspread april like morning { port long rigger { lure sliver } }\n',
        'logs/2026-03-02.spread':
            'use "../plans/march.spread"\nlog 2026-03-02 { using morning\n at 07:10 bite port long rigger lure sliver }\n',
    });
    await editor.open(path);
});
afterAll(() => editor.stop());

async function found(mark: string, by: number, from = path, includeDeclaration = false): Promise<string[]> {
    const places = await editor.ask<Location[]>('textDocument/references', {
        ...editor.at(from, mark, by),
        context: { includeDeclaration },
    });
    return places.map(({ uri, range }) => `${editor.path(uri)}:${range.start.line + 1}`).sort();
}

test('whoever names a lure is found, in plans and logs', async () => {
    const users = ['logs/2026-03-02.spread:3', 'plans/april.spread:2', 'plans/march.spread:24'];
    expect(await found('lure sliver', 6)).toEqual(users);
    expect(await found('lure sliver', 6, 'tackle.spread')).toEqual(users);
    expect(await found('lure sliver', 6, path, true)).toEqual([...users, 'tackle.spread:62']);
});

test('whatever is like a plan, or was fished by it, refers to it', async () => {
    expect(await found('spread morning', 8)).toEqual([
        'logs/2026-03-02.spread:2',
        'plans/april.spread:2',
        'plans/march.spread:30',
    ]);
});

test('a position is found wherever its plan speaks of it', async () => {
    await editor.replace(
        path,
        '    without port',
        '    order set port long rigger, port short corner\n    without port',
    );
    expect(await found('without port long rigger', 10)).toEqual([
        'plans/march.spread:34',
        'plans/march.spread:35',
    ]);
});

test('a name of the library has its users too', async () => {
    expect(await found('target white-marlin', 9)).toEqual(['plans/march.spread:8']);
});

test('an edit that moves a definition loses none of its users', async () => {
    await editor.open('tackle.spread');
    await editor.replace('tackle.spread', 'outfit red', 'rod spare { length 2 m }\n\noutfit red');
    expect(await found('lure sliver', 6)).toHaveLength(3);
});
