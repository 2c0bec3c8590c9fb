import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CodeLens, Diagnostic } from 'vscode-languageserver-protocol';
import { diskOfNode } from '../../language/src/editor/disk-node.ts';
import type { LateAnalysis } from '../../language/src/editor/late.ts';
import { followEdit } from '../../language/src/editor/late.ts';
import { tallyOfAll } from '../../language/src/editor/protocol.ts';
import type { CheckedSheet } from '../../language/src/rules/check.ts';
import { covered, type Editor, editorBeside } from './client.ts';

const texts = {
    'a.spread': 'spread a { crew 2 }\n',
    'b.spread': 'spread b { crew 3 }\n',
    'c.spread': 'lure c jet { }\n',
};

/** Says something about every crew, as soon as it is let. */
class Slow implements LateAnalysis {
    readonly name = 'slow';
    readonly began: string[] = [];
    readonly ended: string[] = [];
    private gate: Promise<void> = Promise.resolve();
    private opens: () => void = () => undefined;

    hold(): void {
        this.gate = new Promise((resolve) => {
            this.opens = resolve;
        });
    }

    release(): void {
        this.opens();
    }

    async analyse(sheet: CheckedSheet, pause: () => Promise<void>) {
        const name = sheet.uri.slice(sheet.uri.lastIndexOf('/') + 1);
        this.began.push(name);
        await this.gate;
        for (let step = 0; step < 3; step++) await pause();
        this.ended.push(name);
        const crews = sheet.plans.flatMap(({ plan }) => (plan.crew ? [{ plan, crew: plan.crew }] : []));
        return {
            findings: crews.map(({ plan, crew }) => ({
                rule: 'slow',
                severity: 'warning' as const,
                at: crew.origin.place,
                what: `A crew of ${crew.si}.`,
                related: [],
                fixes: [],
                positions: [],
                plan: plan.name,
            })),
            remarks: crews.map(({ plan }) => ({ plan: plan.name, title: 'Looked at' })),
        };
    }
}

let editor: Editor;
let slow: Slow;
const uri = () => editor.uri('a.spread');
const told = (path = 'a.spread') => editor.told.get(editor.uri(path)) ?? [];
const late = (path = 'a.spread') =>
    told(path)
        .filter(({ source }) => source === 'layback (slow)')
        .map(({ message }) => message);

beforeEach(async () => {
    slow = new Slow();
    editor = await editorBeside(texts, { disk: diskOfNode, lateAnalyses: [slow] });
});
afterEach(() => editor.stop());

test('late findings come after the first ones, and stand beside them', async () => {
    slow.hold();
    await editor.open('a.spread', 'spread a {\n    crew 2\n    sped\n}\n');
    expect((await editor.diagnostics('a.spread')).map(({ code }) => code)).toEqual(['unknown-word']);
    slow.release();
    await expect
        .poll(() => told().map(({ code, source }) => `${code} ${source}`))
        .toEqual(['unknown-word layback', 'slow layback (slow)']);
});

test('they stay while one types elsewhere, at their place, without ever being away', async () => {
    await editor.open('a.spread');
    await expect.poll(() => late()).toEqual(['A crew of 2.']);
    slow.hold();
    const before = editor.heard.length;
    for (const put of ['// one\n', '/* 🐟 */ ', 'lure x jet { }\n']) await editor.edit('a.spread', 0, 0, put);
    await editor.edit('a.spread', editor.text('a.spread').length, editor.text('a.spread').length, '// end\n');
    await editor.settled();
    const published = editor.heard
        .slice(before)
        .filter(
            ({ method, params }) =>
                method === 'textDocument/publishDiagnostics' && (params as { uri: string }).uri === uri(),
        )
        .map(({ params }) => (params as { diagnostics: Diagnostic[] }).diagnostics);
    expect(published.length).toBeGreaterThan(0);
    for (const diagnostics of published) expect(diagnostics.map(({ code }) => code)).toContain('slow');
    const [moved] = told().filter(({ code }) => code === 'slow');
    expect(covered(editor.text('a.spread'), moved!.range)).toBe('2');
    slow.release();
});

test('what an edit touches is no longer said, until it is looked at again', async () => {
    await editor.open('a.spread');
    await expect.poll(() => late()).toEqual(['A crew of 2.']);
    slow.hold();
    await editor.replace('a.spread', 'crew 2', 'crew 4');
    await editor.settled();
    expect(late()).toEqual([]);
    slow.release();
    await expect.poll(() => late()).toEqual(['A crew of 4.']);
});

test('an edit overtakes a look: what it would have said is never told', async () => {
    await editor.open('a.spread');
    await expect.poll(() => late()).toEqual(['A crew of 2.']);
    slow.hold();
    await editor.replace('a.spread', 'crew 2', 'crew 5');
    await expect.poll(() => slow.began.filter((each) => each === 'a.spread').length).toBeGreaterThan(1);
    await editor.replace('a.spread', 'crew 5', 'crew 6');
    await editor.settled();
    slow.release();
    await expect.poll(() => late()).toEqual(['A crew of 6.']);
    const said = editor.heard.flatMap(({ method, params }) =>
        method === 'textDocument/publishDiagnostics'
            ? (params as { diagnostics: Diagnostic[] }).diagnostics
            : [],
    );
    expect(said.map(({ message }) => message)).not.toContain('A crew of 5.');
});

test('the file that is open is looked at first, the others when that is done', async () => {
    await editor.open('b.spread');
    await expect.poll(() => slow.ended.length).toBeGreaterThanOrEqual(3);
    expect(slow.ended[0]).toBe('b.spread');
    await expect.poll(() => late('a.spread')).toEqual(['A crew of 2.']);
});

test('only open files are looked at, for whoever wants that', async () => {
    await expect.poll(() => late('b.spread')).toEqual(['A crew of 3.']);
    editor.settings = { slowFindings: 'open' };
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(() => late('b.spread')).toEqual([]);
    await editor.open('b.spread');
    await expect.poll(() => late('b.spread')).toEqual(['A crew of 3.']);
    await editor.close('b.spread');
    await expect.poll(() => late('b.spread')).toEqual([]);
});

test('a file that another one changes is looked at again', async () => {
    await editor.write('d.spread', 'use "b.spread"\nspread d like b { }\n', true);
    await expect.poll(() => late('d.spread')).toEqual(['A crew of 3.']);
    await editor.write('b.spread', 'spread b { crew 7 }\n');
    await expect.poll(() => late('d.spread')).toEqual(['A crew of 7.']);
    await editor.remove('d.spread');
    await editor.settled();
    expect(told('d.spread')).toEqual([]);
});

test('that something is still being sought is told, and that nothing is', async () => {
    slow.hold();
    await editor.open('a.spread');
    const tally = () => editor.ask<{ unfinished: boolean; warnings: number }>(tallyOfAll.method, {});
    expect(await tally()).toMatchObject({ unfinished: true });
    slow.release();
    // Of each of the two plans that it has no boat, and what is said late of its crew.
    await expect.poll(tally).toMatchObject({ unfinished: false, warnings: 4 });
});

test('a remark about a plan stands above it', async () => {
    await editor.open('a.spread');
    await expect
        .poll(async () =>
            (await editor.ask<CodeLens[]>('textDocument/codeLens', editor.whole('a.spread'))).map(
                ({ command }) => command?.title,
            ),
        )
        .toContain('Looked at');
});

test('a look that fails says so in the log, and keeps nobody from theirs', async () => {
    await editor.stop();
    const broken: LateAnalysis = {
        name: 'broken',
        analyse: async () => Promise.reject(new Error('no luck')),
    };
    editor = await editorBeside(texts, { disk: diskOfNode, lateAnalyses: [broken, slow] });
    await expect.poll(() => late()).toEqual(['A crew of 2.']);
    const logged = editor.heard
        .filter(({ method }) => method === 'window/logMessage')
        .map(({ params }) => JSON.stringify(params));
    expect(logged.join()).toContain('no luck');
});

test('edits are followed by what they leave alone on either side', () => {
    const at = (start: number, end: number) => ({ start, end, by: 'slow', finding: {} as never });
    const places = (before: string, after: string) =>
        followEdit([at(0, 2), at(3, 5), at(6, 8)], before, after).map(({ start, end }) =>
            after.slice(start, end),
        );
    expect(places('aa bb cc', 'aa bb cc')).toEqual(['aa', 'bb', 'cc']);
    expect(places('aa bb cc', 'aa xx cc')).toEqual(['aa', 'cc']);
    expect(places('aa bb cc', 'xaa bb cc')).toEqual(['aa', 'bb', 'cc']);
    expect(places('aa bb cc', 'aa cc')).toEqual(['aa', 'cc']);
    expect(places('aa bb cc', '')).toEqual([]);
});

test('of edits in several places, the lines between them are left alone', () => {
    const before = 'sea 0.4 m\nport { aa }\nshotgun { bb }\ncrew 2\ncrew 2\nstarboard { cc }\nhold\n';
    const words = ['aa', 'bb', 'cc'];
    const found = words.map((word) => {
        const start = before.indexOf(word);
        return { start, end: start + 2, by: 'slow', finding: {} as never };
    });
    const places = (after: string) =>
        followEdit(found, before, after).map(({ start, end }) => after.slice(start, end));
    const edited = before.replace('0.4 m', '0.45 m').replace('hold', '// no\nhold ');
    expect(places(edited)).toEqual(words);
    expect(places(edited.replace('bb', 'bx'))).toEqual(['aa', 'cc']);
    expect(places(edited.replace('{ bb }', '{  bb }'))).toEqual(['aa', 'cc']);
    expect(places(`${edited}\n`.replace('port { aa }\n', ''))).toEqual(['bb', 'cc']);
    // A line that stands there twice may be either of the two.
    expect(places(edited.replace('shotgun { bb }', 'port { aa }'))).toEqual(['cc']);
});
