import type { LangiumDocument, LangiumSharedCoreServices, URI } from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import { libraryUri, pathOf, targetOf, usesOf } from './uses.ts';

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
    private readonly services: LangiumSharedCoreServices;
    private readonly cache = new Map<string, readonly LangiumDocument<Sheet>[]>();
    private affectedBy = new WeakMap<ReadonlySet<string>, ReadonlySet<string>>();

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
    }

    /** Where the `use` lines of a file lead, in their order, whether or not anything is there. */
    targets(document: LangiumDocument): URI[] {
        const found: URI[] = [];
        for (const use of usesOf(document.parseResult.value as Sheet)) {
            const target = targetOf(document.uri, pathOf(use), this.roots);
            if ('uri' in target) found.push(target.uri);
        }
        return found;
    }

    /** Whether a file reaches any of the changed ones. */
    isAffected(document: LangiumDocument, changed: ReadonlySet<string>): boolean {
        let affected = this.affectedBy.get(changed);
        if (!affected) {
            affected = this.usersOf(changed);
            this.affectedBy.set(changed, affected);
        }
        return affected.has(document.uri.toString());
    }

    private usersOf(changed: ReadonlySet<string>): ReadonlySet<string> {
        const users = new Map<string, string[]>();
        for (const document of this.services.workspace.LangiumDocuments.all) {
            const user = document.uri.toString();
            for (const target of this.targets(document)) {
                const key = target.toString();
                users.get(key)?.push(user) ?? users.set(key, [user]);
            }
        }
        const affected = new Set(changed);
        for (const uri of affected) for (const user of users.get(uri) ?? []) affected.add(user);
        return affected;
    }

    private walk(start: LangiumDocument<Sheet>): readonly LangiumDocument<Sheet>[] {
        const documents = this.services.workspace.LangiumDocuments;
        const found = new Map([[start.uri.toString(), start]]);
        for (const document of found.values()) {
            for (const uri of this.targets(document)) this.add(found, documents.getDocument(uri));
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
