import { afterAll, beforeAll, expect, test } from 'vitest';
import type {
    CompletionList,
    DocumentSymbol,
    FoldingRange,
    Hover,
    InlayHint,
    SemanticTokens,
    TextEdit,
    WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

const count = 900;

/** Eleven lines a plan: ten thousand in all. */
const big = `use "boats.spread"\nuse "tackle.spread"\n${Array.from(
    { length: count },
    (_, n) => `
/** Number ${n}. */
spread plan-${n} "Plan ${n}" {
    boat petrel
    speed ${6 + (n % 4)} kn
    sea 0.2 m
    port short corner { outfit red  lure broom  back wave 2 }
    starboard short rigger { outfit blue  lure wick  back wave 4 }
    port long rigger { outfit green  lure sliver  back ${40 + (n % 9)} m }
    crew 2
}
`,
).join('')}`;

const path = 'big.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({ ...team, [path]: big }, { settings: { slowFindings: 'open' } });
    await editor.open(path);
});
afterAll(() => editor.stop());

test('a file of ten thousand lines is served like any other', { timeout: 40_000 }, async () => {
    expect(big.split('\n').length).toBeGreaterThan(9_900);
    const last = `plan-${count - 1} `;
    const { textDocument, position } = editor.at(path, last, 2);
    const ask = <R>(method: string, more = {}) => editor.ask<R>(method, { textDocument, position, ...more });

    expect((await ask<DocumentSymbol[]>('textDocument/documentSymbol')).length).toBe(count);
    expect((await ask<FoldingRange[]>('textDocument/foldingRange')).length).toBe(count + 1);
    expect((await ask<Hover>('textDocument/hover')).contents).toMatchObject({
        value: expect.stringContaining(`Plan ${count - 1}`),
    });
    expect((await ask<SemanticTokens>('textDocument/semanticTokens/full')).data.length).toBeGreaterThan(
        5 * 30 * count,
    );
    const range = {
        start: { line: position.line, character: 0 },
        end: { line: position.line + 9, character: 0 },
    };
    expect((await ask<InlayHint[]>('textDocument/inlayHint', { range })).length).toBe(6);
    expect(
        (await ask<TextEdit[] | null>('textDocument/formatting', {
            options: { tabSize: 4, insertSpaces: true },
        })) ?? [],
    ).toEqual([]);
    const edit = await ask<WorkspaceEdit>('textDocument/rename', {
        ...editor.at(path, 'lure broom', 6),
        newName: 'brush',
    });
    expect(edit.changes![textDocument.uri]!.length).toBe(count);

    // One keystroke, and what it brings about.
    const at = editor.text(path).lastIndexOf('crew 2');
    await editor.edit(path, at, at + 6, 'cr');
    const list = await editor.ask<CompletionList>('textDocument/completion', editor.at(path, 'cr\n}', 2));
    expect(list.items.map(({ label }) => label)).toContain('crew');
    expect((await editor.findings(path)).join()).toContain('`cr` means nothing');
});
