import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentSymbol } from 'vscode-languageserver-protocol';
import { covered, type Editor, editorOver } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

async function symbols(path: string, text?: string): Promise<DocumentSymbol[]> {
    await editor.open(path, text);
    return editor.ask<DocumentSymbol[]>('textDocument/documentSymbol', editor.whole(path));
}

/** Names and details, children indented. */
function drawn(symbols: readonly DocumentSymbol[], indent = ''): string[] {
    return symbols.flatMap(({ name, detail, children }) => [
        `${indent}${name}${detail ? ` | ${detail}` : ''}`,
        ...drawn(children ?? [], `${indent}  `),
    ]);
}

test('a file of plans shows each plan with its positions, and what runs there', async () => {
    expect(drawn(await symbols('plans/march.spread'))).toEqual([
        'morning | spread · Quiet morning',
        '  port short corner | broom, wave 2',
        '  starboard short rigger | wick, wave 4',
        '  port long rigger | sliver, 45 m',
        'breeze | spread · Fresh breeze',
        '  starboard short rigger | wave 5',
    ]);
});

test('a boat shows its holders and points', async () => {
    expect(drawn(await symbols('boats.spread'))).toEqual([
        'petrel | boat · Petrel',
        '  holder port corner',
        '  holder port rigger',
        '  point bridge',
    ]);
});

test('rules, waivers and what a log holds have their place', async () => {
    const text =
        'rules team { rule stagger { sway 5 deg } }\nspread a { waive wash because "calm" }\n' +
        'log 2026-03-02 { using a\n at 07:10 bite port long rigger\n at 07:30 lost "hook pulled" }\n';
    expect(drawn(await symbols('other.spread', text))).toEqual([
        'team | rules',
        '  stagger | rule',
        'a | spread',
        '  wash | waived',
        '2026-03-02 | log',
        '  at 07:10 bite port long rigger',
        '  at 07:30 lost "hook pulled"',
    ]);
});

test('half a file has half an outline: nothing that is there is lost', async () => {
    const cut = plan.slice(0, plan.indexOf('back 45'));
    expect(drawn(await symbols('plans/cut.spread', cut))).toEqual([
        'morning | spread · Quiet morning',
        '  port short corner | broom, wave 2',
        '  starboard short rigger | wick, wave 4',
        '  port long rigger | sliver',
    ]);
    const nameless = await symbols('plans/nameless.spread', 'spread {\n  port long rigger { }\n}\nlure \n');
    expect(drawn(nameless)[0]).toBe('(spread) | spread');
});

test('ranges hold their names, with CR LF and letters of two units', async () => {
    const text = withCrLf('/* 🐟 */ lure 餌 "🎣" jet { }\n/** 𝒜 */\nspread é { port long rigger { } }\n');
    const check = (found: readonly DocumentSymbol[]): string[] =>
        found.flatMap(({ range, selectionRange, children }) => {
            expect(covered(text, range)).toContain(covered(text, selectionRange));
            return [covered(text, selectionRange), ...check(children ?? [])];
        });
    expect(check(await symbols('odd.spread', text))).toEqual(['餌', 'é', 'port long rigger']);
});
