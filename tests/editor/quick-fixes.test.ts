import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, Diagnostic, TextEdit } from 'vscode-languageserver-protocol';
import { apply, capable, type Editor, editorOver } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

async function actions(path: string, code: string, only?: string[], from = editor): Promise<CodeAction[]> {
    const diagnostics = (await from.diagnostics(path)).filter((each) => each.code === code);
    const { range } = diagnostics[0]!;
    return from.ask<CodeAction[]>('textDocument/codeAction', {
        ...from.whole(path),
        range,
        context: { diagnostics: diagnostics as Diagnostic[], ...(only && { only }) },
    });
}

async function mended(path: string, text: string, code: string, title: string): Promise<string> {
    await editor.open(path, text);
    const action = (await actions(path, code)).find((each) => each.title.includes(title));
    if (!action) throw new Error(`Nothing called “${title}” is offered.`);
    return editor.applied(action.edit!)[path]!;
}

describe('did you mean', () => {
    test.each([
        ['a word', 'spread a { sped 8 kn }\n', 'unknown-word', 'speed', 'spread a { speed 8 kn }\n'],
        [
            'a name',
            'lure tin jet { }\nspread a { shotgun { lure tan } }\n',
            'unknown-name',
            'tin',
            'lure tin jet { }\nspread a { shotgun { lure tin } }\n',
        ],
        ['a unit', 'spread a { speed 8 knts }\n', 'quantity', '8 kn', 'spread a { speed 8 kn }\n'],
        [
            'a rule',
            'spread a { waive stager because "x" }\n',
            'unknown-name',
            'stagger',
            'spread a { waive stagger because "x" }\n',
        ],
        ['a file', 'use "boat.spread"\n', 'use', 'boats.spread', 'use "boats.spread"\n'],
    ])('%s', async (_, text, code, title, expected) => {
        expect(await mended(`near-${title.replace(/\W/g, '')}.spread`, text, code, title)).toBe(expected);
    });

    test('or the file that is named and not there is made, where the editor makes files', async () => {
        const workspace = {
            workspaceEdit: { documentChanges: true, resourceOperations: ['create' as const] },
        };
        const makes = await editorOver(team, { capabilities: { ...capable, workspace } });
        const text = 'use "new/reels.spread"\n';
        await makes.open('plans/makes.spread', text);
        const made = (await actions('plans/makes.spread', 'use', undefined, makes)).find(({ title }) =>
            title.startsWith('Make '),
        );
        expect(made).toMatchObject({
            title: 'Make new/reels.spread',
            edit: {
                documentChanges: [{ kind: 'create', uri: makes.uri('plans/new/reels.spread') }],
            },
        });
        await makes.write('plans/new/reels.spread', '', true);
        expect(await makes.findings('plans/makes.spread')).toEqual([]);
        await makes.stop();
        await editor.open('plans/makes.spread', text);
        const others = await actions('plans/makes.spread', 'use');
        expect(others.filter(({ title }) => title.startsWith('Make '))).toEqual([]);
        await editor.close('plans/makes.spread');
    });

    test('the one right spelling is preferred, and stands for its finding', async () => {
        await editor.open('sped.spread', 'spread a { sped 8 kn }\n');
        const [action] = await actions('sped.spread', 'unknown-word');
        expect(action).toMatchObject({
            isPreferred: true,
            kind: 'quickfix',
            diagnostics: [{ code: 'unknown-word' }],
        });
    });

    test.each([
        ['a day that is not in the calendar', 'spread a { date 2026-02-30 }\n', 'value'],
        ['one of two lines', 'spread a { speed 8 kn  speed 9 kn }\n', 'duplicate'],
        ['a line that finds no preset', 'spread a { no crew }\n', 'preset-idle'],
    ])('what decides about %s is offered, and not preferred', async (_, text, code) => {
        await editor.open(`decides-${code}.spread`, text);
        const [action] = await actions(`decides-${code}.spread`, code);
        expect(action?.edit).toBeDefined();
        expect(action).not.toHaveProperty('isPreferred');
    });

    test('in its place, with CR LF and letters of two units', async () => {
        const text = withCrLf('/* 🐟🐟 */ spread a "🎣" {\n    note "𝒜"  sped 8 kn\n}\n');
        expect(await mended('odd.spread', text, 'unknown-word', 'speed')).toBe(text.replace('sped', 'speed'));
    });
});

describe('what is taken out leaves nothing behind', () => {
    test('neither an empty line', async () => {
        const text = 'spread a {\n    speed 8 kn\n    speed 9 kn\n    crew 2\n}\n';
        expect(await mended('twice.spread', text, 'duplicate', 'Take this one out')).toBe(
            text.replace('    speed 9 kn\n', ''),
        );
    });
    test('nor blanks between neighbours', async () => {
        const text = 'spread a { speed 8 kn  speed 9 kn  crew 2 }\n';
        expect(await mended('inline.spread', text, 'duplicate', 'Take this one out')).toBe(
            'spread a { speed 8 kn  crew 2 }\n',
        );
    });
    test('nor half a line end', async () => {
        const text = withCrLf('use "boats.spread"\nuse "boats.spread"\n');
        expect(await mended('ends.spread', text, 'use', 'Take')).toBe(withCrLf('use "boats.spread"\n'));
    });
});

describe('findings of rules', () => {
    const crowded = plan.replace('back wave 4 }', 'back 29 m }');

    test('are mended as they themselves say', async () => {
        await editor.open('plans/face.spread', crowded);
        expect(await editor.findings('plans/face.spread')).toEqual([expect.stringContaining('wave-face')]);
        const [first] = await actions('plans/face.spread', 'wave-face');
        const text = editor.applied(first!.edit!)['plans/face.spread']!;
        await editor.open('plans/mended.spread', text);
        expect(await editor.findings('plans/mended.spread')).toEqual([]);
    });

    test('are waived with a reason, the caret where it goes', async () => {
        const text = await mended('plans/waived.spread', crowded, 'wave-face', 'Waive');
        expect(text).toBe(
            crowded.replace(
                /\}\n\n\/\*\* When/,
                '    waive wave-face on starboard short rigger because "$1"\n}\n\n/** When',
            ),
        );
        await editor.open('plans/reason.spread', text.replace('$1', 'looked good on Tuesday'));
        expect(await editor.findings('plans/reason.spread')).toEqual([]);
    });

    test('of the whole plan are waived for all of it, not on the first of its lines', async () => {
        await editor.open('plans/hands.spread', plan.replace('crew 2', 'crew 1'));
        const found = await actions('plans/hands.spread', 'crew');
        expect(found.map(({ title }) => title)).toEqual(['Waive crew for the whole plan with a reason']);
        const text = editor.applied(found[0]!.edit!)['plans/hands.spread']!;
        expect(text).toContain('    waive crew because "$1"\n');
        await editor.open('plans/alone.spread', text.replace('$1', 'both lines come in on a strike'));
        expect((await editor.findings('plans/alone.spread')).join()).not.toContain('crew');
    });

    test('of a pair are waived between the two', async () => {
        const text = plan
            .replace('lure broom', 'lure sliver')
            .replace('lure sliver\n        back 45', 'lure broom\n        back 45');
        await editor.open('plans/size.spread', text);
        const titles = (await actions('plans/size.spread', 'size-order')).map(({ title }) => title);
        expect(titles.filter((each) => each.startsWith('Waive'))).toEqual([
            expect.stringMatching(/^Waive size-order between .* and .* with a reason$/),
        ]);
    });

    test('an editor that cannot place a caret gets an empty reason, and is told so', async () => {
        const plain = await editorOver(team, { capabilities: { ...capable, workspace: {} } });
        await plain.open('plans/face.spread', crowded);
        const action = (await actions('plans/face.spread', 'wave-face', undefined, plain)).find(({ title }) =>
            title.startsWith('Waive'),
        )!;
        const text = plain.applied(action.edit!)['plans/face.spread']!;
        expect(text).toContain('because ""\n}');
        await plain.open('plans/after.spread', text);
        expect((await plain.findings('plans/after.spread')).join()).toContain('gives no reason');
        await plain.stop();
    });

    test('in a plan on one line the waiver gets lines of its own', async () => {
        const text =
            'use "boats.spread"\nuse "tackle.spread"\nspread one { boat petrel  speed 8 kn  port long rigger { outfit red  lure wick  back 29 m } }\n';
        const after = await mended('one.spread', text, 'wave-face', 'Waive');
        expect(after).toMatch(/ \} \n {4}waive wave-face on port long rigger because "\$1"\n\}\n$/);
    });

    test('about the text, or about a whole file, are not waived', async () => {
        const texts = {
            'unknown-word': 'spread a { sped 8 kn }\n',
            unused: 'spread a { crew 2 }\nlure b jet { }\n',
        };
        for (const [code, text] of Object.entries(texts)) {
            await editor.open('text.spread', text);
            const titles = (await actions('text.spread', code)).map(({ title }) => title);
            expect(titles.filter((each) => each.startsWith('Waive'))).toEqual([]);
        }
    });
});

describe('all that is safe, at once', () => {
    const text =
        'use "boats.spread"\nuse "boats.spread"\nspread a { boat petrel  sped 8 kn }\nuse "boats.spread"\n';

    test('takes what changes no decision, and leaves the rest to the crew', async () => {
        await editor.open('safe.spread', text);
        const found = await actions('safe.spread', 'use', ['source.fixAll']);
        expect(found.map(({ kind }) => kind)).toEqual(['source.fixAll.layback']);
        expect(editor.applied(found[0]!.edit!)['safe.spread']).toBe(
            'use "boats.spread"\nspread a { boat petrel  sped 8 kn }\n',
        );
    });

    test('is offered where it is asked for alone', async () => {
        expect((await actions('safe.spread', 'use')).every(({ kind }) => kind === 'quickfix')).toBe(true);
        expect(await actions('safe.spread', 'use', ['refactor'])).toEqual([]);
    });

    test('happens on save for whoever wants that', async () => {
        const save = (from: Editor) =>
            from.ask<TextEdit[]>('textDocument/willSaveWaitUntil', {
                ...from.whole('safe.spread'),
                reason: 1,
            });
        expect(await save(editor)).toEqual([]);
        editor.settings = { fixOnSave: true };
        await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
        await expect.poll(() => save(editor)).not.toEqual([]);
        expect(apply(text, await save(editor))).toBe(
            'use "boats.spread"\nspread a { boat petrel  sped 8 kn }\n',
        );
    });
});
