import { URI } from 'langium';
import { packageOf } from '../plan/names/packages.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import { type Checked, checked, counted, type Tally } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';
import { soon } from './soon.ts';
import type { TeamFolders } from './team-folders.ts';

/** How long the whole workspace's count may lag behind, ms: it changes with every file of a first check. */
const countEvery = 150;

/**
 * Tells the editor what was found, without being asked: everything, for a client that does not ask; files that
 * are not open, for one that asks about those that are.
 */
export function publish(services: EditorSharedServices): void {
    const { Findings, Client } = services.editor;
    const connection = services.lsp.Connection;
    const { TextDocuments } = services.workspace;
    if (!connection) return;
    const told = new Set<string>();

    const tell = (uri: string) => {
        const isOpen = TextDocuments.get(uri) !== undefined;
        const isTold = isShown(URI.parse(uri), isOpen, services) && !(isOpen && Client.pullsFindings);
        const diagnostics = isTold ? Findings.diagnosticsOf(uri) : [];
        if (diagnostics.length === 0 && !told.has(uri)) return;
        diagnostics.length > 0 ? told.add(uri) : told.delete(uri);
        const { version } = TextDocuments.get(uri) ?? {};
        void connection.sendDiagnostics({ uri, diagnostics, ...(version !== undefined && { version }) });
    };

    const count = soon(countEvery, () => {
        void connection.sendNotification(counted.method, tallyOfAll(services));
    });

    /** The version of each open text that was last spoken of. */
    const spokenOf = new Map<string, number>();
    const say = (uri: string, phase: Checked['phase']) => {
        const open = TextDocuments.get(uri);
        if (open) spokenOf.set(uri, open.version);
        tell(uri);
        if (isShown(URI.parse(uri), open !== undefined, services))
            void connection.sendNotification(checked.method, checkedFile(uri, phase, services));
    };

    Findings.onChange(({ uri, phase }) => {
        say(uri, phase);
        count();
    });
    // Nothing was looked at, and whoever waits for this version would wait for ever.
    services.workspace.DocumentBuilder.onBack((uris) => {
        for (const uri of uris.map(String)) {
            if (spokenOf.get(uri) === TextDocuments.get(uri)?.version) continue;
            say(uri, 'first');
            if (Findings.hasLate(uri)) say(uri, 'second');
        }
    });
    TextDocuments.onDidOpen(({ document }) => {
        spokenOf.set(document.uri, document.version);
        tell(document.uri);
    });
    TextDocuments.onDidClose(({ document }) => {
        spokenOf.delete(document.uri);
        tell(document.uri);
    });
}

/** The built-in library has its findings, if any, in our own tests; files elsewhere, and of packages, when they are open. */
function isShown(uri: URI, isOpen: boolean, services: EditorSharedServices): boolean {
    if (uri.scheme === LIBRARY_SCHEME) return false;
    if (isOpen) return true;
    return !packageOf(uri) && (services.workspace.WorkspaceManager as TeamFolders).holds(uri);
}

function checkedFile(uri: string, phase: Checked['phase'], services: EditorSharedServices): Checked {
    const { version } = services.workspace.TextDocuments.get(uri) ?? {};
    const plans = services.editor.Checks.of(uri)?.plans.length ?? 0;
    return { uri, ...(version !== undefined && { version }), phase, plans, ...tallyOf(uri, services) };
}

function tallyOf(uri: string, { editor }: EditorSharedServices) {
    const findings = editor.Findings.severitiesOf(uri);
    const of = (severity: string) => findings.filter((each) => each === severity).length;
    return { errors: of('error'), warnings: of('warning'), hints: of('hint') };
}

/** How much is found in all files that are shown. */
export function tallyOfAll(services: EditorSharedServices): Tally {
    const { Checks, Sources, SecondLook } = services.editor;
    const uris = new Map([...Checks.all()].map(({ uri, document }) => [uri, document.uri]));
    for (const uri of Sources.refusals.keys()) uris.set(uri, URI.parse(uri));
    const shown = [...uris].filter(([, uri]) => isShown(uri, Sources.isOpen(uri), services));
    const tallies = shown.map(([uri]) => tallyOf(uri, services));
    const sum = (pick: (tally: (typeof tallies)[number]) => number) =>
        tallies.reduce((total, tally) => total + pick(tally), 0);
    return {
        files: shown.length,
        filesWithFindings: tallies.filter((tally) => tally.errors + tally.warnings + tally.hints > 0).length,
        errors: sum(({ errors }) => errors),
        warnings: sum(({ warnings }) => warnings),
        hints: sum(({ hints }) => hints),
        unfinished: SecondLook.isDue,
    };
}
