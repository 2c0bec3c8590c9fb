import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import { builtInText, commands } from '../../language/src/editor/protocol.ts';
import { capable, covered, type Editor, editorOver } from './client.ts';
import { plan, tackle, team, withCrLf } from './team.ts';

const path = 'plans/march.spread';
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
    await editor.open(path);
});
afterAll(() => editor.stop());

async function hovered(
    mark: string,
    by = 0,
    at = path,
    from = editor,
): Promise<{ told: string; over: string } | undefined> {
    const hover = await from.ask<Hover | null>('textDocument/hover', from.at(at, mark, by));
    return hover
        ? { told: (hover.contents as MarkupContent).value, over: covered(from.text(at), hover.range!) }
        : undefined;
}
const told = async (...asked: Parameters<typeof hovered>) => (await hovered(...asked))?.told ?? '';

describe('a position tells', () => {
    test('what runs there and what it comes to, each with who decided', async () => {
        const { told, over } = (await hovered('port short corner', 6))!;
        expect(over).toBe('port short corner');
        expect(told).toContain('**Port short corner** · Quiet morning');
        expect(told).toContain('| Back | wave 2 = 12.9 m (42 ft) | said here |');
        expect(told).toContain('| From | flat clip, 1 m (3.3 ft) up | the usual |');
        expect(told).toContain('| Pull | 2.4 kg (5.3 lb) | measured |');
        expect(told).toMatch(/\| Wave \| 2, front face, lower third \| holds from [\d.]+ kn to [\d.]+ kn \|/);
    });

    test('drags as shares of class, and down the spool', async () => {
        const said = await told('port short corner');
        expect(said).toContain('| Hooked | 7 kg (15 lb), 29 % of class | outfit red |');
        expect(said).toContain('| Line left | Set | Hooked | Full |');
        expect(said).toContain('| 50 % | 7.6 kg (17 lb), 32 % |');
    });

    test('the method over the outfit, and the position over both', async () => {
        const decided = plan
            .replace('turn within 90 m', 'method soft')
            .replace('clip 4 kg', 'clip 4 kg\n        drag { hooked 5 kg }');
        await editor.open('plans/decided.spread', decided);
        const said = await told('port short corner', 0, 'plans/decided.spread');
        expect(said).toMatch(/\| Set \| 2\.4 kg .* \| method soft \|/);
        expect(said).toMatch(/\| Hooked \| 5 kg .* \| said here \|/);
        expect(said).toMatch(/\| Full \| 8 kg .* \| outfit red \|/);
    });

    test('what a plan took over, where it is only spoken of too', async () => {
        await editor.open(
            'plans/order.spread',
            plan.replace(
                '    without',
                '    order set port short corner, starboard short rigger\n    without',
            ),
        );
        const said = await told('order set port short', 12, 'plans/order.spread');
        expect(said).toContain('Fresh breeze');
        expect(said).toContain('| Outfit | Red | as in morning |');
    });

    test('what is not known, and why', async () => {
        await editor.open('plans/bare.spread', 'spread bare { shotgun { back wave 3 } }\n');
        expect(await told('shotgun', 2, 'plans/bare.spread')).toMatch(
            /Not known: .*The plan has no `speed`\./,
        );
    });
});

test('an editor that opens documents is led to how figures are computed; one that does not is not', async () => {
    const link = '(command:layback.openGuide?%5B%22figures%22%5D)';
    const opening = await editorOver(team, { options: { commands: Object.values(commands) } });
    expect(await told('port short corner', 6, path, opening)).toContain(link);
    expect(await told('petrel', 1, path, opening)).not.toContain(link);
    expect(await told('holder port corner', 10, 'boats.spread', opening)).not.toContain(link);
    await opening.stop();
    expect(await told('port short corner', 6)).not.toContain('command:');
});

describe('a number tells', () => {
    test('metres behind a wave, the wave behind metres', async () => {
        expect(await hovered('wave 4', 5)).toEqual({ told: '**Wave 4** · 34.7 m (114 ft)', over: '4' });
        expect(await told('45 m', 3)).toMatch(/^\*\*45 m \(148 ft\)\*\* · wave 5, front lower/);
    });

    test('itself in the other system, and what it is for', async () => {
        await editor.open('tackle.spread');
        expect(await hovered('arbor 48 mm', 7, 'tackle.spread')).toEqual({
            told: '**48 mm (1.9 in)** · arbor\n\nDiameter of the bare spool.',
            over: '48 mm',
        });
        expect(await told('class 24 kg', 7, 'tackle.spread')).toContain('The 24 kg class.');
    });

    test('the waves that a speed makes', async () => {
        expect(await told('speed 8 kn', 7)).toContain(
            'Waves 10.9 m (36 ft) apart, the first crest 6.3 m (21 ft) astern',
        );
    });
});

describe('a name tells', () => {
    test('what an outfit is, with its drags', async () => {
        const said = await told('outfit red', 8);
        expect(said).toContain('**Red** · outfit');
        expect(said).toContain('drag { set 6 kg hooked 7 kg full 8 kg }');
        expect(said).toContain('| Drag full | 8 kg (18 lb), 33 % of class |');
        expect(said).toContain('In tackle.spread, named 3 times.');
    });

    test('the author’s remark, and what it is like', async () => {
        expect(await told('lure broom', 6)).toContain('Throws a long smoke trail.');
        const said = await told('method soft', 8, 'tackle.spread');
        expect(said).toContain('**Soft strike** · method, like drop-back');
        expect(said).toMatch(/set 2\.4 kg[\s\S]*wait 3 s/);
    });

    test('a whole plan, resolved', async () => {
        const said = await told('spread breeze', 8);
        expect(said).toContain('**Fresh breeze** · like morning\n\nWhen it blows.');
        expect(said).toContain('| Starboard short rigger | Wick, plunger, 280 mm |');
        expect(said).not.toContain('Port long rigger');
    });

    test('a fish of the library', async () => {
        expect(await told('target white-marlin', 9)).toContain('In the built-in library');
    });
});

describe('a word tells', () => {
    test.each([
        ['a property', 'turn within', 1, '**turn** · spread'],
        ['its second word too', 'turn within', 6, '**turn** · spread'],
        ['a definition', 'spread morning', 2, '**spread**'],
    ])('what it means: %s', async (_, mark, by, expected) => {
        expect(await told(mark, by)).toContain(expected);
    });

    test('what holds where it is left out', async () => {
        await editor.open(
            'a.spread',
            'spread a { sway 4 deg  waive size-order because "x"  rule stagger { sway 5 deg } }\n',
        );
        expect(await told('sway 4', 1, 'a.spread')).toContain('Where it is left out: 4 deg (estimate).');
    });

    test('what a rule says, stands on and takes', async () => {
        const said = await told('size-order', 3, 'a.spread');
        expect(said).toContain('**size-order** · warning');
        expect(said).toContain('Common practice, no source.');
        expect(said).toContain('| slack | 15 mm |');
        expect(await told('rule stagger { sway', 16, 'a.spread')).toContain('**sway**');
    });

    test('what a file holds', async () => {
        expect(await told('"../boats.spread"', 4)).toContain('boat petrel');
        expect(await told('"layback:species"', 4)).toContain('species sailfish');
    });

    test('what `use` does, what a count counts, and which day of the week a date is', async () => {
        await editor.open(
            'c.spread',
            'use "boats.spread"\nspread c { crew 3  date 2026-02-14\n  waive wash because "x" until 2026-02-15 }\n',
        );
        expect(await told('use "', 1, 'c.spread')).toContain('**use**');
        expect(await told('crew 3', 5, 'c.spread')).toContain('**3** · crew');
        expect(await told('2026-02-14', 2, 'c.spread')).toMatch(
            /^\*\*Saturday,? 14 February 2026\*\* · date/,
        );
        const until = await told('2026-02-15', 2, 'c.spread');
        expect(until).toMatch(/^\*\*Sunday,? 15 February 2026\*\* · until/);
        expect(until).toContain('The last day');
    });

    test('nothing, where there is nothing to tell', async () => {
        await editor.open('b.spread', 'spread b {\n    sped 8 kn\n}\n');
        expect(await hovered('sped', 1, 'b.spread')).toBeUndefined();
        expect(await hovered('{\n', 0, 'b.spread')).toBeUndefined();
    });
});

test('an author’s own words cannot dress up as ours', async () => {
    await editor.open('odd.spread', 'lure x "| **bold** <b>" jet { }\nspread s { shotgun { lure x } }\n');
    expect(await told('lure x }', 5, 'odd.spread')).toContain('\\| \\*\\*bold\\*\\* \\<b\\>');
});

test('only the author’s units, for whoever wants that', async () => {
    editor.settings = { units: 'author' };
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(() => told('wave 4', 5)).toBe('**Wave 4** · 34.7 m');
    editor.settings = {};
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
});

test('plain text for an editor that shows no Markdown, CR LF and letters of two units included', async () => {
    const plain = await editorOver(team, { capabilities: { ...capable, textDocument: {} } });
    await plain.open('tackle.spread', withCrLf(`/* 🐟🐟 */ ${tackle}`));
    const said = await told('outfit red', 8, 'tackle.spread', plain);
    expect(said).not.toMatch(/[*|`]/);
    expect(said).toContain('Drag full  8 kg (18 lb), 33 % of class');
    await plain.stop();
});

test('a position tells what an estimate leaves open: pull, clip and bite between two figures', async () => {
    const unweighed = `lure unweighed "Unweighed" chugger { length 300 mm  head 40 mm  weight 250 g }\n`;
    const text = plan.replace('lure broom', 'lure unweighed').replace(/^spread /m, `${unweighed}spread `);
    await editor.open('plans/unweighed.spread', text);
    const said = await told('port short corner', 0, 'plans/unweighed.spread');
    expect(said).toMatch(/\| Pull \| \\~2\.2 kg .*\(1\.3 kg .* to 3\.6 kg .*\) \| estimate \|/);
    expect(said).toMatch(/\\~[\d.]+ \([\d.]+ to [\d.]+\) times the pull with surge/);
    expect(said).toMatch(/at most [\d.]+ kg [^|]*\([\d.]+ kg .* to [\d.]+ kg .*\) at the hook \(estimates\)/);
});

test('the document that it leads to is there to be read', async () => {
    const found = await editor.ask<{ text: string; languageId: string }>(builtInText.method, {
        uri: 'layback:/docs/figures.md',
    });
    expect(found.languageId).toBe('markdown');
    expect(found.text).toMatch(/^# How each figure is computed/);
    expect(await editor.ask(builtInText.method, { uri: 'layback:/docs/nothing.md' })).toBeNull();
    expect(await editor.ask(builtInText.method, { uri: 'layback:/starter/README.md' })).toBeNull();
});
