import { afterAll, beforeAll, expect, test } from 'vitest';
import type { SelectionRange } from 'vscode-languageserver-protocol';
import { covered, type Editor, editorOver } from './client.ts';
import { team, withCrLf } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

/** What a selection grows to, step by step. */
async function grown(path: string, mark: string, by: number): Promise<string[]> {
    const { textDocument, position } = editor.at(path, mark, by);
    const [first] = await editor.ask<SelectionRange[]>('textDocument/selectionRange', {
        textDocument,
        positions: [position],
    });
    const steps: string[] = [];
    for (let at: SelectionRange | undefined = first; at; at = at.parent)
        steps.push(covered(editor.text(path), at.range));
    return steps;
}

const text = 'spread a "A b" {\n    port long rigger { lure x  back 45 m }\n    speed 8 kn\n}\n';

test('from a number to its quantity, property, block and definition', async () => {
    await editor.open('a.spread', text);
    expect(await grown('a.spread', '45', 1)).toEqual([
        '45',
        '45 m',
        'back 45 m',
        ' lure x  back 45 m ',
        'port long rigger { lure x  back 45 m }',
        text.slice(text.indexOf('{') + 1, text.lastIndexOf('}')),
        text.trimEnd(),
        text,
    ]);
});

test('inside quotes first, then with them', async () => {
    expect((await grown('a.spread', 'A b', 1)).slice(0, 2)).toEqual(['A b', '"A b"']);
});

test('a position is selected as one', async () => {
    expect((await grown('a.spread', 'long', 1)).slice(0, 3)).toEqual([
        'long',
        'port long rigger',
        'port long rigger { lure x  back 45 m }',
    ]);
});

test('holds in a text that is not finished, with CR LF and letters of two units', async () => {
    const odd = withCrLf('/* 🐟 */ spread b "🎣" {\n  speed 8 kn\n  port long rigger { lure');
    await editor.open('odd.spread', odd);
    const steps = await grown('odd.spread', '8 kn', 1);
    expect(steps.slice(0, 3)).toEqual(['8', '8 kn', 'speed 8 kn']);
    expect(steps.at(-1)).toBe(odd);
});

test('white space belongs to what is around it', async () => {
    expect((await grown('a.spread', '    speed', 1)).at(-1)).toBe(text);
});
