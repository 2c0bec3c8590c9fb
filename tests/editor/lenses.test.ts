import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CodeLens, Location } from 'vscode-languageserver-protocol';
import { commands } from '../../language/src/editor/protocol.ts';
import { type Editor, editorOver } from './client.ts';
import { plan, team } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team, { options: { commands: Object.values(commands) } });
});
afterAll(() => editor.stop());

async function lenses(at: string, from = editor): Promise<CodeLens[]> {
    return (await from.ask<CodeLens[] | null>('textDocument/codeLens', from.whole(at))) ?? [];
}
const titles = async (at: string, from = editor) =>
    (await lenses(at, from)).map(({ range, command }) => `${range.start.line + 1} ${command?.title}`);

test('a plan shows its picture, what was found, and what is like it', async () => {
    await editor.open(path);
    await expect.poll(() => titles(path), { timeout: 5000 }).toContain('6 Nothing found');
    const first = (await titles(path)).filter((each) => !each.includes('Turns'));
    expect(first).toEqual([
        '6 Open the diagram',
        '6 Nothing found',
        '6 1 plan is like it',
        '30 Open the diagram',
        '30 Nothing found',
    ]);
});

test('with what the client needs to carry them out', async () => {
    const [open, found, like] = await lenses(path);
    expect(open!.command).toMatchObject({
        command: commands.openDiagram,
        arguments: [editor.uri(path), 'morning'],
    });
    expect(found!.command).toMatchObject({ command: commands.showFindings });
    const [, , places] = like!.command!.arguments as [string, unknown, Location[]];
    expect(places.map(({ uri, range }) => `${editor.path(uri)}:${range.start.line + 1}`)).toEqual([
        'plans/march.spread:30',
    ]);
});

test('how tightly it turns, once that is known', async () => {
    await expect
        .poll(() => titles(path), { timeout: 5000 })
        .toEqual(expect.arrayContaining([expect.stringMatching(/^6 Turns cleanly down to [\d.]+ m/)]));
});

test('“so far”, while the turns were not looked at: of a file that is not open, by choice, never', async () => {
    const options = { commands: Object.values(commands) };
    const quiet = await editorOver(team, { options, settings: { slowFindings: 'open' } });
    expect(await titles(path, quiet)).toContain('6 Nothing found so far');
    await quiet.stop();
});

test('findings are counted for the plan that they concern', async () => {
    await editor.open(
        'plans/found.spread',
        plan.replace('back wave 4 }', 'back 29 m }').replace('sea 0.9 m', 'sea 0.9'),
    );
    const counted = (await titles('plans/found.spread')).filter((each) => /error|warning|Nothing/.test(each));
    expect(counted).toEqual(['6 1 warning', '30 1 error']);
});

test('gear shows how often it is used; what nobody uses shows nothing', async () => {
    await editor.open('tackle.spread');
    const shown = await titles('tackle.spread');
    expect(shown).toContain('5 used 2 times');
    expect(shown.filter((each) => each.startsWith('67 '))).toEqual([]);
});

test('what a client cannot carry out is shown as words, and left out where it would only be pressed', async () => {
    const plain = await editorOver(team);
    const shown = await lenses(path, plain);
    expect(shown.length).toBeGreaterThan(0);
    expect(shown.every(({ command }) => command?.command === '')).toBe(true);
    expect(shown.map(({ command }) => command?.title)).not.toContain('Open the diagram');
    await plain.stop();
});

test('and nothing for whoever wants none', async () => {
    editor.settings = { codeLens: false };
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(() => lenses(path)).toEqual([]);
    expect(editor.heard.map(({ method }) => method)).toContain('workspace/codeLens/refresh');
});

test('a day says above each of its lines how much there is to do', async () => {
    const at = 'days/saturday.spread';
    const fresh = await editorOver(team);
    await fresh.open(
        at,
        `use "../plans/march.spread"
day saturday {
    from 06:00 fish morning
    from 12:00 fish breeze
    when sea over 1.5 m fish morning
}
`,
    );
    expect((await titles(at, fresh)).sort()).toEqual([
        '4 Over from Quiet morning: speed, 1 in, 1 adjusted',
        '5 Over from Quiet morning: nothing changes',
    ]);
    await fresh.stop();
});
