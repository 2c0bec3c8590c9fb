/*
 * What the language toolkit's core takes from the editor protocol's packages: a token, an emitter, an error,
 * positions and ranges.
 * In the command's bundle this stands in for those packages, whose loading would take longer than the check of
 * a small file. The build fails if the core ever asks for more than stands here.
 */

interface Disposable {
    dispose(): void;
}

type Listener<T> = (event: T) => unknown;
type Event<T> = (listener: Listener<T>, context?: unknown, owned?: Disposable[]) => Disposable;

const never: Event<unknown> = () => ({ dispose() {} });

export const CancellationToken = {
    None: Object.freeze({ isCancellationRequested: false, onCancellationRequested: never }),
    Cancelled: Object.freeze({ isCancellationRequested: true, onCancellationRequested: never }),
    is: (value: unknown) =>
        typeof (value as typeof CancellationToken.None)?.isCancellationRequested === 'boolean',
};

export class Emitter<T> {
    private readonly listeners = new Set<() => Listener<T>>();

    readonly event: Event<T> = (listener, context, owned) => {
        const entry = () => (context === undefined ? listener : listener.bind(context));
        this.listeners.add(entry);
        const disposable = { dispose: () => void this.listeners.delete(entry) };
        owned?.push(disposable);
        return disposable;
    };

    fire(event: T): void {
        for (const listener of [...this.listeners]) listener()(event);
    }

    dispose(): void {
        this.listeners.clear();
    }
}

export class CancellationTokenSource {
    private readonly emitter = new Emitter<undefined>();
    readonly token = { isCancellationRequested: false, onCancellationRequested: this.emitter.event };

    cancel(): void {
        if (this.token.isCancellationRequested) return;
        this.token.isCancellationRequested = true;
        this.emitter.fire(undefined);
        this.emitter.dispose();
    }

    dispose(): void {
        this.emitter.dispose();
    }
}

/** Codes of the language server protocol 3.17, "Base Protocol", response message. */
export const LSPErrorCodes = { RequestFailed: -32803, ServerCancelled: -32802 };

export class ResponseError extends Error {
    readonly code: number;

    constructor(code: number, message: string) {
        super(message);
        this.code = code;
    }
}

interface Position {
    line: number;
    character: number;
}

export const Position = { create: (line: number, character: number): Position => ({ line, character }) };
export const Range = { create: (start: Position, end: Position) => ({ start, end }) };
