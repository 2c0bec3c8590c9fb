import { afterAll, beforeAll, expect, test } from 'vitest';
import type { SignatureHelp } from 'vscode-languageserver-protocol';
import { type Editor, editorOver, positionAt } from './client.ts';
import { team } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

/** The help where `‸` stands, the part that is due in brackets. */
async function help(marked: string): Promise<string | undefined> {
    const text = marked.replace('‸', '');
    await editor.open('help.spread', text);
    const found = await editor.ask<SignatureHelp | null>('textDocument/signatureHelp', {
        ...editor.whole('help.spread'),
        position: positionAt(text, marked.indexOf('‸')),
    });
    const [signature] = found?.signatures ?? [];
    if (!signature) return undefined;
    const due = found!.activeParameter;
    const part =
        typeof due === 'number' ? (signature.parameters?.[due]?.label as [number, number]) : undefined;
    const { label } = signature;
    return part ? `${label.slice(0, part[0])}[${label.slice(...part)}]${label.slice(part[1])}` : label;
}

test('a property shows its example, and which part of it is due', async () => {
    expect(await help('lure a jet { pull ‸ }')).toBe('pull [2.6 kg] at 8 kn');
    expect(await help('lure a jet { pull 2‸ }')).toBe('pull [2.6 kg] at 8 kn');
    expect(await help('lure a jet { pull 2 kg at ‸ }')).toBe('pull 2.6 kg at [8 kn]');
    expect(await help('lure a jet { pull 2 kg at 8 kn ‸ }')).toBe('pull 2.6 kg at 8 kn');
});

test('a block shows what it takes', async () => {
    expect(await help('boat b { outriggers { ‸ } }')).toBe('outriggers: length, foot, rise, sweep, halyards');
    expect(await help('spread a {\n    port long rigger {\n        ‸')).toMatch(/^position: outfit, lure/);
    expect(await help('rules r { rule stagger { ‸ } }')).toBe('rule stagger: severity, sway');
});

test('only what a block has not said yet, and not at every blank', async () => {
    expect(await help('boat b { outriggers { rise 45 deg\n ‸ } }')).toBe(
        'outriggers: length, foot, sweep, halyards',
    );
    const text = 'boat b { outriggers {  } }';
    await editor.open('help.spread', text);
    const at = (triggerCharacter: string) =>
        editor.ask<SignatureHelp | null>('textDocument/signatureHelp', {
            ...editor.whole('help.spread'),
            position: { line: 0, character: text.indexOf('{  }') + 2 },
            context: { triggerKind: 2, triggerCharacter, isRetrigger: false },
        });
    expect(await at(' ')).toBeNull();
    expect(await at('{')).not.toBeNull();
});

test('a definition shows its form', async () => {
    expect(await help('lure ‸')).toBe('lure name "Title" { … }');
    expect(await help('use ‸')).toBe('use "tackle.spread"');
});

test('nothing where nothing is known', async () => {
    expect(await help('‸')).toBeUndefined();
    expect(await help('spread a { // ‸')).toBeUndefined();
    expect(await help('spread a { zzz { ‸ } }')).toBeUndefined();
});
