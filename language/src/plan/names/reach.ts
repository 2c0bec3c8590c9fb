import type { LangiumDocument, LangiumSharedCoreServices, URI } from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import { libraryUri, pathOf, targetOf, type UseTarget, usesOf } from './uses.ts';

/** Always in reach, and last: the words for materials and hook rigs are definitions like any other. */
export const PRELUDE = libraryUri('layback:basics');

/**
 * Which files a file sees: itself, what it uses, what those use, and the basics.
 *
 * A file's meaning depends on these and on nothing else, which is also what makes an edit cheap: only the files
 * that reach the edited one are looked at again. Edges are built from paths, not from files that are there, so a
 * file that appears later mends its users.
 */
export class Reach {
    /** Folders that no `use` may leave. */
    roots: readonly URI[] = [];
    /** Versions of installed packages, by the address of each file that was read of them. */
    readonly versions = new Map<string, string>();
    protected readonly services: LangiumSharedCoreServices;
    private readonly cache = new Map<string, readonly LangiumDocument<Sheet>[]>();
    /** Who reaches what changed last: every document is asked about the same change. */
    private affected: { readonly by: ReadonlySet<string>; readonly users: ReadonlySet<string> } | undefined;

    constructor(services: LangiumSharedCoreServices) {
        this.services = services;
    }

    /** The documents in reach of one, nearest first; a file that is not there is left out. */
    from(document: LangiumDocument): readonly LangiumDocument<Sheet>[] {
        const key = document.uri.toString();
        let reached = this.cache.get(key);
        if (!reached) {
            reached = this.walk(document as LangiumDocument<Sheet>);
            this.cache.set(key, reached);
        }
        return reached;
    }

    /** To be called whenever a file came, went or changed. */
    forget(): void {
        this.cache.clear();
        this.affected = undefined;
    }

    /** Where the `use` lines of a file may lead, in their order, whether or not anything is there. */
    targets(document: LangiumDocument): readonly URI[] {
        const found: URI[] = [];
        for (const use of usesOf(document.parseResult.value as Sheet)) {
            const target = targetOf(document.uri, pathOf(use), this.roots);
            if ('places' in target) found.push(...target.places);
            else if ('uri' in target) found.push(target.uri);
        }
        return found;
    }

    /** Where a path leads from a file: of the places where a package may lie, to the nearest that was read. */
    target(from: URI, path: string): UseTarget {
        const target = targetOf(from, path, this.roots);
        if (target.kind !== 'package') return target;
        const { LangiumDocuments } = this.services.workspace;
        return {
            ...target,
            uri: target.places.find((uri) => LangiumDocuments.hasDocument(uri)) ?? target.uri,
        };
    }

    /** Whether a file reaches any of the changed ones. */
    isAffected(document: LangiumDocument, changed: ReadonlySet<string>): boolean {
        if (this.affected?.by !== changed) this.affected = { by: changed, users: this.usersOf(changed) };
        return this.affected.users.has(document.uri.toString());
    }

    private usersOf(changed: ReadonlySet<string>): ReadonlySet<string> {
        const users = this.users();
        const affected = new Set(changed);
        for (const uri of affected) for (const user of users.get(uri) ?? []) affected.add(user);
        return affected;
    }

    /** Who uses a file, by its URI, whether or not it is there. */
    protected users(): ReadonlyMap<string, readonly string[]> {
        const users = new Map<string, string[]>();
        for (const document of this.services.workspace.LangiumDocuments.all) {
            const user = document.uri.toString();
            for (const target of this.targets(document)) {
                const key = target.toString();
                users.get(key)?.push(user) ?? users.set(key, [user]);
            }
        }
        return users;
    }

    private walk(start: LangiumDocument<Sheet>): readonly LangiumDocument<Sheet>[] {
        const documents = this.services.workspace.LangiumDocuments;
        const found = new Map([[start.uri.toString(), start]]);
        for (const document of found.values()) {
            for (const use of usesOf(document.parseResult.value)) {
                const target = this.target(document.uri, pathOf(use));
                if ('uri' in target) this.add(found, documents.getDocument(target.uri));
            }
        }
        this.add(found, documents.getDocument(PRELUDE));
        return [...found.values()];
    }

    private add(found: Map<string, LangiumDocument<Sheet>>, document: LangiumDocument | undefined): void {
        if (!document) return;
        const key = document.uri.toString();
        if (!found.has(key)) found.set(key, document as LangiumDocument<Sheet>);
    }
}
