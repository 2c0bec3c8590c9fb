import { type Disposable, EventEmitter, type ExtensionContext, type LogOutputChannel, window } from 'vscode';
import {
    type BaseLanguageClient,
    CloseAction,
    ErrorAction,
    type LanguageClientOptions,
    RevealOutputChannelOn,
    State,
} from 'vscode-languageclient';
import {
    commands,
    type InitializationOptions,
    type Notice,
    type Request,
} from '../../language/src/editor/protocol.ts';
import { answerForFiles } from './files.ts';

/** Makes the client that starts the server: the one thing that differs between Node and a browser. */
export type Launch = (options: LanguageClientOptions) => BaseLanguageClient;

export type ServerState = 'starting' | 'running' | 'stopped';

/** The language server, as the rest of the extension sees it. */
export interface Server extends Disposable {
    readonly state: ServerState;
    readonly onState: (listener: (state: ServerState) => void) => Disposable;
    /**
     * @returns undefined where the server is not there to answer
     * @throws what the server answers instead
     */
    ask<P, R>(request: Request<P, R>, params: P): Promise<R | undefined>;
    /** Listens from now on, through restarts too. */
    hear<P>(notice: Notice<P>, listener: (told: P) => void): Disposable;
    restart(): Promise<void>;
    readonly log: LogOutputChannel;
}

/** Starts the server without waiting for it. */
export function startServer(context: ExtensionContext, launch: Launch): Server {
    const log = window.createOutputChannel('Layback', { log: true });
    const changed = new EventEmitter<ServerState>();
    const started: InitializationOptions = { commands: Object.values(commands), files: true };
    const client = launch({
        documentSelector: [{ language: 'layback' }],
        initializationOptions: started,
        diagnosticCollectionName: 'layback',
        outputChannel: log,
        revealOutputChannelOn: RevealOutputChannelOn.Never,
        errorHandler: fewRestarts(),
    });
    let state: ServerState = 'starting';
    const enter = (next: ServerState) => {
        if (next === state) return;
        state = next;
        changed.fire(state);
    };
    client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) enter('running');
        else enter(newState === State.Starting ? 'starting' : 'stopped');
    });
    answerForFiles(client);
    const heard = new Map<string, EventEmitter<unknown>>();
    /** The client has room for one listener to a message; here it is passed on to any number. */
    const passOn = (method: string) => {
        const told = new EventEmitter<unknown>();
        heard.set(method, told);
        client.onNotification(method, (params: unknown) => told.fire(params));
        return told;
    };
    const start = async () => {
        try {
            await client.start();
        } catch (fault) {
            log.error(`The language server does not start. ${(fault as Error).stack ?? fault}`);
            enter('stopped');
        }
    };
    void start();
    context.subscriptions.push(log, changed);

    return {
        get state() {
            return state;
        },
        onState: changed.event,
        async ask({ method }, params) {
            if (state !== 'running') return undefined;
            return client.sendRequest(method, params);
        },
        hear: ({ method }, listener) =>
            (heard.get(method) ?? passOn(method)).event(listener as (told: unknown) => void),
        async restart() {
            if (client.needsStop()) await client.stop().catch((fault) => log.warn(String(fault)));
            await start();
        },
        log,
        dispose: () => void client.dispose().catch(() => undefined),
    };
}

/** A server that ends is started again, but not for ever: what ends it five times in three minutes will do so again. */
function fewRestarts(): LanguageClientOptions['errorHandler'] {
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
