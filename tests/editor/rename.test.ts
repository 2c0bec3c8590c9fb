import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Range, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { apply, covered, type Editor, editorOver } from './client.ts';
import { plan, tackle, team, withCrLf } from './team.ts';

const path = 'plans/march.spread';
const april = 'use "march.spread"\nspread april like morning { port long rigger { lure sliver } }\n';
const log =
    'use "layback:species"\nuse "../tackle.spread"\nuse "../plans/march.spread"\nspecies local like wahoo { }\n' +
    'log 2026-03-02 { using morning\n at 07:10 bite port long rigger lure sliver released local 12 kg }\n';
let editor: Editor;
beforeEach(async () => {
    editor = await editorOver({ ...team, 'plans/april.spread': april, 'logs/march.spread': log });
});
afterEach(() => editor.stop());

const rename = (from: string, mark: string, by: number, newName: string) =>
    editor.ask<WorkspaceEdit>('textDocument/rename', { ...editor.at(from, mark, by), newName });
const texts = async (...asked: Parameters<typeof rename>) => editor.applied(await rename(...asked));

test('a lure gets another name wherever it is named, and nothing else changes', async () => {
    expect(await texts(path, 'lure sliver', 6, 'needle')).toEqual({
        [path]: plan.replace('lure sliver', 'lure needle'),
        'tackle.spread': tackle.replace('lure sliver', 'lure needle'),
        'plans/april.spread': april.replace('sliver', 'needle'),
        'logs/march.spread': log.replace('sliver', 'needle'),
    });
});

test('a plan is renamed where others are like it, and where it was fished', async () => {
    expect(await texts('plans/april.spread', 'like morning', 6, 'dawn')).toEqual({
        [path]: plan.replace('spread morning', 'spread dawn').replace('like morning', 'like dawn'),
        'plans/april.spread': april.replace('morning', 'dawn'),
        'logs/march.spread': log.replace('morning', 'dawn'),
    });
});

test('what was renamed checks as it did before', async () => {
    const edit = await rename(path, 'lure sliver', 6, 'needle');
    for (const [file, text] of Object.entries(editor.applied(edit))) await editor.write(file, text);
    for (const file of ['tackle.spread', path, 'plans/april.spread', 'logs/march.spread'])
        expect((await editor.findings(file)).filter((each) => each.includes('unknown'))).toEqual([]);
});

test('any word of the language may be the name', async () => {
    for (const word of ['jet', 'wave', 'lure', 'kg', 'in', 'été-2', '餌']) {
        const after = await texts('tackle.spread', 'lure sliver', 6, word);
        expect(after['tackle.spread']).toBe(tackle.replace('lure sliver', `lure ${word}`));
    }
});

test('a fish named without its word gets the word where the new name needs it', async () => {
    const after = await texts('logs/march.spread', 'species local', 9, 'lost');
    expect(after['logs/march.spread']).toBe(
        log.replace('species local', 'species lost').replace('released local', 'released species lost'),
    );
});

test('a name that cannot be one is refused, in words', async () => {
    await expect(rename(path, 'lure sliver', 6, 'two words')).rejects.toThrow(/cannot be a name.*no blanks/);
    await expect(rename(path, 'lure sliver', 6, '2nd')).rejects.toThrow(/begins with a letter/);
    await expect(rename(path, 'lure sliver', 6, '')).rejects.toThrow(/cannot be a name/);
});

test('a name that is taken is refused, also by a file that sees both', async () => {
    await expect(rename(path, 'lure sliver', 6, 'wick')).rejects.toThrow(
        'There is already a lure called wick in tackle.spread.',
    );
    await editor.open('plans/april.spread');
    await editor.edit('plans/april.spread', april.length, april.length, 'lure own jet { }\n');
    await expect(rename('tackle.spread', 'lure sliver', 6, 'own')).rejects.toThrow(
        /lure called own in april\.spread/,
    );
});

test('a lure may be called as an outfit is: each kind has its own names', async () => {
    expect(Object.keys(await texts(path, 'lure sliver', 6, 'red'))).toHaveLength(4);
});

test('the built-in library is left alone', async () => {
    await expect(rename(path, 'target white-marlin', 9, 'x')).rejects.toThrow(/built-in library/);
    await expect(
        editor.ask('textDocument/prepareRename', editor.at(path, 'target white-marlin', 9)),
    ).rejects.toThrow(/built-in library/);
});

test('an editor is told what can be renamed', async () => {
    await editor.open(path);
    const prepare = (mark: string, by: number) =>
        editor.ask<Range | null>('textDocument/prepareRename', editor.at(path, mark, by));
    expect(covered(plan, (await prepare('lure wick', 7))!)).toBe('wick');
    expect(covered(plan, (await prepare('spread breeze', 7))!)).toBe('breeze');
    expect(await prepare('speed 8', 2)).toBeNull();
    expect(await prepare('port short corner', 2)).toBeNull();
});

test('edits fit texts with CR LF and letters of two units', async () => {
    const text = withCrLf('/* 🐟🐟 */ lure a "𝒜" jet { }\nspread s "🎣" { shotgun { /* 🐟 */ lure a } }\n');
    await editor.open('odd.spread', text);
    const edit = await rename('odd.spread', 'lure a "', 5, 'tin');
    expect(apply(text, Object.values(edit.changes!)[0]!)).toBe(
        text.replace('lure a "', 'lure tin "').replace('lure a }', 'lure tin }'),
    );
});

test('a rename right behind an edit sees that edit', async () => {
    await editor.open(path);
    await editor.edit(path, 0, 0, '// a line above\n');
    const after = await texts(path, 'lure sliver', 6, 'needle');
    expect(after[path]).toBe(`// a line above\n${plan.replace('lure sliver', 'lure needle')}`);
});
