import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
    type CompletionItem,
    CompletionItemKind,
    type CompletionList,
    type InsertReplaceEdit,
    type TextEdit,
} from 'vscode-languageserver-protocol';
import { apply, capable, type Editor, editorOver, positionAt } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

let files = 0;

/** What is offered where `‸` stands. */
async function items(
    marked: string,
    path = `plans/c${files++}.spread`,
    from = editor,
): Promise<CompletionItem[]> {
    const at = marked.indexOf('‸');
    const text = marked.replace('‸', '');
    await from.open(path, text);
    const list = await from.ask<CompletionList | null>('textDocument/completion', {
        ...from.whole(path),
        position: positionAt(text, at),
    });
    return [...(list?.items ?? [])].sort((a, b) => (a.sortText! < b.sortText! ? -1 : 1));
}
const labels = async (marked: string, path?: string) => (await items(marked, path)).map(({ label }) => label);

/** The text after one of the offers was taken. */
async function taken(marked: string, label: string, path = `plans/t${files++}.spread`): Promise<string> {
    const item = (await items(marked, path)).find((each) => each.label === label);
    if (!item) throw new Error(`${label} is not offered.`);
    const edit = item.textEdit as InsertReplaceEdit | TextEdit;
    const range = 'range' in edit ? edit.range : edit.replace;
    return apply(marked.replace('‸', ''), [{ range, newText: edit.newText }]);
}

const uses = 'use "layback:species"\nuse "../boats.spread"\nuse "../tackle.spread"\n';

describe('outside of any block', () => {
    test('definitions and `use`, nothing else', async () => {
        const offered = await labels('‸');
        expect(offered.slice(0, 3)).toEqual(['spread', 'use', 'boat']);
        expect(offered).toHaveLength(23);
        expect(offered.slice(18)).toEqual([
            'spread with four lines',
            'spread like another one',
            'boat with outriggers',
            'rules of an event',
            'log of a day',
        ]);
        expect(await labels('spread a { }\nlu‸\n')).toContain('lure');
    });

    test('heads behind a lure’s name, and what it may be like', async () => {
        expect(await labels(`${uses}lure mine "Mine" ‸`)).toEqual(
            expect.arrayContaining(['slant', 'jet', 'like']),
        );
        expect(await labels(`${uses}lure mine like ‸`)).toEqual(['broom', 'sliver', 'wick']);
        expect(await labels(`${uses}lure mine like br‸ { }`)).toContain('broom');
    });

    test('files for a `use`, those in use already left out', async () => {
        expect(await labels('use "../boats.spread"\nuse "‸"\n', 'plans/new.spread')).toEqual(
            expect.arrayContaining(['march.spread', '../tackle.spread', 'layback:species']),
        );
        expect(await labels('use "../boats.spread"\nuse "‸"\n', 'plans/new.spread')).not.toContain(
            '../boats.spread',
        );
        expect(await labels('use "../boats.spread"\nuse "‸"\n', 'plans/new.spread')).not.toContain(
            'new.spread',
        );
        expect(await taken('use "../t‸"\n', '../tackle.spread')).toBe('use "../tackle.spread"\n');
        expect(await taken('use "lay‸\n', 'layback:methods')).toBe('use "layback:methods\n');
    });
});

describe('in a block', () => {
    test('its properties, those that are not said yet', async () => {
        const offered = await labels(`${uses}spread a {\n    boat petrel\n    ‸\n    speed 8 kn\n}\n`);
        expect(offered).toEqual(expect.arrayContaining(['sea', 'crew', 'waive', 'target']));
        expect(offered).not.toContain('boat');
        expect(offered).not.toContain('speed');
        expect(await labels('boat b { ‸ }')).toContain('outriggers');
        expect(await labels('boat b { outriggers { ‸ } }')).toEqual([
            'length',
            'foot',
            'rise',
            'sweep',
            'halyards',
        ]);
        expect(await labels('boat b { outriggers { foot { ahead 3 m  ‸ } } }')).toEqual(['out', 'up']);
    });

    test('with places to fill in', async () => {
        expect(await taken('lure a jet { pu‸ }', 'pull')).toBe(
            `lure a jet { pull \${1:2.6 kg} at \${2:8 kn} }`,
        );
        expect(await taken('line a { ‸ }', 'material')).toMatch(/material \$\{1\|nylon,.*wire\|\}/);
        expect(await taken('boat b { ‸ }', 'outriggers')).toBe('boat b { outriggers {\n\t$0\n} }');
        expect(await taken('outfit a { ‸ }', 'tested')).toBe(
            `outfit a { tested \${1:2026-02-11} by "\${2:K.}" }`,
        );
        expect(await taken('‸', 'lure')).toMatch(/^lure \$\{1:name\} "\$\{2:Title\}" \$\{3\|slant,/);
    });

    test('as plain text for an editor that has none', async () => {
        const plain = await editorOver(team, { capabilities: { ...capable, textDocument: {} } });
        const offered = await items('lure a jet { pu‸ }', 'plans/plain.spread', plain);
        expect(offered.find(({ label }) => label === 'pull')?.textEdit).toMatchObject({ newText: 'pull ' });
        await plain.stop();
    });

    test('also behind a misspelt word, on its line and on the next', async () => {
        expect(await labels('spread a {\n    sped 8 kn\n    ‸\n}\n')).toContain('crew');
        expect(await labels('spread a { sped 8 kn  cr‸ }\n')).toContain('crew');
        expect(await labels('boat b {\n    outrigers { length 2 m }\n    be‸\n}\n')).toContain('beam');
    });

    test('also where braces are still missing', async () => {
        expect(await labels('spread a {\n    port long rigger {\n        ‸')).toContain('lure');
        expect(await labels('spread a {\n    port long rigger {\n        lure\n    ‸')).toContain('back');
        expect(await labels('spread a {\n    ‸\n\nspread b { }\n')).toContain('crew');
    });

    test('nothing in comments, titles and numbers', async () => {
        expect(await labels('spread a { // sp‸\n}')).toEqual([]);
        expect(await labels('spread a { /* sp‸ */ }')).toEqual([]);
        expect(await labels('spread a "sp‸" { }')).toEqual([]);
        expect(await labels('spread a { crew 1‸0 }')).toEqual([]);
    });
});

describe('positions', () => {
    test('those that the plan does not have yet', async () => {
        const offered = await labels(`${uses}spread a {\n    port long rigger { }\n    ‸\n}\n`);
        expect(offered).toContain('starboard long rigger');
        expect(offered).not.toContain('port long rigger');
    });

    test('the rest of one that has begun', async () => {
        expect(await labels(`${uses}spread a {\n    port ‸\n}\n`)).toEqual(
            expect.arrayContaining(['long rigger', 'short corner', 'squid chain']),
        );
        expect(await labels(`${uses}spread a {\n    port long ‸\n}\n`)).toEqual(['corner', 'rigger']);
        expect(await taken('spread a {\n    port long ri‸\n}\n', 'rigger')).toBe(
            'spread a {\n    port long rigger {\n\t$0\n}\n}\n',
        );
    });

    test('what the preset has comes first where it can be changed', async () => {
        const offered = await items(`${plan}spread c like morning {\n    ‸\n}\n`);
        expect(
            offered
                .slice(0, 3)
                .map(({ label }) => label)
                .sort(),
        ).toEqual(['port long rigger', 'port short corner', 'starboard short rigger']);
        expect(offered[0]!.detail).toMatch(/preset/);
    });

    test('where one is spoken of, those that the plan has', async () => {
        const has = ['port long rigger', 'port short corner', 'starboard short rigger'];
        for (const line of ['without ', 'waive wash on ', 'order set ', 'swap port long rigger with ']) {
            expect((await labels(`${plan}spread c like morning {\n    ${line}‸\n}\n`)).sort()).toEqual(has);
        }
        expect((await labels(plan.replace('crew 2', 'fallback "x" { drop ‸ }'))).sort()).toEqual(has);
    });

    test('also those that the boat has on top', async () => {
        expect(await labels('boat b { position tower { up 6 m } }\nspread a { boat b  ‸ }')).toContain(
            'centre tower',
        );
    });
});

describe('behind what is said on a line', () => {
    const spread = (line: string) => plan.replace('crew 2', line);

    test('nothing else begins where every property has a line of its own', async () => {
        expect(await labels(spread('speed 8 kn ‸'))).toEqual([]);
        expect(await labels(spread('speed 8 kn  cr‸'))).toContain('crew');
        expect(await labels(spread('waive wash u‸'))).not.toContain('under');
        expect(await labels(spread('waive wash ‸'))).toEqual(['because', 'between', 'on', 'until']);
        expect(await labels(spread('waive wash on port long rigger ‸'))).toEqual(['because', 'until']);
    });

    test('on one line with its block, what fits beside it; behind a waiver only once it has its reason', async () => {
        expect(await labels('spread a { waive wash ‸ }')).toEqual(['because', 'between', 'on', 'until']);
        const behind = await labels('spread a { waive wash because "flat calm" ‸ }');
        expect(behind).toEqual(expect.arrayContaining(['until', 'crew', 'port long rigger']));
    });

    test('in a log the positions of its plans; every one where it names none', async () => {
        const log = (put: string) => `${plan}log 2026-03-14 {\n    ${put}\n    at 07:40 bite ‸\n}\n`;
        const has = ['port long rigger', 'port short corner', 'starboard short rigger'];
        const positions = (offered: readonly string[]) =>
            offered.filter((each) => /^(port|starboard|centre|shotgun)/.test(each)).sort();
        expect(positions(await labels(log('using morning')))).toEqual(has);
        expect(positions(await labels(log('')))).toContain('shotgun');
    });

    test('in a log the positions of the plan of the hour, with what they tow', async () => {
        const log = (at: string) =>
            `${plan}log 2026-03-14 {\n    using morning from 07:00\n    using breeze from 11:30\n    at ${at} bite ‸\n}\n`;
        const positions = async (at: string) =>
            Object.fromEntries(
                (await items(log(at)))
                    .filter(({ label }) => /^(port|starboard|centre|shotgun)/.test(label))
                    .map(({ label, detail }) => [label, detail]),
            );
        expect(await positions('09:10')).toEqual({
            'port short corner': 'Tows broom',
            'starboard short rigger': 'Tows wick',
            'port long rigger': 'Tows sliver',
        });
        expect(Object.keys(await positions('12:10')).sort()).toEqual([
            'port short corner',
            'starboard short rigger',
        ]);
    });

    test('in a log lures of the plan before others, with where they run', async () => {
        const offered = await items(
            `${plan}lure spare-one "Spare" jet { length 200 mm }\nlog 2026-03-14 {\n    using breeze from 07:00\n    at 07:40 bite lure ‸\n}\n`,
        );
        expect(offered.map(({ label }) => label).slice(0, 2)).toEqual(['broom', 'wick']);
        expect(offered[0]!.detail).toMatch(/^port short corner · /);
        expect(offered.map(({ label }) => label)).toEqual(expect.arrayContaining(['sliver', 'spare-one']));
        expect(offered.map(({ label }) => label)).not.toContain('white-marlin');
    });

    test('in a log the fish named above, then the plan’s target, before all others', async () => {
        const marked = `${plan}log 2026-03-14 {
    using morning from 07:00
    at 07:40 bite hooked released mahi
    at 08:10 bite hooked released ‸
}
`;
        const fish = (await items(marked)).filter(({ kind }) => kind === CompletionItemKind.Reference);
        expect(fish.slice(0, 2).map(({ label }) => label)).toEqual(['mahi', 'white-marlin']);
        expect(fish.length).toBeGreaterThan(5);
    });

    test('in a log an event is put together word by word', async () => {
        const opening = await editorOver(team, { options: { commands: ['editor.action.triggerSuggest'] } });
        const log = (put: string) => `${plan}log 2026-03-14 {\n    using morning from 07:00\n    ${put}\n}\n`;
        const offered = async (put: string, label: RegExp) =>
            (await items(log(put), `plans/e${files++}.spread`, opening)).find((each) =>
                label.test(each.label),
            )!;
        const suggest = { command: 'editor.action.triggerSuggest' };
        const at = await offered('‸', /^at$/);
        expect(at).toMatchObject({ textEdit: { newText: 'at $1' }, command: suggest });
        const now = await offered('at ‸', /^\d\d:\d\d$/);
        expect(now).toMatchObject({ textEdit: { newText: `${now.label} ` }, command: suggest });
        expect((await offered('using breeze from ‸', /^\d\d:\d\d$/)).command).toBeUndefined();
        await opening.stop();
    });

    test('behind `at` the time that it is in the log’s zone, and that of the event above', async () => {
        const marked = (zone: string) => `log 2026-03-14 {\n    ${zone}\n    at 03:33 raise\n    at ‸\n}\n`;
        const minutes = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
        const before = Date.now();
        const [now, above] = await items(marked('zone "+10:00"'));
        const after = Date.now();
        const there = (at: number) => (Math.floor(at / 60_000) + 600) % 1440;
        expect(now!.detail).toBe('Now, in the log’s zone');
        expect([there(before), there(after)]).toContain(minutes(now!.label));
        expect(above).toMatchObject({ label: '03:33', detail: 'As the event above' });
        expect((await items(marked('')))[0]!.detail).toBe('Now');
    });

    test('no text in quotes where a setting takes a word', async () => {
        expect((await labels('rules r { rule stagger { severity ‸ } }')).sort()).toEqual([
            'error',
            'hint',
            'off',
            'warning',
        ]);
    });

    test('a pack is not offered to itself', async () => {
        const offered = await labels('rules r { written ‸ }\nrules s { }\n');
        expect(offered).toContain('s');
        expect(offered).not.toContain('r');
    });

    test('what acts on a preset, where there is one', async () => {
        const acting = ['without', 'swap', 'no'];
        const offered = await labels('spread a {\n    ‸\n}\n');
        expect(offered.filter((each) => acting.includes(each))).toEqual([]);
        expect(await labels('spread a {\n    no ‸\n}\n')).toEqual([]);
        expect(await labels('spread a {\n    port shotgun { }\n    without ‸\n}\n')).toEqual([]);
        const like = await labels(`${plan}spread c like morning {\n    ‸\n}\n`);
        expect(like).toEqual(expect.arrayContaining(['without', 'swap']));
        expect(await labels(`${plan}spread c like morning {\n    no ‸\n}\n`)).not.toContain('without');
    });
});

describe('gear', () => {
    const line = (put: string) =>
        plan.replace('starboard short rigger { outfit blue  lure wick', `starboard short rigger { ${put}`);

    test('what no other line of the plan has', async () => {
        expect(await labels(line('outfit ‸'))).toEqual(['blue']);
        expect(await labels(line('outfit blue  lure ‸'))).toEqual(['wick']);
        expect(await labels(line('lure w‸ick'))).toEqual(['wick']);
    });

    test('what the preset’s lines have is taken too', async () => {
        expect(
            await labels(`${plan}spread c like morning {\n    starboard short rigger { outfit ‸ }\n}\n`),
        ).toEqual(['blue']);
    });

    test('of its own kind, with its title and file', async () => {
        expect(await items(`${uses}spread a { boat ‸ }`)).toMatchObject([
            { label: 'petrel', detail: 'Petrel · boats.spread' },
        ]);
        expect(await labels(`${uses}spread a { target white‸ }`)).toContain('white-marlin');
        expect(await labels(`${uses}outfit a { line ‸ }`)).toEqual(
            expect.arrayContaining(['nylon', 'braid']),
        );
    });

    test('the team’s own before the library’s', async () => {
        expect((await labels(`${uses}spread a { method ‸ }`))[0]).toBe('soft');
    });
});

describe('behind a number', () => {
    test('the units of what is measured', async () => {
        expect(await labels('spread a { speed 8 ‸ }')).toEqual(expect.arrayContaining(['kn', 'm/s', 'mph']));
        expect((await labels('spread a { speed 8 ‸ }')).filter((each) => each === 'kg')).toEqual([]);
        expect(await labels('lure a jet { pull 2 k‸ }')).toEqual(['kg', 'g', 'N', 'lb', 'oz']);
        expect(await labels('lure a jet { pull 2 kg at 8 ‸ }')).toContain('kn');
        expect(await labels('outfit a { drag { set 27 ‸ } }')).toContain('%');
        expect(await labels('reel a { capacity 800 m of 0.7 ‸ }')).toContain('mm');
        expect(await labels('rules r { rule stagger { sway 5 ‸ } }')).toEqual(['deg']);
    });

    test('with a blank where none was typed, and what it comes to', async () => {
        expect(await taken('spread a { turn within 90‸ }', 'm')).toBe('spread a { turn within 90 m }');
        const [metre] = await items('spread a { turn within 90 ‸ }');
        expect(metre).toMatchObject({ label: 'm', detail: '90 m (295 ft)' });
    });

    test('no unit where things are counted', async () => {
        expect(await labels('spread a { crew 3 ‸ }')).not.toContain('m');
        expect(await labels('spread a { port long rigger { back wave 3 ‸ } }')).not.toContain('m');
    });

    test('the next property, on the same line too', async () => {
        expect(await labels('spread a { speed 8 kn  ‸ }')).toContain('crew');
        expect(await labels('spread a { speed 8 kn  ‸ }')).not.toContain('kn');
    });
});

describe('words', () => {
    test.each([
        ['choices', 'line a { material ‸ }', ['nylon', 'fluorocarbon', 'polyester', 'braid', 'wire']],
        [
            'where a line is towed from',
            `${uses}spread a { boat petrel  port long rigger { from ‸ } }`,
            ['flat clip', 'halyard 1', 'halyard 2', 'rod tip', 'bridge'],
        ],
        ['a wave, or a distance', 'spread a { port long rigger { back ‸ } }', ['wave']],
        ['severities', 'rules r { rule stagger { severity ‸ } }', ['error', 'warning', 'hint', 'off']],
        ['settings', 'rules r { rule stagger { ‸ } }', ['severity', 'sway']],
        ['what a waiver goes on with', 'spread a { waive wash ‸ }', ['on', 'between', 'because', 'until']],
        [
            'what happened',
            'log 2026-03-02 { at 07:10 ‸ }',
            ['raise', 'bite', 'hooked', 'released', 'port long rigger'],
        ],
        ['the list of classes', 'rules r { class ‸ }', ['among']],
    ])('%s', async (_, marked, expected) => {
        expect(await labels(marked)).toEqual(expect.arrayContaining(expected));
    });

    test('every rule by its name, with what it says', async () => {
        const offered = await items('spread a { waive ‸ }');
        expect(offered.length).toBeGreaterThan(25);
        expect(offered.find(({ label }) => label === 'size-order')).toMatchObject({
            detail: 'layout',
            documentation: { value: expect.stringContaining('larger lure') },
        });
        expect(await labels('rules r { rule dr‸ }')).toContain('drag-over-class');
    });

    test('what `no` can take away is what the preset says', async () => {
        const offered = await labels(`${plan}spread c like morning {\n    no ‸\n}\n`);
        expect(offered).toEqual(expect.arrayContaining(['date', 'sea', 'turn']));
        expect(offered).not.toContain('weather');
    });

    test('a number as the language’s own example has it', async () => {
        expect(await items('spread a { speed ‸ }')).toMatchObject([
            { label: '8 kn', detail: 'For instance: speed 8 kn' },
        ]);
    });

    test.each([
        ['spread a { turn within ‸ }', '90 m'],
        ['spread a { port long rigger { from halyard ‸ } }', '2'],
        ['rules r { class among ‸ }', '15 kg'],
        ['spread a { port long rigger { back wave ‸ } }', '3'],
    ])('in %s too', async (marked, number) => {
        expect(await labels(marked)).toEqual([number]);
    });

    test('today, where a day is wanted', async () => {
        const today = () => new Intl.DateTimeFormat('sv-SE').format(new Date());
        const before = today();
        for (const marked of [
            'spread a { date ‸ }',
            'spread a { waive wash because "x" until ‸ }',
            'log ‸',
        ]) {
            const [first] = await items(marked);
            expect([before, today()]).toContain(first?.label);
            expect(first?.detail).toBe('Today');
        }
    });
});

test('as many halyards as a boat has', async () => {
    const boat = 'boat b { outriggers { halyards 3 m, 5 m, 6 m } }\n';
    const offered = await labels(`${boat}spread a { boat b  port long rigger { from ‸ } }`);
    expect(offered.filter((each) => each.startsWith('halyard'))).toEqual([
        'halyard 1',
        'halyard 2',
        'halyard 3',
    ]);
});

describe('whole definitions to begin with', () => {
    const labelsOfAll = [
        'spread with four lines',
        'spread like another one',
        'boat with outriggers',
        'rules of an event',
        'log of a day',
    ];

    test.each(labelsOfAll)('%s reads as it stands, and the formatter leaves it alone', async (label) => {
        const path = `plans/whole${files++}.spread`;
        const put = (await taken('‸\n', label, path))
            .replace(/\$\{\d+:([^}]*)\}/g, '$1')
            .replaceAll('\t', '    ');
        expect(put).not.toContain('$');
        await editor.edit(path, 0, editor.text(path).length, put);
        const faults = (await editor.diagnostics(path)).filter(({ severity }) => severity === 1);
        expect(faults.filter(({ code }) => code !== 'unknown-name')).toEqual([]);
        const edits = await editor.ask<TextEdit[]>('textDocument/formatting', {
            ...editor.whole(path),
            options: { tabSize: 4, insertSpaces: true },
        });
        expect(apply(put, edits)).toBe(put);
    });

    test('nowhere but where a definition begins', async () => {
        expect(await labels('spread a {\n    ‸\n}\n')).not.toContain('boat with outriggers');
        expect(await labels('// ‸\n')).toEqual([]);
    });

    test('as they stand for an editor that has no places to fill in', async () => {
        const plain = await editorOver(team, { capabilities: { ...capable, textDocument: {} } });
        const offered = await items('‸', 'plans/plain.spread', plain);
        const { textEdit } = offered.find(({ label }) => label === 'spread like another one')!;
        expect(textEdit?.newText).toContain('spread rough-day "Rough day" like saturday {');
        await plain.stop();
    });
});

test('the whole word is replaced, with CR LF and letters of two units', async () => {
    const marked = withCrLf('/* 🐟🐟 */ spread a "🎣" {\n    note "𝒜"  sp‸ed 8 kn\n}\n');
    expect(await taken(marked, 'speed')).toBe(marked.replace('sp‸ed', `speed \${1:8 kn}`));
});

describe('in a day', () => {
    const inDay = (line: string) => labels(`spread calm { }\nday a {\n    ${line}\n}\n`);

    test('what a line may begin with, and what goes on in it', async () => {
        expect(await inDay('‸')).toEqual(['date', 'from', 'when', 'until', 'note']);
        expect(await inDay('when ‸')).toEqual(['light', 'sea', 'wind']);
        expect(await inDay('when sea ‸')).toEqual(['over', 'under']);
        expect(await inDay('when light ‸')).toEqual(['dawn', 'bright', 'overcast', 'dusk', 'dark']);
        expect(await inDay('from 06:00 fish ‸')).toEqual(['calm']);
    });

    test('units of a sea and of a wind', async () => {
        expect(await inDay('when sea over 1 ‸')).toEqual(expect.arrayContaining(['m', 'ft']));
        const wind = await inDay('when wind over 1 ‸');
        expect(wind).toContain('kn');
        expect(wind).not.toContain('m');
    });
});
