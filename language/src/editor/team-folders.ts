import { DefaultWorkspaceManager, type FileSystemNode, type LangiumDocument, URI } from 'langium';
import type { WorkspaceFolder } from 'vscode-languageserver';
import { addLibraryFile, libraryUris } from '../plan/load.ts';
import { isInside, planEnding } from '../plan/names/uses.ts';
import type { LaybackServices } from '../plan/services.ts';
import type { EditorBuilder } from './builder.ts';
import type { EditorSharedServices } from './services.ts';

/** The folders that are open, and everything in them that is a plan; beside them the built-in library. */
export class TeamFolders extends DefaultWorkspaceManager {
    private readonly services: EditorSharedServices;
    /** The folders' addresses: every file is asked about at every count. */
    private roots: readonly URI[] = [];

    constructor(services: EditorSharedServices) {
        super(services);
        this.services = services;
        this.initialBuildOptions = { validation: true };
    }

    /** Whether a file lies in one of the folders. */
    holds(uri: URI): boolean {
        return this.roots.some((root) => isInside(uri, root));
    }

    protected override async performStartup(folders: WorkspaceFolder[]): Promise<LangiumDocument[]> {
        // Whatever happens: what waits for this would otherwise wait for ever.
        return this.lookThrough(folders).finally(() => this._ready.resolve());
    }

    private async lookThrough(folders: WorkspaceFolder[]): Promise<LangiumDocument[]> {
        this.folders = folders;
        this.setRoots();
        const documents = this.libraryFiles();
        const { Sources } = this.services.editor;
        const plans = await Promise.all(folders.map(({ uri }) => Sources.plansIn(URI.parse(uri))));
        const distinct = new Map(plans.flat().map((uri) => [uri.toString(), uri]));
        await inSmallGroups([...distinct.values()], async (uri) => {
            const text = this.langiumDocuments.hasDocument(uri) ? undefined : await Sources.take(uri);
            if (text !== undefined) documents.push(this.langiumDocuments.createDocument(uri, text));
        });
        (this.documentBuilder as EditorBuilder).tellOutcomes(
            [...Sources.refusals.keys()].map((uri) => URI.parse(uri)),
        );
        return documents;
    }

    /** Folders that came or went while the server runs. */
    async change(added: readonly WorkspaceFolder[], removed: readonly WorkspaceFolder[]): Promise<void> {
        await this.ready;
        const gone = new Set(removed.map(({ uri }) => uri));
        this.folders = [...(this.folders ?? []).filter(({ uri }) => !gone.has(uri)), ...added];
        this.setRoots();
        const { Sources } = this.services.editor;
        await this.mutex.write(async (token) => {
            const builder = this.documentBuilder as EditorBuilder;
            const plans = await Promise.all(added.map(({ uri }) => Sources.plansIn(URI.parse(uri))));
            const left = this.langiumDocuments.all
                .map(({ uri }) => uri)
                .filter((uri) => removed.some((folder) => isInside(uri, URI.parse(folder.uri))))
                .filter((uri) => !this.holds(uri) && !Sources.isOpen(uri))
                .toArray();
            await builder.moveFolders(plans.flat(), left, token);
        });
    }

    /** A folder that was reported as changed is looked through by the sources, not here. */
    override async searchFolder(uri: URI): Promise<URI[]> {
        return this.services.editor.Sources.plansIn(uri);
    }

    override shouldIncludeEntry(entry: FileSystemNode): boolean {
        return entry.isFile && entry.uri.path.endsWith(planEnding);
    }

    private libraryFiles(): LangiumDocument[] {
        const [language] = this.serviceRegistry.all;
        return libraryUris().flatMap((uri) => addLibraryFile(language as LaybackServices, uri) ?? []);
    }

    private setRoots(): void {
        this.roots = (this.folders ?? []).map(({ uri }) => URI.parse(uri));
        this.services.names.Reach.roots = this.roots;
        this.services.editor.Sources.roots = this.roots;
    }
}

/** A few at a time: a folder of a thousand plans must not open a thousand files at once. */
async function inSmallGroups<T>(all: readonly T[], each: (one: T) => Promise<void>): Promise<void> {
    for (let at = 0; at < all.length; at += 16) await Promise.all(all.slice(at, at + 16).map(each));
}
