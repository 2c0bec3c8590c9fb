import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocationLink } from 'vscode-languageserver-protocol';
import { covered, type Editor, editorOver } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
    await editor.open(path);
});
afterAll(() => editor.stop());

/** Where a word leads: the file, and the words there. */
async function leads(mark: string, by = 0, from = path): Promise<string | undefined> {
    const found = await editor.ask<LocationLink[] | null>(
        'textDocument/definition',
        editor.at(from, mark, by),
    );
    const [link] = found ?? [];
    if (!link) return undefined;
    const target = editor.path(link.targetUri);
    const text = target.includes(':') ? '' : editor.text(target);
    return `${target} ${covered(text, link.targetSelectionRange)}`.trim();
}

describe('a name leads to', () => {
    test.each([
        ['the boat', 'boat petrel', 5, 'boats.spread petrel'],
        ['an outfit, from the end of its name too', 'outfit red', 10, 'tackle.spread red'],
        ['a lure', 'lure wick', 6, 'tackle.spread wick'],
        ['the plan that one is like', 'like morning', 7, 'plans/march.spread morning'],
        ['itself, from where it is defined', 'spread breeze', 8, 'plans/march.spread breeze'],
        ['a species of the built-in library', 'target white-marlin', 9, 'layback:/species.spread'],
        ['a file', '"../tackle.spread"', 5, 'tackle.spread'],
        ['a file of the library', '"layback:species"', 5, 'layback:/species.spread'],
    ])('%s', async (_, mark, by, expected) => {
        expect(await leads(mark, by)).toBe(expected);
    });

    test('nothing, where nothing is named', async () => {
        expect(await leads('speed 8 kn', 1)).toBeUndefined();
        expect(await leads('wave 2', 5)).toBeUndefined();
    });
});

describe('in a plan', () => {
    const extra = plan
        .replace('clip 4 kg', 'clip 4 kg\n        from bridge')
        .replace(
            'without port long rigger',
            'waive size-order on port short corner because "calm"\n    swap port long rigger with starboard short rigger',
        );
    beforeAll(() => editor.open('plans/more.spread', extra));

    test('a position leads to its block, in the plan or in the one that it is like', async () => {
        expect(await leads('on port short corner', 12, 'plans/more.spread')).toBe(
            'plans/more.spread port short corner',
        );
        expect(await leads('swap port long rigger', 6, 'plans/more.spread')).toBe(
            'plans/more.spread port long rigger',
        );
    });

    test('a named tow point leads to the boat', async () => {
        expect(await leads('from bridge', 6, 'plans/more.spread')).toBe('boats.spread bridge');
    });

    test('a rule leads to its page', async () => {
        expect(await leads('waive size-order', 8, 'plans/more.spread')).toBe('layback:/rules/size-order.md');
    });
});

test('names lead where they should in half a text, with CR LF and letters of two units', async () => {
    const text = withCrLf(
        'use "../tackle.spread"\n/* 🐟 */ spread half "🎣" {\n  port long rigger { lure wick\n',
    );
    await editor.open('plans/half.spread', text);
    expect(await leads('lure wick', 6, 'plans/half.spread')).toBe('tackle.spread wick');
});
