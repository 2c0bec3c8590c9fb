import {
    type CancellationToken,
    type Disposable,
    EventEmitter,
    type ExtensionContext,
    type LogOutputChannel,
    Uri,
    window,
} from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import {
    commands,
    type InitializationOptions,
    type Notice,
    type Request,
} from '../../language/src/editor/protocol.ts';
import { answerForFiles } from './files.ts';

/** Makes the client that starts the server: the one thing that differs between Node and a browser. */
export type Launch = (options: LanguageClientOptions) => Promise<BaseLanguageClient>;

export type ServerState = 'starting' | 'running' | 'stopped';

/** The language server, as the rest of the extension sees it. */
export interface Server extends Disposable {
    readonly state: ServerState;
    readonly onState: (listener: (state: ServerState) => void) => Disposable;
    /** Whether it is there to answer, once it has had the time to start. */
    started(): Promise<boolean>;
    /**
     * @returns undefined where the server is not there to answer, or its answer is no longer wanted
     * @throws what the server answers instead
     */
    ask<P, R>(request: Request<P, R>, params: P, token?: CancellationToken): Promise<R | undefined>;
    /** Listens from now on, through restarts too. */
    hear<P>(notice: Notice<P>, listener: (told: P) => void): Disposable;
    restart(): Promise<void>;
    readonly log: LogOutputChannel;
}

/** Starts the server without waiting for it, nor for the library that talks to it: reading that takes longest. */
export function startServer(context: ExtensionContext, launch: Launch): Server {
    const log = window.createOutputChannel('Layback', { log: true });
    const changed = new EventEmitter<ServerState>();
    const heard = new Map<string, EventEmitter<unknown>>();
    let client: BaseLanguageClient | undefined;
    let state: ServerState = 'starting';
    const enter = (next: ServerState) => {
        if (next === state) return;
        state = next;
        log.info(`The language server is ${state}.`);
        changed.fire(state);
    };
    const passOn = (method: string, told: EventEmitter<unknown>) =>
        client?.onNotification(method, (params: unknown) => told.fire(params));
    /** The client has room for one listener to a message; here it is passed on to any number. */
    const listenTo = (method: string) => {
        const told = new EventEmitter<unknown>();
        heard.set(method, told);
        passOn(method, told);
        return told;
    };
    const makeClient = async () => {
        const library = await import('vscode-languageclient');
        const started: InitializationOptions = {
            commands: Object.values(commands),
            files: true,
            beside: Uri.joinPath(context.extensionUri, 'dist').toString(),
        };
        client = await launch({
            documentSelector: [{ language: 'layback' }],
            initializationOptions: started,
            // What a hover says may lead to a document, and to nothing else that acts.
            markdown: { isTrusted: { enabledCommands: [commands.openGuide] } },
            diagnosticCollectionName: 'layback',
            outputChannel: log,
            revealOutputChannelOn: library.RevealOutputChannelOn.Never,
            errorHandler: fewRestarts(library),
        });
        client.onDidChangeState(({ newState }) => {
            if (newState === library.State.Running) enter('running');
            else enter(newState === library.State.Starting ? 'starting' : 'stopped');
        });
        answerForFiles(client);
        for (const [method, told] of heard) passOn(method, told);
        return client;
    };
    const start = async () => {
        try {
            await (client ?? (await makeClient())).start();
        } catch (fault) {
            log.error(`The language server does not start. ${(fault as Error).stack ?? fault}`);
            enter('stopped');
        }
    };
    const soon = setTimeout(() => void start());
    context.subscriptions.push(log, changed);

    return {
        get state() {
            return state;
        },
        onState: changed.event,
        started() {
            if (state !== 'starting') return Promise.resolve(state === 'running');
            return new Promise((resolve) => {
                const settle = (isRunning: boolean) => {
                    clearTimeout(timer);
                    listening.dispose();
                    resolve(isRunning);
                };
                const timer = setTimeout(() => settle(false), longestStart);
                const listening = changed.event((next) => {
                    if (next !== 'starting') settle(next === 'running');
                });
            });
        },
        async ask({ method }, params, token) {
            for (let tries = 1; state === 'running' && client; tries++) {
                try {
                    // A token that is not there would be sent as one of the parameters.
                    return await (token
                        ? client.sendRequest(method, params, token)
                        : client.sendRequest(method, params));
                } catch (fault) {
                    if (token?.isCancellationRequested) return undefined;
                    if (tries === patience || !isOvertaken(fault)) throw fault;
                    await new Promise((resolve) => setTimeout(resolve, 50 * tries));
                }
            }
            return undefined;
        },
        hear: ({ method }, listener) =>
            (heard.get(method) ?? listenTo(method)).event(listener as (told: unknown) => void),
        async restart() {
            if (client?.needsStop()) await client.stop().catch((fault) => log.warn(String(fault)));
            await start();
        },
        log,
        dispose() {
            clearTimeout(soon);
            void client?.dispose().catch(() => undefined);
        },
    };
}

/** After so long, ms, a server that is starting is taken to be one that does not. */
const longestStart = 30_000;

/** How often a question is asked again that an edit has overtaken. */
const patience = 8;

/** Whether an answer was given up because the text changed meanwhile: the protocol's three codes for that. */
function isOvertaken(fault: unknown): boolean {
    const [requestCancelled, contentModified, serverCancelled] = [-32_800, -32_801, -32_802];
    const { code } = fault as { readonly code?: unknown };
    return code === requestCancelled || code === contentModified || code === serverCancelled;
}

/** A server that ends is started again, but not for ever: what ends it five times in three minutes will do so again. */
function fewRestarts({
    CloseAction,
    ErrorAction,
}: typeof import('vscode-languageclient')): LanguageClientOptions['errorHandler'] {
    const [most, within] = [5, 3 * 60_000];
    const ends: number[] = [];
    return {
        error: () => ({ action: ErrorAction.Continue }),
        closed() {
            ends.push(Date.now());
            if (ends.length > most) ends.shift();
            const often = ends.length === most && ends.at(-1)! - ends[0]! < within;
            if (!often) return { action: CloseAction.Restart };
            return {
                action: CloseAction.DoNotRestart,
                message:
                    'The Layback server has ended five times in three minutes and is left alone now. ' +
                    'The command “Layback: Restart Language Server” starts it again.',
            };
        },
    };
}
