import { Disposable, EventEmitter, type TextDocumentContentProvider, Uri, workspace } from 'vscode';
import {
    builtInText,
    checked,
    figures,
    type Sensitivity,
    season,
} from '../../language/src/editor/protocol.ts';
import type { Server } from './server.ts';

/** Texts that are on no disk and cannot be changed: the built-in library, pages of rules, figures, the season. */
export function contributeTexts(server: Server): Disposable {
    return Disposable.from(
        workspace.registerTextDocumentContentProvider('layback', builtIn(server)),
        computed(server),
        worked(server),
        counted(server),
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
    /** Each by its own address: a file may hold several plans. */
    const open = new Map<string, { readonly address: Uri; readonly uri: string }>();
    return Disposable.from(
        changed,
        workspace.registerTextDocumentContentProvider(figuresScheme, {
            onDidChange: changed.event,
            async provideTextDocumentContent(address) {
                const of = figuresOf(address);
                if (!of) throw new Error('This address names no plan.');
                await untilRunning(server);
                open.set(address.toString(), { address, uri: of.uri });
                const found = await server.ask(figures, of);
                return found?.text ?? 'There is no such plan any more, or it cannot be read at the moment.\n';
            },
        }),
        server.hear(checked, ({ uri }) => {
            for (const each of open.values()) if (each.uri === uri) changed.fire(each.address);
        }),
        workspace.onDidCloseTextDocument(({ uri: address }) => open.delete(address.toString())),
    );
}

/**
 * What took long to work out, as it was then. It is not worked out again by itself; once the plan is another one, it
 * says so.
 */
function worked(server: Server): Disposable {
    const changed = new EventEmitter<Uri>();
    return Disposable.from(
        changed,
        workspace.registerTextDocumentContentProvider(sensitivityScheme, {
            onDidChange: changed.event,
            provideTextDocumentContent(address) {
                const of = sensitivities.get(address.toString());
                if (!of) return 'Ask for it again: this was worked out before the window was opened.\n';
                const since =
                    'The file has changed since this was worked out. Ask again for the plan as it is.';
                return isAsItWas(of) ? of.text : `${since}\n\n${of.text}`;
            },
        }),
        server.hear(checked, ({ uri }) => {
            for (const [address, of] of sensitivities) if (of.uri === uri) changed.fire(Uri.parse(address));
        }),
        workspace.onDidCloseTextDocument(({ uri: address }) => sensitivities.delete(address.toString())),
    );
}

/** What the logs tell, counted anew when nobody types. */
function counted(server: Server): Disposable {
    const changed = new EventEmitter<Uri>();
    let isOpen = false;
    return Disposable.from(
        changed,
        workspace.registerTextDocumentContentProvider(seasonScheme, {
            onDidChange: changed.event,
            async provideTextDocumentContent() {
                await untilRunning(server);
                isOpen = true;
                return (await server.ask(season, {}))?.text ?? 'The season cannot be told at the moment.\n';
            },
        }),
        server.hear(checked, ({ phase }) => {
            if (isOpen && phase === 'second') changed.fire(seasonAddress());
        }),
        workspace.onDidCloseTextDocument(({ uri }) => {
            if (uri.scheme === seasonScheme) isOpen = false;
        }),
    );
}

/** The address under which the season is read. */
export function seasonAddress(): Uri {
    return Uri.from({ scheme: seasonScheme, path: '/The season' });
}

const seasonScheme = 'layback-season';

function isAsItWas({ uri, version }: Sensitivity): boolean {
    const document = workspace.textDocuments.find((each) => each.uri.toString() === uri);
    return document === undefined || version === undefined || document.version === version;
}

const sensitivityScheme = 'layback-sensitivity';
const sensitivities = new Map<string, Sensitivity>();

/** The address under which something is read that was worked out just now. */
export function sensitivityAddress(of: Sensitivity): Uri {
    const name = of.title.replace(/[/\\?#]/g, ' ');
    const query = JSON.stringify({ uri: of.uri, plan: of.name, version: of.version });
    const address = Uri.from({ scheme: sensitivityScheme, path: `/${name}, one change`, query });
    sensitivities.set(address.toString(), of);
    return address;
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
