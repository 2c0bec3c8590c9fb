import { afterEach, describe, expect, test } from 'vitest';
import {
    CancellationTokenSource,
    LSPErrorCodes,
    type ResponseError,
    type WorkspaceSymbol,
} from 'vscode-languageserver-protocol';
import { plansOfFile, tallyOfAll } from '../../language/src/editor/protocol.ts';
import { layback } from '../command/layback.ts';
import { type Editor, editorOver } from './client.ts';
import { plan, team } from './team.ts';

let editor: Editor;
afterEach(() => editor?.stop());

/** What is asked, or a word where nobody answers in time. */
async function soon<T>(asked: Promise<T>): Promise<T | 'no answer'> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<'no answer'>((resolve) => {
        timer = setTimeout(() => resolve('no answer'), 10_000);
    });
    return Promise.race([asked, late]).finally(() => clearTimeout(timer));
}

describe('nobody waits for ever', () => {
    test('while a line that uses the library is typed letter by letter', async () => {
        editor = await editorOver(team);
        await editor.open('new.spread', '\n');
        const line = 'use "layback:species"';
        for (let at = 0; at < line.length; at++) {
            await editor.edit('new.spread', at, at, line[at]!);
            const asked = { ...editor.whole('new.spread'), position: { line: 0, character: at + 1 } };
            expect(await soon(editor.ask('textDocument/completion', asked))).not.toBe('no answer');
        }
        expect(await editor.findings('new.spread')).not.toContainEqual(expect.stringContaining(' use: '));
    });

    test('where a file is called nothing but its ending', async () => {
        editor = await editorOver({ ...team, 'plans/.spread': 'boat nameless { length 9 m }\n' });
        expect(await soon(editor.findings('plans/march.spread'))).toEqual([]);
        expect(layback(['check', '.'], { cwd: editor.folder }).status).toBe(0);
    });

    test('when a plan that nobody uses goes in the same breath', async () => {
        editor = await editorOver({ ...team, 'plans/alone.spread': 'spread alone { crew 2 }\n' });
        await editor.settled();
        void editor.remove('plans/alone.spread');
        const symbols = editor.ask<WorkspaceSymbol[]>('workspace/symbol', { query: 'morning' });
        const files = [{ oldUri: editor.uri('tackle.spread'), newUri: editor.uri('gear.spread') }];
        const renamed = editor.ask('workspace/willRenameFiles', { files });
        expect(await soon(symbols)).toHaveLength(1);
        expect(await soon(renamed)).not.toBe('no answer');
    });

    test('when a file is opened and closed before anybody looks', async () => {
        editor = await editorOver(team);
        await editor.settled();
        for (let round = 0; round < 5; round++) {
            void editor.open('passing.spread', `spread passing-${round} { }\n`);
            const symbols = editor.ask('workspace/symbol', { query: 'morning' });
            void editor.close('passing.spread');
            expect(await soon(symbols)).toHaveLength(1);
        }
    });

    test('when what did all that there was to do is overtaken before it can say so', async () => {
        editor = await editorOver(team);
        const path = 'plans/march.spread';
        for (let round = 0; round < 20; round++) {
            await editor.write('alone.spread', `spread alone-${round} { }\n`, true);
            await editor.open(path);
            await editor.replace(path, 'speed 8 kn', 'speed 8 k');
            await editor.settled();
            // Closed with its edit, and open with the same one before anybody has looked.
            void editor.remove('alone.spread');
            void editor.close(path);
            void editor.open(path);
            void editor.replace(path, 'speed 8 kn', 'speed 8 k');
            expect(await soon(editor.settled())).not.toBe('no answer');
            await editor.close(path);
        }
    });

    test('when it is cancelled while much is still to be done', async () => {
        // All of them are to be built anew when their tackle changes.
        const users = Array.from({ length: 100 }, (_, at) => [
            `plans/day-${at}.spread`,
            plan.replace('morning "', `day-${at} "`).replaceAll('morning', `day-${at}`),
        ]);
        editor = await editorOver({ ...team, ...Object.fromEntries(users) });
        const path = 'tackle.spread';
        await editor.open(path);
        await editor.settled();
        for (const [method, wish] of [
            ['textDocument/hover', editor.at(path, 'broom')],
            ['textDocument/codeLens', editor.whole(path)],
            [tallyOfAll.method, {}],
            [plansOfFile.method, { uri: editor.uri('plans/day-99.spread') }],
        ] as const) {
            const answers: unknown[] = [];
            const unwanted = new CancellationTokenSource();
            let all: Promise<unknown> | undefined;
            await editor.inOneBreath(() => {
                void editor.replace(path, 'lure broom', 'lure broom ');
                const cancelled = editor.connection
                    .sendRequest(method, wish, unwanted.token)
                    .catch(({ code }: ResponseError) => code)
                    .then((answer) => answers.push(answer));
                const done = editor.settled().then(() => answers.push('done'));
                all = Promise.all([cancelled, done]);
                unwanted.cancel();
            });
            expect(await soon(all!)).not.toBe('no answer');
            expect([method, ...answers]).toEqual([method, LSPErrorCodes.RequestCancelled, 'done']);
        }
    });

    test('when a client refuses all that it is asked', async () => {
        editor = await editorOver(team);
        editor.connection.onRequest(() => {
            throw new Error('No.');
        });
        await editor.settled();
        await editor.open('plans/march.spread');
        await editor.replace('plans/march.spread', 'speed 8 kn', 'speed 8 k');
        await new Promise((resolve) => setTimeout(resolve, 1500));
        expect(await soon(editor.findings('plans/march.spread'))).not.toEqual([]);
    });
});
