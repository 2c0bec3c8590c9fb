import { Disposable, EventEmitter, type TextDocumentContentProvider, Uri, workspace } from 'vscode';
import { builtInText, checked, figures } from '../../language/src/editor/protocol.ts';
import type { Server } from './server.ts';

/** Texts that are on no disk and cannot be changed: the built-in library, pages of rules, figures of a plan. */
export function contributeTexts(server: Server): Disposable {
    return Disposable.from(
        workspace.registerTextDocumentContentProvider('layback', builtIn(server)),
        computed(server),
    );
}

function builtIn(server: Server): TextDocumentContentProvider {
    return {
        async provideTextDocumentContent(uri) {
            await untilRunning(server);
            const found = await server.ask(builtInText, { uri: uri.toString() });
            if (!found) throw new Error(`Nothing built in is called ${uri.toString(true)}.`);
            return found.text;
        },
    };
}

/** The figures of a plan as a text of their own, which changes with the plan. */
function computed(server: Server): Disposable {
    const changed = new EventEmitter<Uri>();
    const open = new Map<string, Uri>();
    return Disposable.from(
        changed,
        workspace.registerTextDocumentContentProvider(figuresScheme, {
            onDidChange: changed.event,
            async provideTextDocumentContent(address) {
                const of = figuresOf(address);
                if (!of) throw new Error('This address names no plan.');
                await untilRunning(server);
                open.set(of.uri, address);
                const found = await server.ask(figures, of);
                return found?.text ?? 'There is no such plan any more, or it cannot be read at the moment.\n';
            },
        }),
        server.hear(checked, ({ uri }) => {
            const address = open.get(uri);
            if (address) changed.fire(address);
        }),
        workspace.onDidCloseTextDocument(({ uri: address }) => {
            const of = address.scheme === figuresScheme ? figuresOf(address) : undefined;
            if (of) open.delete(of.uri);
        }),
    );
}

const figuresScheme = 'layback-figures';

/** The address under which the figures of a plan are read. */
export function figuresAddress(title: string, of: { readonly uri: string; readonly plan: string }): Uri {
    const name = title.replace(/[/\\?#]/g, ' ');
    return Uri.from({ scheme: figuresScheme, path: `/${name}, figures`, query: JSON.stringify(of) });
}

function figuresOf({ query }: Uri): { uri: string; plan: string } | undefined {
    try {
        const { uri, plan } = JSON.parse(query) as Record<string, unknown>;
        return typeof uri === 'string' && typeof plan === 'string' ? { uri, plan } : undefined;
    } catch {
        return undefined;
    }
}

/** A document that is opened with the window waits for the server that tells its text. */
async function untilRunning(server: Server): Promise<void> {
    if (!(await server.started())) throw new Error('The Layback language server is not running.');
}
