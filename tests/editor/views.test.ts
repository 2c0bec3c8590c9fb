import { afterAll, beforeAll, expect, test } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver-protocol';
import type {
    Comparison,
    NotCompared,
    StrikeScene,
    TurnScene,
    Viewed,
} from '../../language/src/editor/protocol.ts';
import { comparison, strikeView, turnView } from '../../language/src/editor/protocol.ts';
import { type Editor, editorOver } from './client.ts';
import { plan, team } from './team.ts';

const path = 'plans/march.spread';
const turning = plan.replace('speed 8 kn', 'speed 8 kn\n    turn within 60 m');
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({ ...team, [path]: turning });
    await editor.open(path);
    await editor.settled();
});
afterAll(() => editor.stop());
const wanted = (more = {}) => ({ uri: editor.uri(path), plan: 'morning', ...more });
const turn = (more = {}) => editor.connection.sendRequest<Viewed<TurnScene>>(turnView.method, wanted(more));
const strike = (more = {}) =>
    editor.connection.sendRequest<Viewed<StrikeScene>>(strikeView.method, wanted(more));
const against = (earlier: object) =>
    editor.connection.sendRequest<Comparison & NotCompared>(
        comparison.method,
        wanted({ earlier: { uri: editor.uri(path), ...earlier } }),
    );

test('a turn comes at the radius that the plan gives, or at another one and to the other side', async () => {
    const { scene, places, plan: entry } = await turn();
    expect(entry.name).toBe('morning');
    expect(scene.radius).toBe(60);
    expect(scene.boat).toHaveLength(3 * scene.times.length);
    for (const { path: way, points } of scene.lines)
        expect(way).toHaveLength(2 * points * scene.times.length);
    expect(places.map(({ id }) => id)).toEqual(expect.arrayContaining(scene.lines.map(({ id }) => id)));
    const other = await turn({ side: scene.side === 'port' ? 'starboard' : 'port', radius: 75 });
    expect(other.scene).toMatchObject({ radius: 75, chosen: 'wished' });
    expect(other.scene.side).not.toBe(scene.side);
    expect(JSON.stringify(scene).length).toBeLessThan(120_000);
});

test('a turn that nobody wants any more is left off, and one of a text that changes', async () => {
    await editor.replace(path, 'speed 8 kn', 'speed 7.9 kn');
    await editor.settled();
    const unwanted = new CancellationTokenSource();
    const asked = editor.connection.sendRequest(turnView.method, wanted(), unwanted.token);
    unwanted.cancel();
    await expect(asked).rejects.toMatchObject({ code: -32_800 });
    await editor.replace(path, 'speed 7.9 kn', 'speed 8 kn');
    await editor.settled();
});

test('a strike comes for the line that the caret is in, unless another one is named', async () => {
    const first = await strike();
    const [, second] = first.scene.positions;
    const { range } = first.places.find(({ id }) => id === `line:${second}`)!;
    expect((await strike({ position: range.start })).scene.position).toBe(second);
    expect((await strike({ line: second, style: 'drop-back' })).scene.position).toBe(second);
});

test('what is shown as numbers comes on a sheet too, where one is wanted', async () => {
    const [turning, biting] = [await turn({ sheet: {} }), await strike({ sheet: { palette: 'dark' } })];
    expect(turning.svg).toMatch(/^<svg [\s\S]*A half turn to (port|starboard) at 60 m/);
    expect(biting.svg).toMatch(/^<svg [\s\S]*A bite on the /);
    expect((await strike()).svg).toBeUndefined();
});

test('an earlier text is compared in a world of its own, with what it uses as that stands', async () => {
    const now = editor.text(path);
    const { told, before, svg } = await against({ text: now.replace('speed 8 kn', 'speed 7 kn') });
    expect(told).toEqual(['Speed: 7 kn → 8 kn.']);
    expect(before).toBeTruthy();
    expect(svg).toMatch(/^<svg /);
    expect((await against({ text: now })).told).toEqual([]);
    // Nothing of it is left behind where names are looked up.
    const plans = await editor.ask<unknown[]>('textDocument/documentSymbol', editor.at(path, 'speed'));
    expect(plans.length).toBeGreaterThan(0);
});

test('where there is nothing to compare with, it says why', async () => {
    expect((await against({ text: '' })).reason).toMatch(/^There was nothing like/);
    expect((await against({ plan: 'nowhere' })).reason).toBe('There is no spread nowhere any more.');
    expect((await against({ uri: 'file:///gone.spread' })).reason).toMatch(/not there any more/);
});

test('a text that cannot be read is seen as it last could', async () => {
    await editor.replace(path, 'speed 8 kn', 'speed 8 kn {');
    await editor.settled();
    const broken = await turn();
    expect(broken.outdated).toBeTruthy();
    expect(broken.scene.radius).toBe(60);
    await editor.replace(path, 'speed 8 kn {', 'speed 8 kn');
    await editor.settled();
});
