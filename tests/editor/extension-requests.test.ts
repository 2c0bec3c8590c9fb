import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver-protocol';
import * as protocol from '../../language/src/editor/protocol.ts';
import { folderOf, layback } from '../command/layback.ts';
import { readPdf } from '../drawing/card-pdf.ts';
import { apply, type Editor, editorOver, positionAt } from './client.ts';
import { plan, team } from './team.ts';

const root = join(import.meta.dirname, '../..');
const house = 'rules house "House" {\n    rule wash { severity hint }\n    rule stagger { sway 5 deg }\n}\n';
let editor: Editor;
const ask = <P, R>({ method }: protocol.Request<P, R>, params: P) => editor.ask<R>(method, params);

beforeAll(async () => {
    editor = await editorOver({ ...team, 'rules/house.spread': house });
});
afterAll(() => editor.stop());

test('every rule is listed with what it stands on, and the codes that are no rules', async () => {
    const rules = await ask(protocol.ruleList, {});
    expect(rules.find(({ name }) => name === 'stagger')).toMatchObject({
        group: 'layout',
        severity: 'warning',
        standing: expect.stringContaining('Physics'),
    });
    expect(rules.map(({ name }) => name)).toContain('syntax');
});

test('the starter files are those of the command', async () => {
    const files = await ask(protocol.starter, {});
    expect(files.map(({ path }) => path)).toContain('plans/first.spread');
    for (const { path, text } of files) {
        const source = join(root, 'language/src/command/starter', path.split('/').at(-1)!);
        expect(text).toBe(readFileSync(source, 'utf8'));
    }
});

describe('how grave a rule is for the team', () => {
    const written = async (rule: string, severity: protocol.Severity) => {
        const uri = editor.uri('rules/house.spread');
        const edit: WorkspaceEdit | null = await ask(protocol.ruleSeverity, {
            uri,
            name: 'house',
            rule,
            severity,
        });
        return editor.applied(edit!)['rules/house.spread'];
    };

    test('is told for each of the team’s rules', async () => {
        const said = await ask(protocol.teamRules, { rule: 'wash' });
        expect(said).toEqual([
            { uri: editor.uri('rules/house.spread'), name: 'house', title: 'House', severity: 'hint' },
        ]);
        expect(await ask(protocol.teamRules, { rule: 'crew' })).toEqual([
            expect.not.objectContaining({ severity: expect.anything() }),
        ]);
    });

    test('is written over what stands there, beside other settings, or anew', async () => {
        expect(await written('wash', 'off')).toBe(house.replace('severity hint', 'severity off'));
        expect(await written('stagger', 'error')).toMatch(/rule stagger \{ severity error +sway 5 deg \}/);
        expect(await written('crew', 'off')).toBe(
            house.replace(/\}\n$/, '    rule crew { severity off }\n}\n'),
        );
    });

    test('is not written where the rules are no more', async () => {
        const gone = {
            uri: editor.uri('gone.spread'),
            name: 'house',
            rule: 'wash',
            severity: 'off' as const,
        };
        expect(await ask(protocol.ruleSeverity, gone)).toBeNull();
    });
});

test('a finding is offered to be waived, all but its reason', async () => {
    const text = plan.replace('back wave 4 }', 'back 29 m }');
    await editor.open('plans/face.spread', text);
    const at = positionAt(text, text.indexOf('back 29'));
    const [offer] = await ask(protocol.waivers, {
        uri: editor.uri('plans/face.spread'),
        range: { start: at, end: at },
    });
    expect(offer).toMatchObject({ rule: 'wave-face', title: 'wave-face on starboard short rigger' });
    const put = `${offer!.before}looked good${offer!.after}`;
    await editor.open(
        'plans/waived.spread',
        apply(text, [{ range: { start: offer!.at, end: offer!.at }, newText: put }]),
    );
    expect(await editor.findings('plans/waived.spread')).toEqual([]);
});

describe('a deck card', () => {
    const wanted = (form: protocol.CardWanted['form'], more?: Partial<protocol.CardWanted>) => ({
        uri: editor.uri('plans/march.spread'),
        plan: 'morning',
        paper: 'a4' as const,
        form,
        ...more,
    });
    const printed = async (form: protocol.CardWanted['form'], more?: Partial<protocol.CardWanted>) => {
        const made = await ask(protocol.card, wanted(form, more));
        return { ...made!, bytes: Buffer.from(made!.content, 'base64') };
    };

    test.each(['html', 'svg', 'png'] as const)(
        'is byte for byte that of the command, as %s',
        async (form) => {
            const cwd = folderOf({ ...team, 'rules/house.spread': house });
            layback(['card', 'plans/march.spread', '-p', 'morning', '-o', `card.${form}`], { cwd });
            const { bytes, errors } = await printed(form);
            expect(bytes.equals(readFileSync(join(cwd, `card.${form}`)))).toBe(true);
            expect(errors).toBe(0);
        },
    );

    test('is a PDF of the paper that was asked for, which says what that of the command says', async () => {
        const cwd = folderOf({ ...team, 'rules/house.spread': house });
        layback(['card', 'plans/march.spread', '-p', 'morning', '--paper', 'letter'], { cwd });
        const ofCommand = await readPdf(new Uint8Array(readFileSync(join(cwd, 'plans/march-morning.pdf'))));
        const { bytes } = await printed('pdf', { paper: 'letter' });
        const read = await readPdf(new Uint8Array(bytes));
        expect(read).toEqual({ ...ofCommand, faces: read.faces });
        expect([read.pages[0]!.width, read.pages[0]!.height]).toEqual([612, 792]);
        expect(read.faces.map((name) => name.replace(/^.*\+/, '')).sort()).toEqual(
            ofCommand.faces.map((name) => name.replace(/^.*\+/, '')).sort(),
        );
    });

    test('is made of a text that nobody has saved, and says that it has errors', async () => {
        const text = plan.replace('speed', 'weather "unsaved breeze"\n    sped');
        await editor.open('plans/draft.spread', text);
        const { bytes, errors } = await printed('html', {
            uri: editor.uri('plans/draft.spread'),
        });
        expect(bytes.toString()).toContain('unsaved breeze');
        expect(errors).toBeGreaterThan(0);
    });

    test('is none where there is no spread', async () => {
        for (const name of ['boats.spread', 'gone.spread'])
            expect(await ask(protocol.card, wanted('pdf', { uri: editor.uri(name) }))).toBeNull();
    });
});

describe('a fence of a Markdown text', () => {
    const drawn = (text: string) => ask(protocol.fence, { uri: editor.uri('notes/day.md'), text });

    test('is drawn with what the workspace holds, as if it lay beside the text', async () => {
        const text = 'use "../boats.spread"\nspread away "Away" {\n    boat petrel\n    speed 8 kn\n}\n';
        const { pictures, told } = await drawn(text);
        expect(told).toEqual([]);
        expect(pictures).toHaveLength(1);
        expect(pictures[0]).toMatch(/^<svg /);
        expect(pictures[0]).toContain('Petrel');
        // Nothing of it stays: no file of the workspace is called so.
        expect(await editor.ask('workspace/symbol', { query: 'away' })).toEqual([]);
    });

    test('tells in words what is wrong in it, and keeps markup as words', async () => {
        const { pictures, told } = await drawn('spread x "<img src=x onerror=y>" {\n    sped 8 kn\n}\n');
        expect(told.join()).toMatch(/^Line 2: .*sped/);
        expect(pictures.join()).not.toContain('<img');
        expect((await drawn('use "./day.md"\nuse "../boats"\n')).told.join()).toContain('.spread');
        expect((await drawn('')).told).toEqual(['There is no spread in this text.']);
    });
});

test('a picture comes in pixels too, with letters of its own', async () => {
    const drawn = await ask(protocol.picture, { uri: editor.uri('plans/march.spread') });
    const content = await ask(protocol.png, { svg: drawn!.svg, dpi: 40 });
    const bytes = Buffer.from(content!, 'base64');
    expect(bytes.subarray(1, 4).toString()).toBe('PNG');
    expect(bytes.readUInt32BE(16)).toBe(Math.round((210 / 25.4) * 40));
});
