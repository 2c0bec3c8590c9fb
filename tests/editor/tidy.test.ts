import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-protocol';
import { apply, type Editor, editorOver } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

const options = { tabSize: 8, insertSpaces: false };
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

async function formatted(path: string, text: string, method = 'formatting', more = {}): Promise<string> {
    await editor.open(path, text);
    const edits = await editor.ask<TextEdit[] | null>(`textDocument/${method}`, {
        ...editor.whole(path),
        options,
        ...more,
    });
    return apply(text, edits ?? []);
}

/** The one block of the plan that is not laid out so. */
const laid = plan.replace(
    /port long rigger \{\s+outfit green\s+lure sliver\s+back 45 m\s+\}/,
    'port long rigger { outfit green  lure sliver  back 45 m }',
);

test('a whole file is laid out as the house writes it', async () => {
    const messy = plan
        .replaceAll('    ', '\t')
        .replace('lure broom', 'lure   broom')
        .replace('{ outfit blue', '{outfit blue');
    expect(await formatted('messy.spread', messy)).toBe(laid);
    expect(await formatted('crlf.spread', withCrLf(messy))).toBe(withCrLf(laid));
});

test('only the lines that were asked for', async () => {
    const messy = 'lure   a jet {   }\nlure   b jet {   }\n';
    const range = { start: { line: 1, character: 2 }, end: { line: 1, character: 3 } };
    expect(await formatted('range.spread', messy, 'rangeFormatting', { range })).toMatch(
        /^lure {3}a jet \{ {3}\}\nlure b jet/,
    );
});

test('a block when it is closed, a line when it is begun', async () => {
    const closing =
        'spread s {\n  shotgun {\n lure a\n back 20 m\n clip 3 kg\n    angler "N"\n}\n  speed   8 kn\n}\n';
    const position = { line: 6, character: 1 };
    expect(await formatted('type.spread', closing, 'onTypeFormatting', { position, ch: '}' })).toBe(
        'spread s {\n    shotgun {\n        lure a\n        back 20 m\n        clip 3 kg\n        angler "N"\n    }\n  speed   8 kn\n}\n',
    );
    const enter = 'spread s {\n\n}\n';
    expect(
        await formatted('enter.spread', enter, 'onTypeFormatting', {
            position: { line: 1, character: 0 },
            ch: '\n',
        }),
    ).toBe('spread s {\n    \n}\n');
});

test('what cannot be read stays as it is', async () => {
    const broken = 'spread s {\n  speed   kn  8\n   port   {\n';
    expect(await formatted('broken.spread', broken)).toBe(broken);
});
