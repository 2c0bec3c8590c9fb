import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TypeHierarchyItem } from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({
        ...team,
        'plans/april.spread': 'use "march.spread"\nspread april like breeze { }\nspread own like april { }\n',
        'round.spread': 'lure a jet like b { }\nlure b jet like a { }\n',
    });
});
afterAll(() => editor.stop());

async function item(from: string, mark: string, by: number): Promise<TypeHierarchyItem> {
    const items = await editor.ask<TypeHierarchyItem[]>(
        'textDocument/prepareTypeHierarchy',
        editor.at(from, mark, by),
    );
    return items[0]!;
}
const step = async (way: 'supertypes' | 'subtypes', of: TypeHierarchyItem) =>
    (await editor.ask<TypeHierarchyItem[] | null>(`typeHierarchy/${way}`, { item: of })) ?? [];
const names = (items: readonly TypeHierarchyItem[]) => items.map(({ name, detail }) => `${name}: ${detail}`);

test('a plan knows what it is like, and what is like it, in any file', async () => {
    const breeze = await item(path, 'spread breeze', 8);
    expect(names(await step('supertypes', breeze))).toEqual(['morning: spread in march.spread']);
    const [april] = await step('subtypes', breeze);
    expect(names([april!])).toEqual(['april: spread in april.spread']);
    expect(names(await step('subtypes', april!))).toEqual(['own: spread in april.spread']);
});

test('from inside a definition, and from a word that names another', async () => {
    expect((await item(path, 'speed 7', 1)).name).toBe('breeze');
    expect((await item(path, 'like morning', 6)).name).toBe('morning');
    expect(names(await step('supertypes', await item('tackle.spread', 'method soft', 8)))).toEqual([
        'drop-back: method in methods.spread',
    ]);
});

test('a round of likes is walked one step at a time', async () => {
    const a = await item('round.spread', 'lure a', 5);
    expect(names(await step('supertypes', a))).toEqual(['b: lure in round.spread']);
    expect(names(await step('subtypes', a))).toEqual(['b: lure in round.spread']);
});
