import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver-protocol';
import { builtInText, type Checked } from '../../language/src/editor/protocol.ts';
import { capable, covered, type Editor, editorOver } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

describe('findings', () => {
    let editor: Editor;
    beforeAll(async () => {
        editor = await editorOver(team);
    });
    afterAll(() => editor.stop());

    test('of a clean team there are none, in any file', async () => {
        for (const path of Object.keys(team)) expect(await editor.findings(path)).toEqual([]);
    });

    test('of a file that nobody has opened are there before the first edit', async () => {
        await editor.write('early.spread', 'spread early { sped 8 kn }\n', true);
        expect(await editor.findings('early.spread')).toEqual([
            '1 unknown-word: `sped` means nothing in a spread block. It counts as not written. Did you mean `speed`?',
        ]);
        await editor.remove('early.spread');
    });

    test('carry a code, the page of their rule, and the places that they are related to', async () => {
        await editor.open('plans/march.spread', plan.replace('lure sliver', 'lure broom'));
        const twice = (await editor.diagnostics('plans/march.spread')).find(
            ({ code }) => code === 'used-twice',
        )!;
        expect(twice.source).toBe('layback');
        expect(twice.severity).toBe(DiagnosticSeverity.Warning);
        expect(covered(editor.text('plans/march.spread'), twice.range)).toBe('broom');
        expect(twice.relatedInformation?.map(({ location }) => location.range.start.line)).toEqual([14]);
        const href = twice.codeDescription!.href;
        const page = await editor.ask<{ text: string }>(builtInText.method, { uri: href });
        expect(page.text).toMatch(/^# used-twice\n/);
        await editor.close('plans/march.spread');
    });

    test('that do nothing are shown faded', async () => {
        await editor.open(
            'plans/march.spread',
            plan.replace('spread breeze', 'bait spare { kind dead }\n\nspread breeze'),
        );
        const [idle] = await editor.diagnostics('plans/march.spread');
        expect(idle).toMatchObject({
            code: 'unused',
            tags: [DiagnosticTag.Unnecessary],
            severity: DiagnosticSeverity.Information,
        });
        await editor.close('plans/march.spread');
    });

    test('of a file follow an edit in another one that it uses', async () => {
        await editor.open('tackle.spread');
        await editor.replace('tackle.spread', 'lure wick', 'lure lamp');
        expect(await editor.findings('plans/march.spread')).toEqual([
            '21 unknown-name: No lure is called `wick` in this file or in what it uses. What leans on it is not known. Define it, or `use` the file that does.',
        ]);
        await editor.replace('tackle.spread', 'lure lamp', 'lure wick');
        expect(await editor.findings('plans/march.spread')).toEqual([]);
        await editor.close('tackle.spread');
    });

    test('of a file follow an edit in one that uses it', async () => {
        await editor.write(
            'own.spread',
            'spread own { rule incomplete { severity off } }\nlure odd jet { length 200 mm }\n',
            true,
        );
        await editor.write('user.spread', 'use "own.spread"\nspread user { shotgun { lure odd } }\n', true);
        expect(await editor.findings('own.spread')).toEqual([]);
        await editor.open('user.spread');
        await editor.replace('user.spread', 'lure odd', 'lure off');
        expect(await editor.findings('own.spread')).toEqual([
            expect.stringContaining('2 unused: No plan uses the lure odd.'),
        ]);
        await editor.replace('user.spread', 'lure off', 'lure odd');
        expect(await editor.findings('own.spread')).toEqual([]);
        await editor.close('user.spread');
        await editor.remove('user.spread');
        expect(await editor.findings('own.spread')).toEqual([expect.stringContaining('2 unused')]);
        await editor.remove('own.spread');
    });

    test('stand where they belong behind characters beyond the basic plane, and with CR LF', async () => {
        const text = withCrLf(
            'spread odd "🐟🐟 día" { note "𝒶 🎣"  sped 8 kn }\n\nspread two { /* 🐟 */ sea 2 kn }\n',
        );
        await editor.open('odd.spread', text);
        const found = await editor.diagnostics('odd.spread');
        expect(found.map(({ range }) => covered(text, range))).toEqual(['sped', '2 kn']);
        await editor.close('odd.spread');
    });

    test('are told for a text that is back where it was before anybody looked', async () => {
        const path = 'plans/march.spread';
        await editor.open(path);
        await editor.replace(path, 'speed 8 kn', 'speed 8 k');
        const found = await editor.findings(path);
        const heard = () =>
            editor.heard.filter(
                ({ method, params }) =>
                    method === 'layback/checked' &&
                    (params as Checked).uri === editor.uri(path) &&
                    (params as Checked).version === editor.version(path),
            );
        const alone = Array.from({ length: 300 }, (_, n) => `lure l${n} jet { length 200 mm }\n`).join('');
        for (let round = 0; round < 5; round++) {
            // While another file is looked at, both edits wait.
            void editor.write('alone.spread', `${alone} // ${round}`, round === 0);
            void editor.replace(path, 'speed 8 k', 'speed 8 kn');
            void editor.replace(path, 'speed 8 kn', 'speed 8 k');
            expect(await editor.findings(path)).toEqual(found);
            await expect.poll(heard).not.toEqual([]);
        }
        await editor.remove('alone.spread');
        await editor.close(path);
    });

    test('are told for the version that they were found in', async () => {
        await editor.open('plans/march.spread');
        await editor.replace('plans/march.spread', 'speed 8 kn', 'speed 8 k');
        const errors = (await editor.diagnostics('plans/march.spread')).length;
        const heard = editor.heard
            .filter(({ method }) => method === 'layback/checked')
            .map(({ params }) => params as Checked);
        expect(heard.at(-1)).toMatchObject({
            uri: editor.uri('plans/march.spread'),
            version: 2,
            phase: 'first',
            errors,
        });
        expect(errors).toBeGreaterThan(0);
        await editor.close('plans/march.spread');
    });

    test('of a burst of edits are those of the last one', async () => {
        await editor.open('plans/march.spread');
        for (const put of 'knots') await editor.replace('plans/march.spread', ' kn\n', `${put} kn\n`);
        expect(editor.text('plans/march.spread')).toContain('speed 8knots kn');
        expect((await editor.findings('plans/march.spread')).join('\n')).toContain('`kn` means nothing');
        await editor.close('plans/march.spread');
        expect(await editor.findings('plans/march.spread')).toEqual([]);
    });
});

describe('a client that asks for findings', () => {
    let editor: Editor;
    const path = 'plans/march.spread';
    const pull = (previousResultId?: string) =>
        editor.ask<{ kind: string; resultId: string; items: { code: string }[] }>('textDocument/diagnostic', {
            ...editor.whole(path),
            previousResultId,
        });
    beforeAll(async () => {
        const textDocument = { ...capable.textDocument, diagnostic: {} };
        editor = await editorOver(team, { capabilities: { ...capable, textDocument } });
    });
    afterAll(() => editor.stop());

    test('is told that it can', () => {
        expect(editor.initialized.capabilities.diagnosticProvider).toMatchObject({
            interFileDependencies: true,
        });
    });

    test('gets them for an open file as it stands, and is not told of them besides', async () => {
        await editor.open(path);
        await editor.replace(path, 'speed 8 kn', 'sped 8 kn');
        const { items, resultId } = await pull();
        expect(items.map(({ code }) => code)).toContain('unknown-word');
        expect(await editor.findings(path)).toEqual([]);
        expect(await pull(resultId)).toEqual({ kind: 'unchanged', resultId });
        await editor.close(path);
    });

    test('is asked to ask again when another file changes them', async () => {
        await editor.open(path);
        expect((await pull()).items).toEqual([]);
        const before = editor.heard.length;
        await editor.open('tackle.spread');
        await editor.replace('tackle.spread', 'lure wick', 'lure lamp');
        await expect
            .poll(() => editor.heard.slice(before).map(({ method }) => method))
            .toContain('workspace/diagnostic/refresh');
        expect((await pull()).items.map(({ code }) => code)).toEqual(['unknown-name']);
        await editor.close('tackle.spread');
        await editor.close(path);
    });

    test('is told of files that are not open', async () => {
        await editor.write('closed.spread', 'spread closed { sped 8 kn }\n', true);
        expect(await editor.findings('closed.spread')).toEqual([expect.stringContaining('unknown-word')]);
        await editor.open('closed.spread');
        expect(await editor.findings('closed.spread')).toEqual([]);
        await editor.close('closed.spread');
        expect(await editor.findings('closed.spread')).toEqual([expect.stringContaining('unknown-word')]);
        await editor.remove('closed.spread');
    });

    test('gets an answer about a file that is not read', async () => {
        await editor.open('huge.spread', `// ${'x'.repeat(2_100_000)}\n`);
        const report = await editor.ask<{ items: { code: string; message: string }[] }>(
            'textDocument/diagnostic',
            editor.whole('huge.spread'),
        );
        expect(report.items).toMatchObject([
            { code: 'file-size', message: expect.stringContaining('2.1 MB') },
        ]);
    });
});
