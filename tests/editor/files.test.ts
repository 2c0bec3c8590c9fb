import { mkdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { tallyOfAll } from '../../language/src/editor/protocol.ts';
import { type Editor, editorOver, type Files, type Wishes } from './client.ts';
import { boats, tackle, team } from './team.ts';

let editor: Editor;
const start = async (files: Files, wishes?: Wishes) => {
    editor = await editorOver(files, wishes);
};
afterEach(() => editor.stop());

const path = 'plans/march.spread';
const codes = async (at: string) => (await editor.diagnostics(at)).map(({ code }) => code);

describe('a file that changes outside of the editor', () => {
    beforeEach(() => start(team));

    test('counts as it is on the disk', async () => {
        await editor.write('tackle.spread', tackle.replace('lure wick', 'lure lamp'));
        expect(await codes(path)).toEqual(['unknown-name']);
        await editor.write('tackle.spread', tackle);
        expect(await codes(path)).toEqual([]);
    });

    test('that goes is missed, and when it comes again it is found', async () => {
        await editor.remove('tackle.spread');
        expect(await codes(path)).toContain('use');
        await editor.write('tackle.spread', tackle, true);
        expect(await codes(path)).toEqual([]);
    });

    test('that comes mends whoever waited for it', async () => {
        await editor.open(
            'plans/early.spread',
            'use "late.spread"\nspread a { rule incomplete { severity off }  shotgun { lure late } }\n',
        );
        expect(await codes('plans/early.spread')).toContain('use');
        await editor.write('plans/late.spread', 'lure late jet { }\n', true);
        expect(await codes('plans/early.spread')).toEqual([]);
    });

    test('that comes or goes is suggested, or no longer', async () => {
        await editor.open('plans/near.spread', 'use "marsh.spread"\n');
        expect((await editor.findings('plans/near.spread'))[0]).toContain('Did you mean `march.spread`?');
        await editor.remove(path);
        expect((await editor.findings('plans/near.spread'))[0]).toContain('Check its name');
    });

    test('counts as the editor has it while it is open', async () => {
        await editor.open('tackle.spread');
        await editor.write('tackle.spread', 'lure other jet { }\n');
        expect(await codes(path)).toEqual([]);
        await editor.remove('tackle.spread');
        expect(await codes(path)).toEqual([]);
        await editor.close('tackle.spread');
        expect(await codes(path)).toContain('use');
    });
});

describe('a folder', () => {
    beforeEach(() => start({ ...team, 'gear/lures/own.spread': 'lure own jet { }\n' }));

    test('that goes takes its files along, told as one', async () => {
        await editor.open(
            'user.spread',
            'use "gear/lures/own.spread"\nspread a { rule incomplete { severity off }  shotgun { lure own } }\n',
        );
        expect(await codes('user.spread')).toEqual([]);
        await editor.remove('gear');
        expect(await codes('user.spread')).toContain('use');
    });

    test('that comes brings its files along', async () => {
        await editor.open(
            'user.spread',
            'use "moved/lures/own.spread"\nspread a { rule incomplete { severity off }  shotgun { lure own } }\n',
        );
        renameSync(join(editor.folder, 'gear'), join(editor.folder, 'moved'));
        await editor.watched(['gear', 3], ['moved', 1]);
        expect(await codes('user.spread')).toEqual([]);
    });

    test('that begins with a dot, or holds packages, is passed over', async () => {
        await editor.write('.hidden/a.spread', 'spread a { sped }\n', true);
        await editor.write('node_modules/b/b.spread', 'spread b { sped }\n', true);
        expect(await codes('.hidden/a.spread')).toEqual([]);
        expect(await codes('node_modules/b/b.spread')).toEqual([]);
    });
});

describe('a text that is closed without being saved', () => {
    beforeEach(() => start(team));

    test('is forgotten, here and in whoever uses it', async () => {
        await editor.open('tackle.spread');
        await editor.replace('tackle.spread', 'lure wick', 'lure lamp');
        expect(await codes(path)).toEqual(['unknown-name']);
        await editor.close('tackle.spread');
        expect(await codes(path)).toEqual([]);
        expect(await editor.plans(path)).toEqual(['morning', 'breeze']);
    });

    test('of a file that never was leaves nothing', async () => {
        await editor.open('untitled:Untitled-1', 'spread a { sped 8 kn }\n');
        expect(await codes('untitled:Untitled-1')).toEqual(['unknown-word']);
        await editor.close('untitled:Untitled-1');
        expect(await codes('untitled:Untitled-1')).toEqual([]);
    });
});

describe('a file that is no plan', () => {
    const huge = `// ${'x'.repeat(2_000_100)}\nlure a jet { }\n`;
    const deep = `spread a ${'{ x '.repeat(300)}\n`;

    test('is not read, says why, and its users are told', async () => {
        await start({
            'huge.spread': huge,
            'deep.spread': deep,
            'user.spread': 'use "huge.spread"\nuse "deep.spread"\n',
        });
        expect(await editor.findings('huge.spread')).toEqual([
            '1 file-size: The file has 2.0 MB, and no plan over 2 MB is read. Split it, or leave it out if it is no plan.',
        ]);
        expect(await codes('deep.spread')).toEqual(['nesting']);
        expect(await editor.findings('user.spread')).toEqual([
            expect.stringContaining('`huge.spread` has 2.0 MB'),
            expect.stringContaining('`deep.spread` has 300 blocks'),
        ]);
    });

    test.each([
        ['blocks of one line', 'outriggers { ', 100_000],
        ['blocks of many lines, never closed', 'boat b {\n    outriggers {\n', 50_000],
        ['braces alone', '{', 1_000_000],
    ])('however deep it nests (%s), on the disk or typed, the server lives', async (_, block, times) => {
        const endless = `boat a { ${block.repeat(times)}\n`;
        await start({ 'deep.spread': endless, 'typed.spread': 'boat heron { length 9.8 m }\n' });
        expect(await codes('deep.spread')).toEqual(['nesting']);
        await editor.open('typed.spread');
        await editor.replace('typed.spread', 'length', endless);
        expect(await codes('typed.spread')).toEqual(['nesting']);
        await editor.edit(
            'typed.spread',
            0,
            editor.text('typed.spread').length,
            'boat heron { sped 9 kn }\n',
        );
        expect(await codes('typed.spread')).toEqual(['unknown-word']);
    });

    test('is read again as soon as it is one', async () => {
        await start({
            'huge.spread': huge,
            'user.spread':
                'use "huge.spread"\nspread s { rule incomplete { severity off }  shotgun { lure a } }\n',
        });
        await editor.open('huge.spread', huge);
        await editor.edit('huge.spread', 3, 2_000_000, '');
        expect(await codes('huge.spread')).toEqual([]);
        expect(await codes('user.spread')).toEqual([]);
        await editor.edit('huge.spread', 3, 3, 'y'.repeat(2_000_000));
        expect(await codes('huge.spread')).toEqual(['file-size']);
        expect(await codes('user.spread')).toContain('use');
    });

    test('holds bytes that are no text', async () => {
        await start({ 'user.spread': 'use "bytes.spread"\nuse "wide.spread"\n' });
        writeFileSync(join(editor.folder, 'bytes.spread'), Buffer.from([0x6c, 0xff, 0xfe, 0x20]));
        writeFileSync(join(editor.folder, 'wide.spread'), Buffer.from('\ufefflure a jet { }', 'utf16le'));
        await editor.watched(['bytes.spread', 1], ['wide.spread', 1]);
        expect(await editor.findings('bytes.spread')).toEqual([
            '1 unread: The file is not UTF-8. Save it as UTF-8.',
        ]);
        expect(await editor.findings('user.spread')).toEqual([
            expect.stringContaining('`bytes.spread` is not UTF-8.'),
            expect.stringContaining('`wide.spread` is written in UTF-16.'),
        ]);
    });

    test('and was never meant as one is not read, whoever names it', async () => {
        await start({ 'notes.txt': 'secret\n', 'user.spread': 'use "notes.txt"\nuse "."\nuse "none.txt"\n' });
        expect(await editor.findings('user.spread')).toEqual([
            expect.stringContaining('`notes.txt` does not end in .spread.'),
            expect.stringContaining('`.` lies outside the folder'),
            expect.stringContaining('There is no file `none.txt` here.'),
        ]);
        expect(editor.told.has(editor.uri('notes.txt'))).toBe(false);
    });

    test('asked about something, makes no fuss', async () => {
        await start({ 'huge.spread': huge });
        await editor.open('huge.spread', huge);
        await editor.settled();
        const asked = editor.ask('textDocument/hover', {
            ...editor.whole('huge.spread'),
            position: { line: 1, character: 2 },
        });
        await expect(asked).rejects.toMatchObject({ code: -32802 });
    });
});

describe('several folders', () => {
    const files = {
        'a/boats.spread': boats,
        'a/plan.spread': 'use "boats.spread"\nuse "../b/gear.spread"\n',
        'b/gear.spread': 'lure g jet { }\n',
        'c/x.spread': 'spread x { sped }\n',
    };

    test('are each a world of its own: no `use` leads from one to the next', async () => {
        await start(files, { folders: ['a', 'b'] });
        expect(await editor.findings('a/plan.spread')).toEqual([
            expect.stringContaining('lies outside the folder `a`'),
        ]);
        expect(await codes('c/x.spread')).toEqual([]);
    });

    test('come and go', async () => {
        await start(files, { folders: ['a'] });
        const folders = async (added: string[], removed: string[]) => {
            const shape = (names: string[]) => names.map((name) => ({ uri: editor.folderUri(name), name }));
            await editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
                event: { added: shape(added), removed: shape(removed) },
            });
            await editor.ask('workspace/symbol', { query: '' });
        };
        await folders(['c'], []);
        await expect.poll(() => codes('c/x.spread')).toEqual(['unknown-word']);
        await folders([], ['c']);
        await expect.poll(() => codes('c/x.spread')).toEqual([]);
        await folders([''], ['a']);
        await expect.poll(() => editor.findings('a/plan.spread')).toEqual([]);
    });

    test('a file in none of them works, and finds what lies beside it', async () => {
        await start(team, { folders: [] });
        await editor.open(path);
        expect(await codes(path)).toEqual([]);
        expect(await codes('tackle.spread')).toEqual([]);
        await editor.replace(path, 'lure wick', 'lure wack');
        expect(await codes(path)).toEqual(['unknown-name']);
        expect(await editor.ask<{ files: number }>(tallyOfAll.method, {})).toMatchObject({ files: 1 });
    });
});

test('a link that leads out of the folder is not followed', async () => {
    const outside = join(tmpdir(), `layback-outside-${process.pid}`);
    mkdirSync(outside, { recursive: true });
    writeFileSync(join(outside, 'secret.spread'), 'lure secret jet { }\n');
    await start({
        'user.spread': 'use "link.spread"\nspread a { shotgun { lure secret } }\n',
        'real.spread': 'lure r jet { }\n',
    });
    symlinkSync(join(outside, 'secret.spread'), join(editor.folder, 'link.spread'));
    symlinkSync(editor.folder, join(editor.folder, 'loop'));
    await editor.watched(['link.spread', 1], ['loop', 1]);
    expect((await editor.findings('user.spread'))[0]).toContain('is a link that leads out of');
    expect(await codes('real.spread')).toEqual([]);
    rmSync(outside, { recursive: true });
});

test('addresses that are written in another way are the same files', async () => {
    await start({
        'a b/é.spread': 'lure e jet { }\n',
        'user.spread':
            'use "a b/é.spread"\nspread a { rule incomplete { severity off }  shotgun { lure e } }\n',
    });
    expect(await codes('user.spread')).toEqual([]);
    const uri = `${editor.folderUri('')}/a%20b/%C3%A9.spread`;
    const textDocument = { uri, languageId: 'layback', version: 1, text: 'lure f jet { }\n' };
    await editor.connection.sendNotification('textDocument/didOpen', { textDocument });
    expect(await codes('user.spread')).toEqual(['unknown-name']);
});

test('a file of the built-in library can be opened and closed like any other', async () => {
    await start(team);
    await editor.open('layback:/species.spread', 'species odd { }\n');
    expect(await codes(path)).toContain('unknown-name');
    await editor.close('layback:/species.spread');
    expect(await codes(path)).toEqual([]);
});
