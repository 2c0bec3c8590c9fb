import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { PassThrough, type Writable } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
    type ClientCapabilities,
    createMessageConnection,
    type Diagnostic,
    type InitializeResult,
    type MessageConnection,
    type Position,
    type Range,
    StreamMessageReader,
    StreamMessageWriter,
    type TextEdit,
    type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { type InitializationOptions, plansOfFile, tallyOfAll } from '../../language/src/editor/protocol.ts';
import { startServer } from '../../language/src/editor/server.ts';
import type { Home } from '../../language/src/editor/services.ts';

/** As it is shipped: `npm run build` makes it. */
const server = join(import.meta.dirname, '../../dist/server-node.cjs');

/** What a client of today can do, without what would hide the plain ways. */
export const capable: ClientCapabilities = {
    workspace: {
        configuration: true,
        didChangeConfiguration: { dynamicRegistration: true },
        didChangeWatchedFiles: { dynamicRegistration: true },
        workspaceFolders: true,
        workspaceEdit: { documentChanges: true, snippetEditSupport: true },
        fileOperations: { willRename: true },
        codeLens: { refreshSupport: true },
        inlayHint: { refreshSupport: true },
        diagnostics: { refreshSupport: true },
    },
    textDocument: {
        completion: {
            completionItem: {
                snippetSupport: true,
                documentationFormat: ['markdown'],
                insertReplaceSupport: true,
            },
        },
        hover: { contentFormat: ['markdown'] },
        publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true },
        codeAction: {
            codeActionLiteralSupport: { codeActionKind: { valueSet: [''] } },
            resolveSupport: { properties: ['edit'] },
        },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
        rename: { prepareSupport: true },
    },
};

export interface Wishes {
    readonly capabilities?: ClientCapabilities;
    readonly settings?: Readonly<Record<string, unknown>>;
    readonly options?: InitializationOptions;
    /** Folders of the workspace, below the test's own; the whole by default, none where empty. */
    readonly folders?: readonly string[];
}

/** Files as a team has them, by their path. */
export type Files = Readonly<Record<string, string>>;

/** The way of messages to the server. */
interface Way {
    readonly up: PassThrough;
    readonly server: Writable;
}

/** More than is ever held back on it, bytes. */
const roomy = { highWaterMark: 1_000_000 };

/** An editor over real files, a real server and the real protocol. */
export class Editor {
    readonly connection: MessageConnection;
    readonly folder: string;
    initialized!: InitializeResult;
    /** The last findings that the server told, by URI. */
    readonly told = new Map<string, readonly Diagnostic[]>();
    /** Everything the server sent without being asked, and asked of the client: method and parameters. */
    readonly heard: { readonly method: string; readonly params: unknown }[] = [];
    settings: Readonly<Record<string, unknown>>;
    private readonly texts = new Map<string, { text: string; version: number }>();
    private readonly end: () => void;
    private readonly way: Way;
    isBeside = false;

    constructor(connection: MessageConnection, folder: string, wishes: Wishes, way: Way, end: () => void) {
        this.connection = connection;
        this.folder = folder;
        this.way = way;
        this.settings = wishes.settings ?? {};
        this.end = end;
        connection.onRequest((method, params) => {
            this.heard.push({ method, params });
            if (method !== 'workspace/configuration') return null;
            return (params as { items: unknown[] }).items.map(() => this.settings);
        });
        connection.onNotification((method, params) => {
            this.heard.push({ method, params });
            if (method !== 'textDocument/publishDiagnostics') return;
            const { uri, diagnostics } = params as { uri: string; diagnostics: Diagnostic[] };
            this.told.set(uri, diagnostics);
        });
        connection.listen();
    }

    async start({ capabilities = capable, options, folders = [''] }: Wishes): Promise<void> {
        this.initialized = await this.connection.sendRequest<InitializeResult>('initialize', {
            processId: this.isBeside ? null : process.pid,
            rootUri: null,
            capabilities,
            initializationOptions: options,
            workspaceFolders: folders.map((name) => ({ uri: this.folderUri(name), name: name || 'team' })),
        });
        await this.connection.sendNotification('initialized', {});
    }

    uri(path: string): string {
        return path.includes(':') ? path : pathToFileURL(join(this.folder, path)).toString();
    }

    folderUri(path: string): string {
        return pathToFileURL(join(this.folder, path)).toString().replace(/\/$/, '');
    }

    path(uri: string): string {
        const base = `${this.folderUri('')}/`;
        return uri.startsWith(base) ? uri.slice(base.length) : uri;
    }

    /** Opens a file as it lies on the disk, or with a text of its own. */
    async open(path: string, text = this.read(path)): Promise<void> {
        this.texts.set(path, { text, version: 1 });
        const textDocument = { uri: this.uri(path), languageId: 'layback', version: 1, text };
        await this.connection.sendNotification('textDocument/didOpen', { textDocument });
    }

    /** Replaces a stretch of an open text, as typing does. */
    async edit(path: string, start: number, end: number, put: string): Promise<void> {
        const open = this.texts.get(path)!;
        const range = { start: positionAt(open.text, start), end: positionAt(open.text, end) };
        open.text = open.text.slice(0, start) + put + open.text.slice(end);
        open.version++;
        await this.connection.sendNotification('textDocument/didChange', {
            textDocument: { uri: this.uri(path), version: open.version },
            contentChanges: [{ range, text: put }],
        });
    }

    async replace(path: string, before: string, after: string): Promise<void> {
        const at = this.text(path).indexOf(before);
        if (at < 0) throw new Error(`“${before}” does not stand in ${path}.`);
        await this.edit(path, at, at + before.length, after);
    }

    async close(path: string): Promise<void> {
        this.texts.delete(path);
        await this.connection.sendNotification('textDocument/didClose', {
            textDocument: { uri: this.uri(path) },
        });
    }

    /** Writes to the disk, and reports it as a watcher does. */
    async write(path: string, text: string, isNew = false): Promise<void> {
        put(this.folder, path, text);
        await this.watched([path, isNew ? 1 : 2]);
    }

    async remove(path: string): Promise<void> {
        rmSync(join(this.folder, path), { recursive: true });
        await this.watched([path, 3]);
    }

    /** Gives a file another name on the disk, and tells of it as editors that watch it do. */
    async rename(from: string, to: string): Promise<void> {
        renameSync(join(this.folder, from), join(this.folder, to));
        await this.watched([from, 3], [to, 1]);
    }

    async watched(...changes: readonly (readonly [path: string, type: 1 | 2 | 3])[]): Promise<void> {
        await this.connection.sendNotification('workspace/didChangeWatchedFiles', {
            changes: changes.map(([path, type]) => ({ uri: this.uri(path), type })),
        });
    }

    read(path: string): string {
        return readFileSync(join(this.folder, path), 'utf8');
    }

    /** The text as the editor has it, or as it lies on the disk. */
    text(path: string): string {
        return this.texts.get(path)?.text ?? this.read(path);
    }

    version(path: string): number {
        return this.texts.get(path)!.version;
    }

    /** Asks about a place in a file: where `mark` stands, moved by `by`. */
    at(path: string, mark: string, by = 0): { textDocument: { uri: string }; position: Position } {
        const found = this.text(path).indexOf(mark);
        if (found < 0) throw new Error(`“${mark}” does not stand in ${path}.`);
        return { textDocument: { uri: this.uri(path) }, position: positionAt(this.text(path), found + by) };
    }

    whole(path: string): { textDocument: { uri: string } } {
        return { textDocument: { uri: this.uri(path) } };
    }

    ask<R>(method: string, params: unknown): Promise<R> {
        return this.connection.sendRequest<R>(method, params);
    }

    /** Sends all that is said at once: the server has it before it has dealt with any of it. */
    async inOneBreath(say: () => void): Promise<void> {
        const { up, server } = this.way;
        up.unpipe(server);
        say();
        // Written after all the others; a server passes it over.
        await this.connection.sendNotification('$/breath');
        server.write(up.read());
        up.pipe(server);
    }

    /** Once everything that was sent so far has been dealt with. */
    async settled(): Promise<void> {
        await this.ask(tallyOfAll.method, {});
    }

    /** What was told about a file, as `line rule: message`, after everything sent so far. */
    async findings(path: string): Promise<string[]> {
        await this.settled();
        return (this.told.get(this.uri(path)) ?? []).map(shown);
    }

    async diagnostics(path: string): Promise<readonly Diagnostic[]> {
        await this.settled();
        return this.told.get(this.uri(path)) ?? [];
    }

    async plans(path: string): Promise<string[]> {
        const answer = await this.ask<{ plans: { name: string }[] }>(plansOfFile.method, {
            uri: this.uri(path),
        });
        return answer.plans.map(({ name }) => name);
    }

    /** The texts that an edit makes of the files that it names. */
    applied(edit: WorkspaceEdit): Record<string, string> {
        const changes = new Map<string, TextEdit[]>(Object.entries(edit.changes ?? {}));
        for (const change of edit.documentChanges ?? []) {
            if ('kind' in change) continue;
            changes.set(change.textDocument.uri, [
                ...(changes.get(change.textDocument.uri) ?? []),
                ...change.edits.map((each) =>
                    'snippet' in each
                        ? { range: each.range, newText: each.snippet.value }
                        : (each as TextEdit),
                ),
            ]);
        }
        return Object.fromEntries(
            [...changes].map(([uri, edits]) => [this.path(uri), apply(this.text(this.path(uri)), edits)]),
        );
    }

    async stop(): Promise<void> {
        await this.ask('shutdown', undefined);
        // It would end this process.
        if (!this.isBeside) await this.connection.sendNotification('exit');
        this.end();
    }
}

/** Starts an editor over files of a folder of its own. Whoever starts one stops it. */
export async function editorOver(files: Files, wishes: Wishes = {}): Promise<Editor> {
    const folder = mkdtempSync(join(tmpdir(), 'layback-editor-'));
    for (const [path, text] of Object.entries(files)) put(folder, path, text);
    const child: ChildProcess = spawn(process.execPath, [server, '--stdio'], {
        stdio: ['pipe', 'pipe', 'inherit'],
    });
    const way = { up: new PassThrough(roomy), server: child.stdin! };
    way.up.pipe(way.server);
    const connection = createMessageConnection(
        new StreamMessageReader(child.stdout!),
        new StreamMessageWriter(way.up),
    );
    const editor = new Editor(connection, folder, wishes, way, () => {
        connection.dispose();
        rmSync(folder, { recursive: true, force: true });
    });
    await editor.start(wishes);
    return editor;
}

/** The same with a server in this process, for what cannot be shown from outside. */
export async function editorBeside(files: Files, home: Home, wishes: Wishes = {}): Promise<Editor> {
    const folder = mkdtempSync(join(tmpdir(), 'layback-editor-'));
    for (const [path, text] of Object.entries(files)) put(folder, path, text);
    const way = { up: new PassThrough(roomy), server: new PassThrough() };
    way.up.pipe(way.server);
    const down = new PassThrough();
    const served = createConnection(
        ProposedFeatures.all,
        new StreamMessageReader(way.server),
        new StreamMessageWriter(down),
    );
    startServer(served, home);
    const connection = createMessageConnection(
        new StreamMessageReader(down),
        new StreamMessageWriter(way.up),
    );
    const editor = new Editor(connection, folder, wishes, way, () => {
        // The server's end stays: what it still has to say goes nowhere.
        connection.dispose();
        rmSync(folder, { recursive: true, force: true });
    });
    editor.isBeside = true;
    await editor.start(wishes);
    return editor;
}

function put(folder: string, path: string, text: string): void {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
}

/** UTF-16 units, lines ended by LF, CR LF or CR, as the protocol counts. */
export function positionAt(text: string, offset: number): Position {
    const before = text.slice(0, offset).split(/\r\n|\n|\r/);
    // Between CR and LF is still the line before.
    if (text[offset - 1] === '\r' && text[offset] === '\n') before.pop();
    return { line: before.length - 1, character: before.at(-1)!.length };
}

export function offsetAt(text: string, { line, character }: Position): number {
    let start = 0;
    const ends = /\r\n|\n|\r/g;
    for (let at = 0; at < line; at++) {
        if (!ends.exec(text)) return text.length;
        start = ends.lastIndex;
    }
    return Math.min(text.length, start + character);
}

export function apply(text: string, edits: readonly TextEdit[]): string {
    return [...edits]
        .map((edit) => ({
            ...edit,
            start: offsetAt(text, edit.range.start),
            end: offsetAt(text, edit.range.end),
        }))
        .sort((a, b) => b.start - a.start || b.end - a.end)
        .reduce((rest, { start, end, newText }) => rest.slice(0, start) + newText + rest.slice(end), text);
}

/** The words that a range covers. */
export function covered(text: string, { start, end }: Range): string {
    return text.slice(offsetAt(text, start), offsetAt(text, end));
}

export function shown({ range, code, message }: Diagnostic): string {
    return `${range.start.line + 1} ${code}: ${message}`;
}
