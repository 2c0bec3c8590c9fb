import { afterAll, beforeAll, expect, test } from 'vitest';
import * as protocol from '../../language/src/editor/protocol.ts';
import { covered, type Editor, editorOver, positionAt } from './client.ts';
import { plan, team } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
    await editor.open(path);
});
afterAll(() => editor.stop());

const picture = (more: Partial<protocol.PictureWanted> = {}) =>
    editor.ask<protocol.Picture | null>(protocol.picture.method, { uri: editor.uri(path), ...more });

test('a plan is drawn by its name, or by the caret in it', async () => {
    const first = (await picture())!;
    expect(first).toMatchObject({ plan: { name: 'morning', title: 'Quiet morning' }, version: 1 });
    expect(first.svg).toMatch(/^<svg[^>]*>/);
    expect(covered(plan, first.plan.range)).toMatch(/^spread morning[\s\S]*\}$/);
    expect((await picture({ plan: 'breeze' }))!.plan.name).toBe('breeze');
    const inBreeze = positionAt(plan, plan.indexOf('speed 7'));
    expect((await picture({ position: inBreeze }))!.plan.name).toBe('breeze');
    expect((await picture({ position: { line: 0, character: 0 } }))!.plan.name).toBe('morning');
    expect(await picture({ plan: 'nobody' })).toBeNull();
});

test('what it shows has its place in the text', async () => {
    const { places, svg } = (await picture())!;
    const lure = places.find(({ id, position }) => id.startsWith('lure') && position === 'port long rigger')!;
    expect(editor.path(lure.uri)).toBe(path);
    expect(covered(plan, lure.range)).toContain('sliver');
    expect(svg).toContain(`data-id="${lure.id}"`);
});

test('from the side too, with the same words', async () => {
    const [above, side] = [(await picture())!, (await picture({ view: 'side' }))!];
    expect(side.svg).not.toBe(above.svg);
    expect(side.summary).toEqual(above.summary);
    expect(above.summary.rows.map(({ position }) => position)).toEqual([
        'port short corner',
        'starboard short rigger',
        'port long rigger',
    ]);
});

test('while the text cannot be read, the last good picture stays and says so', async () => {
    const good = (await picture())!;
    await editor.replace(path, 'back 45 m', 'back 45 m {');
    const held = (await picture({ plan: 'morning' }))!;
    expect(held.svg).toBe(good.svg);
    expect(held.outdated).toBeTruthy();
    await editor.replace(path, 'back 45 m {', 'back 46 m');
    const next = (await picture({ plan: 'morning' }))!;
    expect(next.outdated).toBeUndefined();
    expect(next.svg).not.toBe(good.svg);
    await editor.replace(path, 'back 46 m', 'back 45 m');
});

test('a plan that is taken out is shown as it was, and said to be gone', async () => {
    await picture({ plan: 'breeze' });
    const text = editor.text(path);
    await editor.edit(path, text.indexOf('/** When'), text.length, '');
    expect((await picture({ plan: 'breeze' }))!.outdated).toBe('The plan is no longer in the text.');
    await editor.edit(
        path,
        text.indexOf('/** When'),
        text.indexOf('/** When'),
        text.slice(text.indexOf('/** When')),
    );
    expect((await picture({ plan: 'breeze' }))!.outdated).toBeUndefined();
});

test('figures come as tables, for the plan at the caret', async () => {
    const position = positionAt(plan, plan.indexOf('speed 7'));
    const figures = await editor.ask<protocol.Figures>(protocol.figures.method, {
        uri: editor.uri(path),
        position,
    });
    expect(figures).toMatchObject({ name: 'breeze', title: 'Fresh breeze' });
    expect(figures.text).toContain('starboard short rigger');
    expect(figures.plan).toMatchObject({ name: 'breeze' });
});

test('a file without plans has no picture', async () => {
    expect(await editor.ask(protocol.picture.method, { uri: editor.uri('boats.spread') })).toBeNull();
    expect(await editor.plans('boats.spread')).toEqual([]);
    expect(await editor.plans(path)).toEqual(['morning', 'breeze']);
});
