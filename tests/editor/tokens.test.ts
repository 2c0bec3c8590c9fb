import { afterAll, beforeAll, expect, test } from 'vitest';
import type {
    SemanticTokens,
    SemanticTokensDelta,
    SemanticTokensLegend,
} from 'vscode-languageserver-protocol';
import { covered, type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

function read(text: string, data: readonly number[]): string[] {
    const { legend } = editor.initialized.capabilities.semanticTokensProvider as {
        legend: SemanticTokensLegend;
    };
    let [line, character] = [0, 0];
    const words: string[] = [];
    for (let at = 0; at < data.length; at += 5) {
        const [down, along, length, type, bits] = data.slice(at, at + 5) as [
            number,
            number,
            number,
            number,
            number,
        ];
        character = down > 0 ? along : character + along;
        line += down;
        const word = covered(text, {
            start: { line, character },
            end: { line, character: character + length },
        });
        const modifiers = legend.tokenModifiers.filter((_, bit) => bits & (1 << bit));
        words.push([word, legend.tokenTypes[type], ...modifiers].join(' '));
    }
    return words;
}

async function tokens(path: string, text: string): Promise<string[]> {
    await editor.open(path, text);
    const { data } = await editor.ask<SemanticTokens>('textDocument/semanticTokens/full', editor.whole(path));
    return read(text, data);
}

test('a word is coloured by what it means where it stands', async () => {
    expect(
        await tokens(
            'jet.spread',
            'lure jet "🐟 Jet" jet { length 20 cm  hooks single { gap 4 cm } }\nspread s { shotgun { lure jet  back wave 2 } }\n',
        ),
    ).toEqual([
        'lure keyword',
        'jet class declaration',
        '"🐟 Jet" string',
        'jet enumMember',
        'length property',
        '20 number',
        'cm type',
        'hooks property',
        'single class defaultLibrary',
        'gap property',
        '4 number',
        'cm type',
        'spread keyword',
        's class declaration',
        'shotgun enumMember',
        'lure property',
        'jet class',
        'back property',
        'wave keyword',
        '2 number',
    ]);
});

test('what means nothing, or leads nowhere, keeps its plain colour', async () => {
    const found = await tokens(
        'plain.spread',
        'spread s {\n    sped 8 kn\n    boat nobody\n    waive wash because "x" until 2026-01-01\n}\n',
    );
    expect(found).toEqual([
        'spread keyword',
        's class declaration',
        '8 number',
        'kn type',
        'boat property',
        'waive property',
        'wash decorator',
        'because keyword',
        '"x" string',
        'until keyword',
        '2026-01-01 number',
    ]);
});

test('a part of a file is coloured as the whole is', async () => {
    const text = editor.text('plain.spread');
    const { data } = await editor.ask<SemanticTokens>('textDocument/semanticTokens/range', {
        ...editor.whole('plain.spread'),
        range: { start: { line: 2, character: 0 }, end: { line: 2, character: 5 } },
    });
    expect(read(text, data)).toEqual(['boat property']);
});

test('after an edit only what changed is sent', async () => {
    await editor.open('delta.spread', 'spread s {\n    speed 8 kn\n}\n');
    const whole = await editor.ask<SemanticTokens>(
        'textDocument/semanticTokens/full',
        editor.whole('delta.spread'),
    );
    await editor.replace('delta.spread', '8 kn', '8 kn\n    crew 3');
    const delta = await editor.ask<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
        ...editor.whole('delta.spread'),
        previousResultId: whole.resultId,
    });
    const data = [...whole.data];
    for (const { start, deleteCount, data: put = [] } of [...delta.edits].reverse())
        data.splice(start, deleteCount, ...put);
    expect(read(editor.text('delta.spread'), data).slice(-2)).toEqual(['crew property', '3 number']);
    expect(delta.edits.flatMap(({ data: put = [] }) => put).length).toBeLessThan(data.length);
});
