import { afterAll, beforeAll, expect, test } from 'vitest';
import type { WorkspaceSymbol } from 'vscode-languageserver-protocol';
import { type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({
        ...team,
        'logs/2026-03-02.spread': 'log 2026-03-02 "A slow day" { zone "+10:00" }\n',
    });
});
afterAll(() => editor.stop());

async function found(query: string): Promise<string[]> {
    const symbols = await editor.ask<WorkspaceSymbol[]>('workspace/symbol', { query });
    return symbols.map(({ name, containerName }) => `${name}: ${containerName}`).sort();
}

test('a definition is found by a part of its name, or of its title', async () => {
    expect(await found('sliv')).toEqual(['sliver: lure in tackle.spread']);
    expect(await found('fresh')).toEqual(['breeze: spread in march.spread']);
    expect(await found('slow day')).toEqual(['2026-03-02: log in 2026-03-02.spread']);
});

test('nothing asked finds all of the team’s, and none of the library’s', async () => {
    const all = await found('');
    expect(all).toContain('petrel: boat in boats.spread');
    expect(all).toContain('soft: method in tackle.spread');
    expect(all.filter((each) => each.includes('marlin'))).toEqual([]);
});

test('a file that was changed is found as it is now', async () => {
    await editor.open('boats.spread');
    await editor.replace('boats.spread', 'boat petrel', 'boat gannet');
    expect(await found('gannet')).toEqual(['gannet: boat in boats.spread']);
    expect(await found('petrel')).toEqual(['gannet: boat in boats.spread']);
});
