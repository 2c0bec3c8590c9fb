import { afterAll, beforeAll, expect, test } from 'vitest';
import type { FoldingRange } from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { team, withCrLf } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

async function folds(path: string, text?: string): Promise<string[]> {
    await editor.open(path, text);
    const ranges = await editor.ask<FoldingRange[]>('textDocument/foldingRange', editor.whole(path));
    return ranges
        .sort((a, b) => a.startLine - b.startLine)
        .map(({ startLine, endLine, kind }) => `${startLine + 1}-${endLine + 1}${kind ? ` ${kind}` : ''}`);
}

test('blocks fold down to their first and last line, `use` lines together', async () => {
    expect(await folds('plans/march.spread')).toEqual(['1-3 imports', '6-26', '15-19', '22-25', '30-34']);
});

const mixed = `// one
// two

/**
 * three
 */
lure a jet { // behind code
    // four
    // five
    length 200 mm
}
// #region baits
bait b { kind dead }
// #endregion
`;

test('comments and regions fold', async () => {
    const expected = ['1-2 comment', '4-6 comment', '7-10', '8-9 comment', '12-14 region'];
    expect(await folds('mixed.spread', mixed)).toEqual(expected);
    expect(await folds('crlf.spread', withCrLf(mixed))).toEqual(expected);
});

test('what is still open folds what is closed in it', async () => {
    expect(
        await folds('open.spread', 'spread a {\n  speed\n  port long rigger {\n    lure x\n  }\n'),
    ).toEqual(['3-4']);
});
