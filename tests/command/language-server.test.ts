import { spawn } from 'node:child_process';
import { expect, test } from 'vitest';
import {
    createMessageConnection,
    type InitializeResult,
    StreamMessageReader,
    StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { builtInText } from '../../language/src/editor/protocol.ts';
import { command, layback } from './layback.ts';

test('any editor is served over standard input and output, until it leaves', async () => {
    const child = spawn(process.execPath, [command, 'language-server', '--stdio']);
    const ended = new Promise((resolve) => child.on('close', resolve));
    const connection = createMessageConnection(
        new StreamMessageReader(child.stdout),
        new StreamMessageWriter(child.stdin),
    );
    connection.listen();
    const { capabilities, serverInfo } = await connection.sendRequest<InitializeResult>('initialize', {
        processId: process.pid,
        rootUri: null,
        capabilities: {},
        workspaceFolders: null,
    });
    expect(serverInfo?.name).toBe('layback');
    expect(capabilities.hoverProvider).toBe(true);
    await connection.sendNotification('initialized', {});
    const page = await connection.sendRequest<{ text: string }>(builtInText.method, {
        uri: 'layback:/rules/stagger.md',
    });
    expect(page.text).toMatch(/^# stagger/);
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
    expect(await ended).toBe(0);
    connection.dispose();
});

test('without an editor at the other end it says how it is started', () => {
    expect(layback(['language-server'])).toEqual({
        status: 2,
        stdout: '',
        stderr: 'layback: A language server talks to an editor: layback language-server --stdio\n',
    });
});
