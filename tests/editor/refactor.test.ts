import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { URI } from 'langium';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, CreateFile, TextDocumentEdit } from 'vscode-languageserver-protocol';
import { format } from '../../language/src/editor/format.ts';
import { inFull } from '../../language/src/plan/analyse/in-full.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { figuresJson } from '../../language/src/reports/figures.ts';
import { checkAll } from '../../language/src/rules/check.ts';
import { apply, capable, type Editor, editorOver, type Files } from './client.ts';
import { boats, plan, tackle, withCrLf } from './team.ts';

const able = {
    ...capable,
    workspace: {
        ...capable.workspace,
        workspaceEdit: { documentChanges: true, resourceOperations: ['create' as const] },
    },
    textDocument: {
        ...capable.textDocument,
        codeAction: { ...capable.textDocument?.codeAction, disabledSupport: true },
    },
};

const examples = join(import.meta.dirname, '../../examples');
const example: Files = Object.fromEntries(
    readdirSync(examples, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.spread'))
        .map((name) => [name, readFileSync(join(examples, name), 'utf8')]),
);

const path = 'plans/march.spread';
const own = `
/** As it is fished from the other side. */
spread mirrored "Mirrored" like breeze {
    // The sun is low.
    swap port short corner with starboard short corner  // both rods
    starboard short rigger {
        no clip
        // wave five was empty
        back wave 4 // for now
        drag { hooked 6.8 kg }
    }
    note "as on the second day"
    // nothing below
}

method plain "Plain" { loop 1 m  wait 4 s  set 5.5 kg }

spread by-method "By method" {
    boat petrel
    speed 8 kn
    sea 0.2 m
    method plain
    port short corner { outfit red  lure broom  back wave 2  clip 4 kg }
    starboard short rigger {
        outfit blue
        lure wick
        back wave 4
        clip 3 kg
        // slack for the drop
        loop 2 m
        drag { hooked 6.5 kg }
    }
}
`;
const files: Files = {
    'boats.spread': boats,
    'tackle.spread': tackle,
    [path]: format(plan + own, createServices()),
};

const crLf: Files = Object.fromEntries(Object.entries(files).map(([name, text]) => [name, withCrLf(text)]));

/** With the small team’s files. */
let editor: Editor;
const editors = new Map<Files, Editor>();
beforeAll(async () => {
    for (const team of [files, example, crLf])
        editors.set(team, await editorOver(team, { capabilities: able }));
    editor = editors.get(files)!;
});
afterAll(async () => {
    for (const each of editors.values()) await each.stop();
});

async function offered(at: string, mark: string, only = ['refactor'], from = editor): Promise<CodeAction[]> {
    const key = `${from.folder} ${at}`;
    if (!open.has(key)) await from.open(at);
    open.add(key);
    const { position } = from.at(at, mark, 1);
    return from.ask<CodeAction[]>('textDocument/codeAction', {
        ...from.whole(at),
        range: { start: position, end: position },
        context: { diagnostics: [], only },
    });
}
const open = new Set<string>();
const titles = async (at: string, mark: string, from = editor) =>
    (await offered(at, mark, undefined, from)).map(({ title, disabled }) =>
        disabled ? `(${title})` : title,
    );

/** All files as an action leaves them. */
async function done(at: string, mark: string, title: string, from: Files): Promise<Files> {
    const editor = editors.get(from)!;
    const action = (await offered(at, mark, undefined, editor)).find((each) => each.title === title);
    if (!action?.edit)
        throw new Error(`“${title}” is not offered: ${JSON.stringify(await titles(at, mark, editor))}`);
    const made: Record<string, string> = { ...from };
    const { changes = {}, documentChanges = [] } = action.edit;
    for (const each of documentChanges as (CreateFile | TextDocumentEdit)[]) {
        if ('kind' in each) made[editor.path(each.uri)] = '';
        else changes[each.textDocument.uri] = each.edits as never;
    }
    for (const [uri, edits] of Object.entries(changes)) {
        const name = editor.path(uri);
        made[name] = apply(made[name]!, edits);
    }
    return made;
}

/** Every figure of every plan of a team, by the name of the plan, and all that is found in it. */
async function figuresOf(team: Files): Promise<{ figures: Record<string, unknown>; faults: string[] }> {
    const root = '/team/';
    const loaded = await load(
        createServices(),
        Object.keys(team).map((name) => URI.file(root + name)),
        (uri) => {
            const text = team[uri.path.slice(root.length)];
            return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
        },
        [URI.file(root)],
    );
    const sheets = checkAll(loaded);
    const figures: Record<string, unknown> = {};
    for (const { plans } of sheets)
        for (const each of plans) {
            const { plans: told } = JSON.parse(
                figuresJson([{ path: 'a.spread', plans: [inFull(each, [])] }], ''),
            ) as { plans: object[] };
            // What a plan is like is how it is written, not what it is.
            figures[each.plan.name] = { ...told[0], like: [] };
        }
    const faults = sheets
        .flatMap(({ findings }) => findings.map(({ rule, what }) => `${rule}: ${what}`))
        .sort();
    return { figures, faults };
}

/** What a figure is of may be said by another name; its numbers are the same. */
async function expectSameFigures(before: Files, now: Files, except: readonly string[] = []): Promise<void> {
    const [was, is] = [await figuresOf(before), await figuresOf(now)];
    const judged = (faults: readonly string[]) =>
        faults.filter((each) => !except.some((rule) => each.startsWith(`${rule}:`)));
    expect(judged(is.faults)).toEqual(judged(was.faults));
    for (const [name, figures] of Object.entries(was.figures))
        expect(is.figures[name], name).toEqual(figures);
}

describe('flatten', () => {
    test('writes a plan out, with its comments, and keeps every figure', async () => {
        const now = await done(path, 'mirrored "Mirrored"', 'Flatten this plan', files);
        const text = now[path]!;
        const [, flat] = /(spread mirrored [\s\S]*?\n\}\n)/.exec(text)!;
        expect(flat).not.toContain('like');
        expect(flat).toMatch(/^spread mirrored "Mirrored" \{\n {4}boat petrel\n/);
        expect(flat).toContain('starboard short corner {\n        outfit red');
        expect(flat).not.toMatch(/swap|without|\bno clip/);
        for (const comment of ['// wave five was empty', '// for now', '// nothing below'])
            expect(flat).toContain(comment);
        // What is above it is still about it.
        expect(text).toContain('/** As it is fished from the other side. */\nspread mirrored');
        await expectSameFigures(files, now);
    });

    test.each([
        ['plans/blue-marlin.spread', 'bank-rough "Rough', 'Flatten this plan'],
        ['plans/blue-marlin.spread', 'bank-afternoon "Afternoon', 'Flatten this plan'],
    ])('of the example, %s at %s', async (at, mark, title) => {
        await expectSameFigures(example, await done(at, mark, title, example));
    });

    test('every definition of the example that is like another one can be written out', async () => {
        let count = 0;
        for (const [at, text] of Object.entries(example)) {
            if (at.includes('slips')) continue;
            for (const [whole, kind, name] of text.matchAll(/^(\w+) ([\w-]+)[^\n{]* like /gm)) {
                const title = kind === 'spread' ? 'Flatten this plan' : `Write this ${kind} out in full`;
                const now = await done(at, whole!.slice(kind!.length + 1), title, example);
                expect(now[at], name).not.toBe(text);
                // A waiver that was the preset’s is this plan’s now, and may be needed there alone.
                await expectSameFigures(example, now, ['waiver-idle']);
                count++;
            }
        }
        expect(count).toBeGreaterThan(10);
    }, 120_000);

    test('keeps CR LF', async () => {
        const now = await done(path, 'breeze "Fresh', 'Flatten this plan', crLf);
        expect(now[path]!.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        await expectSameFigures(crLf, now);
    });

    test('is refused where a name leads elsewhere, with the reason', async () => {
        await editor.open(
            'shadow.spread',
            `use "plans/march.spread"\nlure broom jet { length 100 mm }\nspread shaded like morning { }\n`,
        );
        open.add(`${editor.folder} shadow.spread`);
        const [action] = (await offered('shadow.spread', 'shaded')).filter(({ title }) =>
            title.startsWith('Flatten'),
        );
        expect(action?.disabled?.reason).toBe(
            'broom is another one in this file than where morning says it.',
        );
        await editor.close('shadow.spread');
    });
});

describe('make this a preset', () => {
    test('leaves the day in the plan, and the rest in a preset that it is like', async () => {
        const now = await done(path, 'morning "Quiet', 'Make this a preset', files);
        expect(now[path]).toContain(
            `/** Two hands, a quiet morning. */
spread morning "Quiet morning" like morning-preset {
    date 2026-03-02
    sea 0.2 m
}

spread morning-preset {
    boat petrel
    target white-marlin
    speed 8 kn`,
        );
        await expectSameFigures(files, now);
    });

    test('of a plan that is like another one keeps the row', async () => {
        const now = await done(path, 'mirrored "Mirrored"', 'Make this a preset', files);
        expect(now[path]).toContain('spread mirrored-preset like breeze {');
        expect(now[path]).toContain('// wave five was empty');
        await expectSameFigures(files, now);
    });

    test.each(['bank-settled "Settled', 'bank-rough "Rough', 'bank-afternoon "Afternoon'])(
        'of the example, at %s',
        async (mark) => {
            await expectSameFigures(
                example,
                await done('plans/blue-marlin.spread', mark, 'Make this a preset', example),
            );
        },
    );
});

describe('a method', () => {
    test('is extracted from a position, like the one that held there before', async () => {
        const now = await done(
            path,
            'starboard short rigger {\n        outfit blue',
            'Extract a method',
            files,
        );
        expect(now[path]).toContain(`method starboard-short-rigger-strike like plain {
    clip 3 kg
    // slack for the drop
    loop 2 m
    hooked 6.5 kg
}

spread by-method`);
        expect(now[path]).toContain('method starboard-short-rigger-strike\n    }');
        // What the new method wants is what is done, and nobody may have the other one any more.
        await expectSameFigures(files, now, ['method-mismatch', 'unused']);
    });

    test('is inlined into the positions that have it from the plan', async () => {
        const now = await done(path, 'method plain\n', 'Inline the method', files);
        const text = now[path]!.slice(now[path]!.indexOf('spread by-method'));
        expect(text).not.toContain('method plain');
        expect(text).toMatch(/port short corner \{[^}]*loop 1 m[^}]*wait 4 s[^}]*drag \{ set 5\.5 kg \}/);
        await expectSameFigures(files, now, ['method-mismatch', 'unused']);
    });

    test('that says more than a position can stays, with the reason', async () => {
        await editor.open(
            'more.spread',
            `use "plans/march.spread"\nspread more {\n    boat petrel\n    method soft\n    shotgun { outfit red }\n}\n`,
        );
        open.add(`${editor.folder} more.spread`);
        const [action] = (await offered('more.spread', 'method soft')).filter(
            ({ title }) => title === 'Inline the method',
        );
        expect(action?.disabled?.reason).toMatch(/^A position has no place for what soft says: .*style/);
        await editor.close('more.spread');
    });

    test('is not offered where nothing is said of a strike', async () => {
        expect(await titles(path, 'port long rigger {')).not.toContain('Extract a method');
    });
});

describe('move', () => {
    test('takes a definition to another file, with what is said above it and the `use` lines it wants', async () => {
        const now = await done('tackle.spread', 'broom "Broom"', 'Move to boats.spread', files);
        expect(now['tackle.spread']).not.toContain('lure broom');
        expect(now['tackle.spread']).not.toContain('Throws a long smoke trail');
        expect(now['boats.spread']).toMatch(
            /\/\*\* Throws a long smoke trail\. \*\/\nlure broom "Broom" pusher \{/,
        );
        // The plans say it, and reach it through the file that had it.
        expect(now['tackle.spread']).toContain('use "boats.spread"');
        await expectSameFigures(files, now);
    });

    test('brings along what it names itself', async () => {
        const now = await done('tackle.spread', 'soft "Soft', 'Move to boats.spread', files);
        expect(now['boats.spread']).toMatch(/^use "layback:methods"\n/);
        await expectSameFigures(files, now);
    });

    test('makes a file for it', async () => {
        const now = await done('tackle.spread', 'sliver "Sliver"', 'Move to a new file sliver.spread', files);
        expect(now['sliver.spread']).toMatch(/^lure sliver "Sliver" jet \{/);
        expect(now['tackle.spread']).toContain('use "layback:methods"\nuse "sliver.spread"');
        await expectSameFigures(files, now);
    });

    test('is not offered where it would lead in a circle, or there is one of the name', async () => {
        // Tackle is in use by the plans: what stays in the plan and is said there cannot come from a file that uses it.
        const all = await titles(path, 'plain "Plain"');
        expect(all).toContain('Move to ../tackle.spread');
        expect(await titles(path, 'mirrored "Mirrored"')).not.toContain('Move to ../tackle.spread');
    });

    test('any definition of the example to any file that is offered', async () => {
        let count = 0;
        for (const at of ['lures.spread', 'tackle.spread', 'methods.spread', 'plans/blue-marlin.spread']) {
            const names = [
                ...example[at]!.matchAll(
                    /^(?:lure|outfit|method|rod|reel|species|spread|line) ([\w-]+ "?[\w]*)/gm,
                ),
            ].slice(0, 4);
            for (const [, mark] of names) {
                const moves = (await titles(at, mark!, editors.get(example)!))
                    .filter((title) => title.startsWith('Move'))
                    .slice(0, 3);
                for (const title of moves) {
                    await expectSameFigures(example, await done(at, mark!, title, example));
                    count++;
                }
            }
        }
        expect(count).toBeGreaterThan(12);
    }, 180_000);
});

test('only what was asked for is offered, and on words that are about the whole', async () => {
    const kinds = (await offered(path, 'mirrored "Mirrored"', ['refactor.inline'])).map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(['refactor.inline']));
    expect(await offered(path, 'mirrored "Mirrored"', ['quickfix'])).toEqual([]);
    expect(await offered(path, 'wave five was empty')).toEqual([]);
});

test('a text that cannot be read to the end is offered none', async () => {
    await editor.open('half.spread', 'spread a like b {\n    speed\n');
    open.add(`${editor.folder} half.spread`);
    expect(await offered('half.spread', 'spread a')).toEqual([]);
    await editor.close('half.spread');
});
