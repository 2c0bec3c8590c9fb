import {
    type AstNode,
    type BuildOptions,
    DocumentState,
    isOperationCancelled,
    type LangiumDocument,
    type URI,
} from 'langium';
import { CancellationToken, Emitter, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import { addLibraryFile } from '../plan/load.ts';
import type { Reach } from '../plan/names/reach.ts';
import { ReachBuilder } from '../plan/names/relink.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import type { LaybackServices } from '../plan/services.ts';
import type { EditorSharedServices } from './services.ts';
import { type Changes, type Sources, textParsed } from './sources.ts';
import { Turnstile } from './turnstile.ts';
import { Usage } from './usage.ts';

/**
 * Builds what an edit touches: the edited files, what uses them, files that they newly use, and files whose
 * findings depend on who uses them. After an update everything is as a first look at the same texts would find it.
 */
export class EditorBuilder extends ReachBuilder {
    readonly usage = new Usage();
    private readonly outcome = new Emitter<readonly URI[]>();
    /** Files that are refused, or no longer so. */
    readonly onOutcome = this.outcome.event;
    private readonly back = new Emitter<readonly URI[]>();
    /** Files whose texts are what they were, although the editor has counted on. */
    readonly onBack = this.back.event;
    private readonly sources: Sources;
    private readonly reachOfFiles: Reach;
    /** Lets whoever waits look again: after every step that anybody may wait for. */
    private readonly steps = new Turnstile();
    private announced = 0;
    /** How far the whole workspace is. The builder's own word for it runs ahead between the two rounds of an update. */
    private reached: DocumentState = DocumentState.Changed;
    /** What ended the last update; until the next one nothing more is to be waited for. */
    private fault: unknown;

    constructor(services: EditorSharedServices, reach: Reach, sources: Sources) {
        super(services, reach);
        this.reachOfFiles = reach;
        this.sources = sources;
        this.updateBuildOptions = { validation: true };
    }

    /** Says that an update is on its way: whoever asks about the whole workspace waits for it. */
    announce(): void {
        this.announced++;
    }

    override async update(changed: URI[], deleted: URI[], token = CancellationToken.None): Promise<void> {
        await this.watched(async () => {
            let changes: Changes;
            try {
                changes = await this.sources.sort(changed, deleted);
            } finally {
                this.announced--;
            }
            const comesOrGoes =
                changes.deleted.length > 0 ||
                changes.changed.some((uri) => !this.langiumDocuments.hasDocument(uri));
            if (changes.outcomes.length > 0 || comesOrGoes) this.recheckUsers(changes.outcomes, comesOrGoes);
            if (changes.outcomes.length > 0) this.tellOutcomes(changes.outcomes);
            if (changes.back.length > 0) this.back.fire(changes.back);
            const isIdle = changes.changed.length + changes.deleted.length === 0;
            if (!isIdle || !this.isAllBuilt()) await super.update(changes.changed, changes.deleted, token);
            // Nothing to do; but an update that did all was perhaps overtaken before it could say so.
            else await this.tellBuilt([], token);
        });
    }

    override async build<T extends AstNode>(
        documents: LangiumDocument<T>[],
        options?: BuildOptions,
        token?: CancellationToken,
    ): Promise<void> {
        await this.watched(() => super.build(documents, options, token));
    }

    /** Sees to it that nobody waits for what a fault has ended. */
    private async watched(act: () => Promise<void>): Promise<void> {
        this.fault = undefined;
        this.reached = DocumentState.Changed;
        try {
            await act();
        } catch (fault) {
            if (!isOperationCancelled(fault)) this.fault = fault;
            throw fault;
        } finally {
            this.steps.open();
        }
    }

    /** Tells of files that have no document, and something to say. */
    tellOutcomes(uris: readonly URI[]): void {
        this.outcome.fire(uris);
    }

    /** Brings in the plans of new folders and lets go of others; what a `use` means may change everywhere. */
    async moveFolders(added: readonly URI[], left: URI[], token: CancellationToken): Promise<void> {
        await this.watched(async () => {
            const { changed } = await this.sources.sort(added, []);
            for (const document of this.langiumDocuments.all)
                this.resetToState(document, DocumentState.ComputedScopes);
            await super.update(changed, left, token);
        });
    }

    /** Every check of a file is one check. */
    protected override resultsAreIncomplete(): boolean {
        return false;
    }

    protected override async findChangedUris(changed: URI): Promise<URI[]> {
        return [changed];
    }

    protected override async buildDocuments(
        documents: LangiumDocument[],
        options: BuildOptions,
        token: CancellationToken,
    ): Promise<void> {
        const all = await this.withUsedFiles(this.sortDocuments(documents), token);
        this.reachOfFiles.forget();
        await super.buildDocuments(all, options, token);
        // A second round, for files that came into or fell out of use.
        const stale = this.langiumDocuments.all
            .filter(({ state }) => state < DocumentState.Validated)
            .toArray();
        if (stale.length > 0) await super.buildDocuments(stale, options, token);
        await this.tellBuilt([...all, ...stale], token);
    }

    /** Only now everything is as it should be: whoever waits for the whole workspace hears of the last round. */
    private async tellBuilt(documents: LangiumDocument[], token: CancellationToken): Promise<void> {
        // Of a build without documents nobody would be told.
        const told = documents.length > 0 ? documents : this.langiumDocuments.all.limit(1).toArray();
        await super.notifyBuildPhase(told, DocumentState.Validated, token);
        this.reached = DocumentState.Validated;
        this.steps.open();
    }

    /** Parses documents, and brings in what they use from where nobody has looked yet. */
    private async withUsedFiles(
        documents: readonly LangiumDocument[],
        token: CancellationToken,
    ): Promise<LangiumDocument[]> {
        const all = [...documents];
        for (let next = all.slice(); next.length > 0; ) {
            await this.runCancelable(next, DocumentState.Parsed, token, (document) =>
                this.langiumDocumentFactory.update(document, token),
            );
            next = await this.bringIn(next.flatMap((document) => this.reachOfFiles.targets(document)));
            all.push(...next);
        }
        return all;
    }

    private async bringIn(uris: readonly URI[]): Promise<LangiumDocument[]> {
        const found: LangiumDocument[] = [];
        for (const uri of uris) {
            if (this.langiumDocuments.hasDocument(uri) || this.sources.refusals.has(uri.toString())) continue;
            if (uri.scheme === LIBRARY_SCHEME) {
                const built = addLibraryFile(this.serviceRegistry.getServices(uri) as LaybackServices, uri);
                if (built) found.push(built);
                continue;
            }
            const text = await this.sources.take(uri);
            if (text !== undefined) found.push(this.langiumDocuments.createDocument(uri, text));
        }
        return found;
    }

    /** Files whose findings tell of a file without a document, or of the names of files that there are. */
    private recheckUsers(outcomes: readonly URI[], comesOrGoes: boolean): void {
        const told = new Set(outcomes.map((uri) => uri.toString()));
        for (const document of this.langiumDocuments.all) {
            const isTold = told.size > 0 && this.reachOfFiles.isAffected(document, told);
            if (isTold || (comesOrGoes && this.usesNothing(document)))
                this.resetToState(document, DocumentState.IndexedReferences);
        }
    }

    private usesNothing(document: LangiumDocument): boolean {
        return this.reachOfFiles.targets(document).some((uri) => !this.langiumDocuments.hasDocument(uri));
    }

    private isAllBuilt(): boolean {
        return this.langiumDocuments.all.every(
            ({ uri, state }) =>
                state === DocumentState.Validated && this.buildState.get(uri.toString())?.completed === true,
        );
    }

    protected override async emitUpdate(changed: URI[], deleted: URI[]): Promise<void> {
        for (const uri of deleted) this.recheck(this.usage.forget(uri.toString()));
        await super.emitUpdate(changed, deleted);
        this.steps.open();
    }

    protected override async runCancelable(
        documents: LangiumDocument[],
        state: DocumentState,
        token: CancellationToken,
        each: (document: LangiumDocument) => unknown,
    ): Promise<void> {
        await super.runCancelable(documents, state, token, each);
        // See `tellBuilt`.
        if (state < DocumentState.Validated) this.reached = state;
        this.steps.open();
    }

    protected override async notifyBuildPhase(
        documents: LangiumDocument[],
        state: DocumentState,
        token: CancellationToken,
    ): Promise<void> {
        if (state === DocumentState.IndexedReferences) this.recheck(this.usage.note(documents));
        // See `tellBuilt`.
        if (state === DocumentState.Validated) return;
        await super.notifyBuildPhase(documents, state, token);
    }

    /**
     * Tells of a document whatever has happened meanwhile: one that is done is not looked at again, so a listener who
     * was passed over in a hurry would never hear of it.
     */
    protected override async notifyDocumentPhase(
        document: LangiumDocument,
        state: DocumentState,
        token: CancellationToken,
    ): Promise<void> {
        for (const listener of this.documentPhaseListeners.get(state).slice())
            await listener(document, token);
        this.steps.open();
    }

    private recheck(documents: Iterable<LangiumDocument>): void {
        for (const document of documents) this.resetToState(document, DocumentState.IndexedReferences);
    }

    /** A request may overtake the update for the very text that it asks about. */
    protected override async awaitDocumentState(
        state: DocumentState,
        uri: URI,
        token: CancellationToken,
    ): Promise<URI> {
        await this.until(() => {
            if (this.isBehind(uri)) return false;
            const document = this.langiumDocuments.getDocument(uri);
            return !document || document.state >= state;
        }, token);
        return super.awaitDocumentState(state, uri, token);
    }

    protected override async awaitBuilderState(
        state: DocumentState,
        token: CancellationToken,
    ): Promise<void> {
        await this.until(
            () =>
                this.announced === 0 &&
                !this.sources.open().some((uri) => this.isBehind(uri)) &&
                this.reached >= state,
            token,
        );
    }

    /**
     * Waits for something that comes about by itself sooner or later.
     *
     * @throws where it does not: the request was cancelled, or the update that would have brought it failed
     */
    private async until(isSo: () => boolean, token: CancellationToken): Promise<void> {
        while (!isSo()) {
            if (this.fault !== undefined && this.announced === 0)
                throw new ResponseError(
                    LSPErrorCodes.RequestFailed,
                    'The last update failed; the log says how.',
                );
            await this.steps.wait(token);
        }
    }

    /** Whether the editor's text of a file is ahead of its syntax tree: then an update is on its way. */
    isBehind(uri: URI): boolean {
        const text = this.sources.openText(uri);
        if (text === undefined || this.sources.refusals.has(uri.toString())) return false;
        const document = this.langiumDocuments.getDocument(uri);
        if (!document) return true;
        return document.state >= DocumentState.Parsed && textParsed(document) !== text;
    }
}
