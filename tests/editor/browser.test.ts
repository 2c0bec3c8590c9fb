import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
    AbstractMessageReader,
    AbstractMessageWriter,
    createMessageConnection,
    type DataCallback,
    type Diagnostic,
    type Hover,
    type MarkupContent,
    type Message,
    type MessageConnection,
} from 'vscode-languageserver-protocol/node';
import {
    builtInText,
    kindOfFile,
    type Picture,
    picture,
    readFile,
    readFolder,
    tallyOfAll,
} from '../../language/src/editor/protocol.ts';
import { capable, positionAt } from './client.ts';
import { boats, plan, tackle } from './team.ts';

const dist = join(import.meta.dirname, '../../dist');

/** A file system that only the client can read, as it is in a browser. */
const files = new Map([
    ['memory:/team/boats.spread', boats],
    ['memory:/team/tackle.spread', tackle],
    ['memory:/team/plans/march.spread', plan],
    ['memory:/team/plans/wrong.spread', 'spread wrong { sped 8 kn  note "é🐟" }\n'],
    ...['rule-pages.json', 'press/views.js'].map(
        (name) => [`memory:/extension/${name}`, readFileSync(join(dist, name), 'utf8')] as const,
    ),
    ['memory:/team/node_modules/x.spread', 'spread x { sped 8 kn }\n'],
    ['memory:/team/node_modules/reef-pack/gear.spread', 'lure lamp jet { length 240 mm }\n'],
    [
        'memory:/team/packed/day.spread',
        'use "package:reef-pack/gear.spread"\nuse "package:reef-pack/other.spread"\nuse "package:shoal/gear.spread"\nspread day { rule incomplete { severity off }  shotgun { lure lamp } }\n',
    ],
]);

// What a web worker has and a thread of Node has not, put around the shipped bundle.
const around = `
const { parentPort } = require('node:worker_threads');
globalThis.self = globalThis;
globalThis.postMessage = (message) => parentPort.postMessage(message);
globalThis.addEventListener = () => undefined;
parentPort.on('message', (data) => globalThis.onmessage?.({ data }));
require(${JSON.stringify(join(dist, 'server-browser.js'))});
`;

class FromWorker extends AbstractMessageReader {
    private readonly worker: Worker;

    constructor(worker: Worker) {
        super();
        this.worker = worker;
    }

    listen(callback: DataCallback) {
        this.worker.on('message', (message: Message) => callback(message));
        return { dispose: () => undefined };
    }
}

class ToWorker extends AbstractMessageWriter {
    private readonly worker: Worker;

    constructor(worker: Worker) {
        super();
        this.worker = worker;
    }

    async write(message: Message): Promise<void> {
        this.worker.postMessage(message);
    }

    end(): void {}
}

let worker: Worker;
let connection: MessageConnection;
const told = new Map<string, Diagnostic[]>();
const asked: string[] = [];

beforeAll(async () => {
    worker = new Worker(around, { eval: true });
    connection = createMessageConnection(new FromWorker(worker), new ToWorker(worker));
    connection.onRequest(readFile.method, ({ uri }: { uri: string }) => {
        asked.push(uri);
        const text = files.get(uri);
        return text === undefined ? null : Buffer.from(text).toString('base64');
    });
    connection.onRequest(readFolder.method, ({ uri }: { uri: string }) => {
        const names = [...files.keys()]
            .filter((each) => each.startsWith(`${uri}/`))
            .map((each) => each.slice(uri.length + 1).split('/'));
        const kinds = new Map(names.map((path) => [path[0]!, path.length > 1 ? 'folder' : 'file']));
        return [...kinds].map(([name, kind]) => ({ name, kind }));
    });
    connection.onRequest(kindOfFile.method, ({ uri }: { uri: string }) =>
        files.has(uri) ? 'file' : 'nothing',
    );
    connection.onRequest(() => null);
    connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }) => {
        told.set(uri, diagnostics);
    });
    connection.listen();
    await connection.sendRequest('initialize', {
        processId: null,
        rootUri: null,
        capabilities: capable,
        initializationOptions: { files: true, beside: 'memory:/extension' },
        workspaceFolders: [{ uri: 'memory:/team', name: 'team' }],
    });
    await connection.sendNotification('initialized', {});
});
afterAll(async () => {
    await connection.sendRequest('shutdown');
    connection.dispose();
    await worker.terminate();
});

const settled = () => connection.sendRequest(tallyOfAll.method, {});
const uri = 'memory:/team/plans/march.spread';

test('files are read through the client, and checked before any is open', async () => {
    await settled();
    expect([...told].map(([each, diagnostics]) => [each, diagnostics.map(({ code }) => code)])).toEqual([
        ['memory:/team/plans/wrong.spread', ['unknown-word']],
        ['memory:/team/packed/day.spread', ['use', 'use']],
    ]);
    // Of packages only what is in use, and of those nothing else.
    expect(asked).not.toContain('memory:/team/node_modules/x.spread');
});

test('an open file is answered about as anywhere else', async () => {
    const textDocument = {
        uri,
        languageId: 'layback',
        version: 1,
        text: plan.replace('lure wick', 'lure wack'),
    };
    await connection.sendNotification('textDocument/didOpen', { textDocument });
    await settled();
    expect(told.get(uri)?.map(({ code }) => code)).toEqual(['unknown-name']);
    const hover = await connection.sendRequest<Hover>('textDocument/hover', {
        textDocument: { uri },
        position: positionAt(plan, plan.indexOf('wave 2') + 5),
    });
    expect((hover.contents as MarkupContent).value).toBe('**Wave 2** · 12.9 m (42 ft)');
    await connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    await settled();
    expect(told.get(uri)).toEqual([]);
});

test('what draws a plan is read through the client when the first is drawn, and once', async () => {
    const drawn = () => connection.sendRequest<Picture>(picture.method, { uri, plan: 'morning' });
    expect(asked.filter((each) => each.includes('/press/'))).toEqual([]);
    expect((await drawn()).svg).toMatch(/^<svg /);
    expect((await drawn()).plan.name).toBe('morning');
    expect(asked.filter((each) => each.includes('/press/'))).toEqual(['memory:/extension/press/views.js']);
});

test('the library is there without any file, pages once the client has told where they lie', async () => {
    const page = await connection.sendRequest<{ text: string }>(builtInText.method, {
        uri: 'layback:/rules/stagger.md',
    });
    expect(page.text).toMatch(/^# stagger/);
    expect(asked.filter((each) => each.endsWith('rule-pages.json'))).toHaveLength(1);
    const species = await connection.sendRequest<{ text: string; languageId: string }>(builtInText.method, {
        uri: 'layback:/species.spread',
    });
    expect(species).toMatchObject({ languageId: 'layback', text: expect.stringContaining('species wahoo') });
    expect(await connection.sendRequest(builtInText.method, { uri: 'layback:/nothing.md' })).toBeNull();
});

test('packages are read as the client has them, and said to be missing where it has none', async () => {
    await settled();
    const found = told.get('memory:/team/packed/day.spread') ?? [];
    expect(found.map(({ code, message }) => `${code}: ${message}`)).toEqual([
        expect.stringContaining(
            'use: `package:reef-pack/other.spread` is not in the package `reef-pack` that is installed here; it has gear.spread.',
        ),
        expect.stringContaining('use: There is no package `shoal` here: these files are on no disk'),
    ]);
});
