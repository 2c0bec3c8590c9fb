import { DocumentState, type LangiumDocument, URI } from 'langium';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { library } from '../library/library.ts';
import { PRELUDE } from './names/reach.ts';
import { LIBRARY_SCHEME, libraryUri, nameInLibrary } from './names/uses.ts';
import type { LaybackServices } from './services.ts';

/** What became of reading a file. A reason completes `plan.spread …`, as in `is not UTF-8`. */
export type FileText =
    /** `version` is of the package that the file was read from. */
    | { readonly kind: 'text'; readonly text: string; readonly version?: string }
    | { readonly kind: 'missing' }
    | { readonly kind: 'unread'; readonly reason: string };

/** Where texts come from. The language itself never touches a disk. */
export type Files = (uri: URI) => FileText;

/** Files brought in and linked, with everything that they reach. */
export interface Loaded {
    readonly services: LaybackServices;
    /** The files asked for that could be read, in the order asked. */
    readonly documents: readonly LangiumDocument<Sheet>[];
    /** Files that are there and could not be read, by URI, and why; asked for or used. */
    readonly unread: ReadonlyMap<string, string>;
    /** Files that were asked for too, and are not in memory now. */
    readonly others?: readonly URI[];
}

/**
 * Reads files and what they use, follows every `use` once, and links them all.
 *
 * @param roots  folders that no `use` may leave; without any around a file, anything relative goes
 */
export async function load(
    services: LaybackServices,
    wanted: readonly URI[],
    files: Files,
    roots: readonly URI[] = [],
): Promise<Loaded> {
    const { LangiumDocuments, DocumentBuilder } = services.shared.workspace;
    services.shared.names.Reach.roots = roots;
    const unread = new Map<string, string>();
    addLibraryFile(services, PRELUDE);
    const waiting = [...wanted];
    for (const uri of waiting) {
        if (LangiumDocuments.hasDocument(uri)) continue;
        const document = open(services, uri, files, unread);
        if (document) waiting.push(...services.shared.names.Reach.targets(document));
    }
    const unlinked = LangiumDocuments.all.filter((each) => each.state < DocumentState.Linked).toArray();
    await DocumentBuilder.build(unlinked, { validation: false });
    const documents = wanted.flatMap((uri) => LangiumDocuments.getDocument(uri) ?? []);
    return { services, documents: documents as LangiumDocument<Sheet>[], unread };
}

/**
 * The same for very many files, which are not all held at once: what others use is brought in first and stays, each of
 * the rest is there for its turn only. Its meaning is the same, since it hangs on nothing but what it reaches. Those
 * that stay come last, together.
 */
export async function* loadInTurn(
    services: LaybackServices,
    wanted: readonly URI[],
    files: Files,
    roots: readonly URI[] = [],
): AsyncGenerator<Loaded> {
    const { LangiumDocuments } = services.shared.workspace;
    const there = missesOnce(files);
    services.shared.names.Reach.roots = roots;
    const used = new Map<string, URI>();
    for (const uri of wanted) {
        const document = open(services, uri, there, new Map());
        if (!document) continue;
        for (const target of services.shared.names.Reach.targets(document))
            used.set(target.toString(), target);
        LangiumDocuments.deleteDocument(uri);
    }
    const { unread } = await load(services, [...used.values()], there, roots);
    const stays = wanted.filter((uri) => LangiumDocuments.hasDocument(uri));
    for (const uri of wanted) {
        if (LangiumDocuments.hasDocument(uri)) continue;
        const one = await load(services, [uri], there, roots);
        yield { ...one, unread: new Map([...unread, ...one.unread]), others: wanted };
        LangiumDocuments.deleteDocument(uri);
    }
    yield { ...(await load(services, stays, there, roots)), unread, others: wanted };
}

/** Asks for a file that cannot be had only once, however many use it. */
function missesOnce(files: Files): Files {
    const missed = new Map<string, FileText>();
    return (uri) => {
        const key = uri.toString();
        const found = missed.get(key) ?? files(uri);
        if (found.kind !== 'text') missed.set(key, found);
        return found;
    };
}

function open(
    services: LaybackServices,
    uri: URI,
    files: Files,
    unread: Map<string, string>,
): LangiumDocument | undefined {
    if (uri.scheme === LIBRARY_SCHEME) return addLibraryFile(services, uri);
    const found = files(uri);
    if (found.kind === 'unread') unread.set(uri.toString(), found.reason);
    if (found.kind !== 'text') return undefined;
    if (found.version !== undefined) services.shared.names.Reach.versions.set(uri.toString(), found.version);
    return addText(services, uri, found.text);
}

/** A file of the built-in library as a document; undefined where there is none of that name. */
export function addLibraryFile(services: LaybackServices, uri: URI): LangiumDocument | undefined {
    const { LangiumDocuments } = services.shared.workspace;
    const known = LangiumDocuments.getDocument(uri);
    if (known) return known;
    const text = library.get(nameInLibrary(uri));
    return text === undefined ? undefined : addText(services, uri, text);
}

/** Every file of the built-in library, for a server that shows them. */
export function libraryUris(): URI[] {
    return [...library.keys()].map(libraryUri);
}

function addText(services: LaybackServices, uri: URI, text: string): LangiumDocument {
    const { LangiumDocuments, LangiumDocumentFactory } = services.shared.workspace;
    const document = LangiumDocumentFactory.fromString(text, uri);
    LangiumDocuments.addDocument(document);
    return document;
}

/** One text on its own, as if it were the only file beside the built-in library. */
export function loadText(
    services: LaybackServices,
    text: string,
    uri = URI.file('/plan.spread'),
): Promise<Loaded> {
    return load(services, [uri], (asked) =>
        asked.toString() === uri.toString() ? { kind: 'text', text } : { kind: 'missing' },
    );
}
