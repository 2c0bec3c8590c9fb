import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentHighlight } from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { plan, team } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
    await editor.open(path, `${plan}\nspread second like morning { port long rigger { lure wick } }\n`);
});
afterAll(() => editor.stop());

/** Lines, with `*` where the name is introduced. */
async function marked(mark: string, by: number): Promise<string[]> {
    const found = await editor.ask<DocumentHighlight[] | null>(
        'textDocument/documentHighlight',
        editor.at(path, mark, by),
    );
    return (found ?? []).map(({ range, kind }) => `${range.start.line + 1}${kind === 3 ? '*' : ''}`);
}

test('a name is marked wherever the file says it', async () => {
    expect(await marked('like morning', 6)).toEqual(['6*', '30', '37']);
    expect(await marked('lure wick', 6)).toEqual(['21', '37']);
});

test('a position is marked in its own plan alone', async () => {
    expect(await marked('port long rigger {', 6)).toEqual(['22*']);
    expect(await marked('without port long rigger', 9)).toEqual(['34']);
});

test('nothing is marked where nothing is named', async () => {
    expect(await marked('speed 8', 1)).toEqual([]);
});
