import { DefaultLangiumDocumentFactory, DocumentState, type LangiumDocument, URI } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { library } from '../library/library.ts';
import { packageOf } from '../plan/names/packages.ts';
import { isInside, LIBRARY_SCHEME, nameInLibrary, planEnding } from '../plan/names/uses.ts';
import { type Disk, isLookedAt } from './disk.ts';
import { fitting, type Reading, type Refusal, stranger } from './reading.ts';
import type { EditorSharedServices } from './services.ts';

/** What happened to files, each told as what there is to do about it. */
export interface Changes {
    /** Texts that are new or other than before. */
    readonly changed: URI[];
    /** Documents to be forgotten: gone, or refused. */
    readonly deleted: URI[];
    /** Files without a document that users of them ask about: gone, refused, or no longer refused. */
    readonly outcomes: URI[];
    /** Open texts that are back where they were when they were last looked at: undone before anybody got to them. */
    readonly back: URI[];
}

/**
 * Where texts come from: the editor for a file that is open, else the disk, else the built-in library.
 *
 * A file that is no plan by any measure is refused: it has no document, and whoever uses it is told why.
 */
export class Sources {
    /** Files that are there and not read, by URI. */
    readonly refusals = new Map<string, Refusal>();
    /** Folders that links may not lead out of. */
    roots: readonly URI[] = [];
    private readonly services: EditorSharedServices;
    private readonly disk: Disk;
    /** Texts that were read to see whether they changed, for the parser to take. */
    private readonly fresh = new Map<string, string>();
    /** Files that were asked for and are not there, so that no keystroke asks again. */
    private readonly missing = new Set<string>();

    constructor(services: EditorSharedServices, disk: Disk) {
        this.services = services;
        this.disk = disk;
    }

    plansIn(folder: URI): Promise<URI[]> {
        return this.disk.plansIn(folder);
    }

    isOpen(uri: URI): boolean {
        return this.openText(uri) !== undefined;
    }

    /** The text of a file as the editor has it; undefined for one that is not open. */
    openText(uri: URI): string | undefined {
        return this.services.workspace.TextDocuments.get(uri)?.getText();
    }

    /** The files that are open. */
    open(): URI[] {
        return this.services.workspace.TextDocuments.all().map(({ uri }) => URI.parse(uri));
    }

    /** To be called whenever files may have appeared. */
    lookAgain(): void {
        this.missing.clear();
    }

    /** The text of a file as the parser is to see it; undefined where it is gone or refused. */
    async take(uri: URI): Promise<string | undefined> {
        const key = uri.toString();
        const open = this.openText(uri);
        if (open !== undefined) return open;
        const fresh = this.fresh.get(key);
        this.fresh.delete(key);
        if (fresh !== undefined) return fresh;
        if (this.missing.has(key)) return undefined;
        const reading = await this.read(uri);
        if (reading.kind === 'missing') this.missing.add(key);
        return reading.kind === 'text' ? reading.text : undefined;
    }

    /** Sorts what a client reports as changed and deleted, files and folders, into what there is to do. */
    async sort(changed: readonly URI[], deleted: readonly URI[]): Promise<Changes> {
        const changes: Changes = { changed: [], deleted: [], outcomes: [], back: [] };
        const seen = new Set<string>();
        const look = async (uri: URI) => {
            const key = uri.toString();
            if (seen.has(key)) return;
            seen.add(key);
            await this.look(uri, changes);
        };
        for (const uri of deleted) {
            // What is open stays, with the text that the editor has.
            for (const document of this.services.workspace.LangiumDocuments.getDocuments(uri)) {
                await look(document.uri);
            }
            await look(uri);
        }
        for (const uri of changed) {
            if (this.isKnown(uri)) await look(uri);
            else for (const plan of await this.plansAt(uri)) await look(plan);
        }
        for (const uri of this.packageFilesAt([...changed, ...deleted])) await look(uri);
        return changes;
    }

    /** Where packages may lie that some plan uses: they are read for that alone. */
    packageFiles(): URI[] {
        const { workspace, names } = this.services;
        const places = workspace.LangiumDocuments.all
            .toArray()
            .flatMap((each) => names.Reach.targets(each).filter(packageOf));
        return [...new Map(places.map((uri) => [uri.toString(), uri])).values()];
    }

    /** Of those, the ones whose packages, or folders of packages, changed. */
    private packageFilesAt(changed: readonly URI[]): URI[] {
        const within = changed.filter(({ path }) => path.includes('/node_modules'));
        if (within.length === 0) return [];
        const folders = within.map((uri) => packageOf(uri)?.folder ?? uri);
        return this.packageFiles().filter((file) => folders.some((folder) => isInside(file, folder)));
    }

    private async look(uri: URI, { changed, deleted, outcomes, back }: Changes): Promise<void> {
        const key = uri.toString();
        const document = this.services.workspace.LangiumDocuments.getDocument(uri);
        const wasRefused = this.refusals.has(key);
        const reading = await this.read(uri);
        if (reading.kind !== 'text') {
            if (document) deleted.push(uri);
            if (document || wasRefused || reading.kind === 'refused') outcomes.push(uri);
            return;
        }
        if (wasRefused) outcomes.push(uri);
        if (document && isAsParsed(document, reading.text)) {
            if (this.isOpen(uri)) back.push(uri);
            return;
        }
        if (!this.isOpen(uri)) this.fresh.set(key, reading.text);
        changed.push(uri);
    }

    /** The plans at an address where nobody has looked yet, if it lies where plans are looked for. */
    private async plansAt(uri: URI): Promise<readonly URI[]> {
        if (!this.roots.some((root) => isInside(uri, root) && isLookedAt(uri, root))) return [];
        if (uri.path.endsWith(planEnding)) return [uri];
        return (await this.disk.kindOf(uri)) === 'folder' ? this.disk.plansIn(uri) : [];
    }

    /** Whatever else lies about is nobody's to read, also where a `use` names it. */
    private async readPlan(uri: URI): Promise<Reading> {
        const { linkedPackages } = this.services.editor.Settings.current;
        if (uri.path.endsWith(planEnding))
            return this.disk.read(uri, this.roots, linkedPackages ? 'allowed' : 'refused');
        return (await this.disk.kindOf(uri)) === 'nothing'
            ? { kind: 'missing' }
            : stranger(`does not end in ${planEnding}`);
    }

    private isKnown(uri: URI): boolean {
        return this.services.workspace.LangiumDocuments.hasDocument(uri) || this.isOpen(uri);
    }

    private async read(uri: URI): Promise<Reading> {
        const key = uri.toString();
        const open = this.openText(uri);
        const reading =
            open !== undefined
                ? fitting(open)
                : uri.scheme === LIBRARY_SCHEME
                  ? builtIn(uri)
                  : await this.readPlan(uri);
        if (reading.kind === 'text' && reading.version !== undefined)
            this.services.names.Reach.versions.set(key, reading.version);
        if (reading.kind === 'refused') this.refusals.set(key, reading);
        else this.refusals.delete(key);
        return reading;
    }
}

function builtIn(uri: URI): Reading {
    const text = library.get(nameInLibrary(uri));
    return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
}

/** Whether a document is up to date with a text, so that there is nothing to do. */
function isAsParsed(document: LangiumDocument, text: string): boolean {
    // The text of a document is the editor's own, and was perhaps changed once more before it was closed.
    const { state, textDocument } = document;
    return (
        state === DocumentState.Validated && textParsed(document) === text && textDocument.getText() === text
    );
}

/** The text that a document's syntax tree was made from. */
export function textParsed(document: LangiumDocument): string | undefined {
    return document.parseResult.value.$cstNode?.root.fullText;
}

/** Makes documents from what the sources say, instead of reading files itself. */
export class SourcedDocuments extends DefaultLangiumDocumentFactory {
    private readonly sources: Sources;

    constructor(services: LangiumSharedServices, sources: Sources) {
        super(services);
        this.sources = sources;
    }

    protected override getInitialText(uri: URI): Promise<string> {
        return this.textOf(uri);
    }

    protected override getUpdatedText({ uri }: LangiumDocument): Promise<string> {
        return this.textOf(uri);
    }

    /** A file that went between being looked at and being read is empty until its going is reported. */
    private async textOf(uri: URI): Promise<string> {
        return (await this.sources.take(uri)) ?? '';
    }
}
