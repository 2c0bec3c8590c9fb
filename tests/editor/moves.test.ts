import { afterAll, beforeAll, expect, test } from 'vitest';
import * as protocol from '../../language/src/editor/protocol.ts';
import { type Editor, editorOver } from './client.ts';
import { boats, plan, tackle } from './team.ts';

const path = 'plans/march.spread';
const derived = `use "march.spread"

spread inside "Closer" like morning {
    speed 7.5 kn
    port long rigger { }
}

spread feet like morning {
    port short corner { back 42 ft }
    starboard short rigger { back 100 ft 6 in }
}

spread crossed like morning {
    swap port long rigger with starboard short rigger
}
`;
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({
        'boats.spread': boats,
        'tackle.spread': tackle,
        [path]: plan,
        'plans/like.spread': derived,
    });
    await editor.open(path);
    await editor.open('plans/like.spread');
});
afterAll(() => editor.stop());

const tried = (more: Partial<protocol.TryMove>) =>
    editor.ask<protocol.Trial | null>(protocol.tryMove.method, {
        uri: editor.uri(path),
        plan: 'morning',
        position: 'port short corner',
        astern: 20,
        ...more,
    });
const written = (more: Partial<protocol.MoveWanted>) =>
    editor.ask<protocol.MoveWritten | null>(protocol.writeMove.method, {
        uri: editor.uri(path),
        plan: 'morning',
        position: 'port short corner',
        astern: 20,
        ...more,
    });
const moves = async (of: string, name: string) => {
    const picture = await editor.ask<protocol.Picture>(protocol.picture.method, {
        uri: editor.uri(of),
        plan: name,
    });
    return new Map(picture.moves.map((move) => [move.position, move]));
};

test('a picture says where each lure runs and which faces it would snap to', async () => {
    const corner = (await moves(path, 'morning')).get('port short corner')!;
    expect(corner.counts).toBe('waves');
    expect(corner.faces.find(({ wave }) => wave === 2)!.astern).toBeCloseTo(corner.astern, 6);
    const rigger = (await moves(path, 'morning')).get('port long rigger')!;
    expect(rigger.counts).toBe('distance');
    expect(rigger.astern).toBeCloseTo(45, 6);
});

test('an author who counts waves keeps counting: the lure goes to the nearest face', async () => {
    const { faces } = (await moves(path, 'morning')).get('port short corner')!;
    const third = faces.find(({ wave }) => wave === 3)!.astern;
    const trial = (await tried({ astern: third + 1.5 }))!;
    expect(trial).toMatchObject({ text: 'back wave 3', wave: 3 });
    expect(trial.astern).toBeCloseTo(third, 6);
    expect(await after({ astern: third + 1.5 })).toBe(plan.replace('back wave 2', 'back wave 3'));
});

test('an author who measures keeps the unit and its decimals, and hears of the wave', async () => {
    const { faces } = (await moves(path, 'morning')).get('port long rigger')!;
    const { wave, astern } = faces.find((face) => face.astern > 50)!;
    const rigger = { position: 'port long rigger', astern };
    const trial = (await tried(rigger))!;
    expect(trial.wave).toBe(wave);
    expect(trial.text).toMatch(/^back \d+(\.\d)? m$/);
    expect(trial.astern).toBe(Number.parseFloat(trial.text.slice(5)));
    expect(await after(rigger)).toBe(plan.replace('back 45 m', trial.text));
    const feet = { uri: editor.uri('plans/like.spread'), plan: 'feet' };
    expect((await tried({ ...feet, astern: 20 * 0.3048 * 2 }))!.text).toBe('back 40 ft');
    const inches = { ...feet, position: 'starboard short rigger', astern: 99.75 * 0.3048 };
    expect((await tried(inches))!.text).toBe('back 99 ft 9 in');
});

test('between two faces a measured distance is free, and no wave is claimed', async () => {
    const trial = (await tried({ position: 'port long rigger', astern: 48.04 }))!;
    expect(trial.text).toBe('back 48 m');
    expect(trial.wave).toBeUndefined();
});

test('a plan that is like another one gets a distance of its own, and the other one keeps its', async () => {
    const like = 'plans/like.spread';
    const inside = { uri: editor.uri(like), plan: 'inside' };
    expect(await after({ ...inside, position: 'port long rigger', astern: 40 }, like)).toBe(
        derived.replace('port long rigger { }', 'port long rigger { back 40 m }'),
    );
    const corner = (await moves(like, 'inside')).get('port short corner')!;
    const second = corner.faces.find(({ wave }) => wave === 3)!.astern;
    expect(await after({ ...inside, astern: second }, like)).toBe(
        derived.replace(
            'port long rigger { }\n',
            'port long rigger { }\n    port short corner { back wave 3 }\n',
        ),
    );
});

test('what was tried is what the text then says, in a plan that swaps two positions too', async () => {
    const like = 'plans/like.spread';
    for (const [name, position] of [
        ['crossed', 'port long rigger'],
        ['crossed', 'starboard short rigger'],
        ['inside', 'starboard short rigger'],
        ['feet', 'starboard short rigger'],
        ['feet', 'port short corner'],
    ] as const) {
        const wanted = { uri: editor.uri(like), plan: name, position, astern: 40 };
        const before = editor.text(like);
        const trial = (await tried(wanted))!;
        const text = await after(wanted, like);
        await editor.edit(like, 0, before.length, text);
        const now = (await moves(like, name)).get(position)!;
        expect(now.astern, `${name}, ${position}`).toBeCloseTo(trial.astern, 6);
        await editor.edit(like, 0, text.length, before);
    }
});

test('figures, findings and turns follow what is tried, and nothing is written', async () => {
    const there = (await tried({ position: 'port long rigger', astern: 48, turns: true }))!;
    expect(there.findings.here.join('\n')).toMatch(/^Port long rigger/);
    expect(
        there.summary.rows.find(({ position }) => position === 'port long rigger')!.cells.join(),
    ).toContain('48 m');
    expect(there.svg).toMatch(/^<svg/);
    expect(there.turns).toMatch(/^Turns cleanly/);
    const back = (await tried({ position: 'port long rigger', astern: 45 }))!;
    expect(back.findings.gone).toEqual([]);
    expect(editor.text(path)).toBe(plan);
});

test('what cannot be moved is told apart from what can', async () => {
    expect(await tried({ position: 'centre shotgun' })).toBeNull();
    expect(await tried({ plan: 'nobody' })).toBeNull();
    for (const astern of [-3, 0, Number.MAX_VALUE, 1e9]) {
        const trial = await tried({ position: 'port long rigger', astern });
        if (trial) expect(trial.svg).toMatch(/^<svg/);
        else expect(await written({ position: 'port long rigger', astern })).toBeNull();
    }
    await editor.replace(path, 'back 45 m', 'back 45 m {');
    expect([...(await moves(path, 'morning')).keys()]).toEqual([]);
    await editor.replace(path, 'back 45 m {', 'back 45 m');
});

const swapped = (more: Partial<protocol.PositionWanted>) =>
    editor.ask<protocol.MoveWritten | null>(protocol.swapSides.method, {
        uri: editor.uri(path),
        plan: 'morning',
        position: 'port short corner',
        ...more,
    });
const gearOf = async (of: string, name: string) => {
    const { summary } = await editor.ask<protocol.Picture>(protocol.picture.method, {
        uri: editor.uri(of),
        plan: name,
    });
    return Object.fromEntries(summary.rows.map(({ position, cells }) => [position, cells[1]]));
};

test('a position changes sides with the one across, or alone where nothing is fished there', async () => {
    const alone = (await swapped({}))!;
    expect(editor.applied(alone.edit)[path]).toBe(
        plan.replace('    port short corner {', '    starboard short corner {'),
    );
    const both = plan.replace('starboard short rigger {', 'starboard long rigger {');
    await editor.edit(path, 0, plan.length, both);
    const before = await gearOf(path, 'morning');
    const text = editor.applied((await swapped({ position: 'port long rigger' }))!.edit)[path]!;
    await editor.edit(path, 0, both.length, text);
    expect(await gearOf(path, 'morning')).toMatchObject({
        'starboard long rigger': before['port long rigger'],
        'port long rigger': before['starboard long rigger'],
    });
    await editor.edit(path, 0, text.length, plan);
});

test('a plan that is like another one says swap, and what cannot be swapped is left alone', async () => {
    const both = plan.replace('starboard short rigger {', 'starboard long rigger {');
    await editor.edit(path, 0, plan.length, both);
    const like = 'plans/like.spread';
    const feet = { uri: editor.uri(like), plan: 'feet', position: 'port long rigger' };
    const before = await gearOf(like, 'feet');
    const text = editor.applied((await swapped(feet))!.edit)[like]!;
    expect(text).toContain('    swap port long rigger with starboard long rigger\n}');
    await editor.edit(like, 0, derived.length, text);
    expect((await gearOf(like, 'feet'))['port long rigger']).toBe(before['starboard long rigger']);
    await editor.edit(like, 0, text.length, derived);
    await editor.edit(path, 0, both.length, plan);
    // Half of it is said here, half in the plan that it is like.
    expect(await swapped({ ...feet, position: 'port short corner' })).toBeNull();
    expect(await swapped({ position: 'centre shotgun' })).toBeNull();
});

async function after(more: Partial<protocol.MoveWanted>, of = path): Promise<string> {
    const move = (await written(more))!;
    return editor.applied(move.edit)[of]!;
}
