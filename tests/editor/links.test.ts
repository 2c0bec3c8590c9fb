import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentLink } from 'vscode-languageserver-protocol';
import { covered, type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

test('paths of `use` lines lead to their files; what is not there leads nowhere', async () => {
    const text =
        'use "../boats.spread"\nuse "layback:species"\nuse "gone.spread"\nuse "../../outside.spread"\nuse "../tackle.spread\n';
    await editor.open('plans/links.spread', text);
    const links = await editor.ask<DocumentLink[]>(
        'textDocument/documentLink',
        editor.whole('plans/links.spread'),
    );
    expect(links.map(({ range, target }) => [covered(text, range), editor.path(target!)])).toEqual([
        ['../boats.spread', 'boats.spread'],
        ['layback:species', 'layback:/species.spread'],
        ['../tackle.spread', 'tackle.spread'],
    ]);
});
