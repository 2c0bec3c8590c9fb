import {
    type AstNode,
    AstUtils,
    CstUtils,
    DefaultLangiumDocuments,
    DocumentState,
    isReference,
    type LangiumDocument,
    type ReferenceDescription,
    type Stream,
    stream,
    type URI,
} from 'langium';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { referencesIn } from '../plan/names/link.ts';
import { Reach } from '../plan/names/reach.ts';
import { ReachIndex } from '../plan/names/relink.ts';
import type { EditorSharedServices } from './services.ts';

/** Documents that are gone over several times at every keystroke, so they are not gathered anew each time. */
export class TeamDocuments extends DefaultLangiumDocuments {
    private gathered: readonly LangiumDocument[] | undefined;

    override get all(): Stream<LangiumDocument> {
        this.gathered ??= [...this.documentTrie.all()];
        return stream(this.gathered);
    }

    override addDocument(document: LangiumDocument): void {
        this.gathered = undefined;
        super.addDocument(document);
    }

    override deleteDocument(uri: URI): LangiumDocument | undefined {
        this.gathered = undefined;
        return super.deleteDocument(uri);
    }

    override deleteDocuments(folder: URI): LangiumDocument[] {
        this.gathered = undefined;
        return super.deleteDocuments(folder);
    }
}

/** Looks for references when somebody asks for them; an index of them all would be renewed at every keystroke. */
export class ReferenceIndex extends ReachIndex {
    private readonly services: EditorSharedServices;

    constructor(services: EditorSharedServices, reach: Reach) {
        super(services, reach);
        this.services = services;
    }

    override findAllReferences(target: AstNode, targetPath: string): Stream<ReferenceDescription> {
        const targetUri = AstUtils.getDocument(target).uri;
        const found = this.services.workspace.LangiumDocuments.all
            .filter(({ state }) => state >= DocumentState.Linked)
            .flatMap((document) => {
                const { AstNodeLocator } = this.services.ServiceRegistry.getServices(document.uri).workspace;
                return placesOf(target, document).map(({ container, segment }) => ({
                    sourceUri: document.uri,
                    sourcePath: AstNodeLocator.getAstNodePath(container),
                    targetUri,
                    targetPath,
                    segment,
                    local: document.uri.toString() === targetUri.toString(),
                }));
            });
        return stream(found.toArray());
    }
}

/** Where a document refers to a node. */
function placesOf(target: AstNode, document: LangiumDocument) {
    if (!document.references.some((each) => isReference(each) && each.ref === target)) return [];
    return (document.parseResult.value as Sheet).definitions.flatMap((definition) =>
        referencesIn(definition).flatMap(({ reference, container }) => {
            const segment =
                isReference(reference) && reference.ref === target && reference.$refNode
                    ? CstUtils.toDocumentSegment(reference.$refNode)
                    : undefined;
            return segment ? [{ container, segment }] : [];
        }),
    );
}

/** Where the `use` lines of a text lead; the same object for as long as they lead to the same. */
interface Edges {
    readonly targets: readonly URI[];
}

/** A reach that works out once where the `use` lines of a text lead: at every keystroke all of them are asked. */
export class RememberedReach extends Reach {
    private readonly edges = new WeakMap<LangiumDocument, Edges & { of: Sheet; from: readonly URI[] }>();
    private used:
        | { readonly by: ReadonlyMap<string, readonly string[]>; readonly from: readonly Edges[] }
        | undefined;

    override targets(document: LangiumDocument): readonly URI[] {
        return this.edgesOf(document).targets;
    }

    /** Counted anew only where some file's `use` lines lead elsewhere than before. */
    protected override users(): ReadonlyMap<string, readonly string[]> {
        const from = this.services.workspace.LangiumDocuments.all.map((each) => this.edgesOf(each)).toArray();
        const before = this.used?.from;
        if (before?.length !== from.length || from.some((edges, at) => edges !== before[at]))
            this.used = { by: super.users(), from };
        return this.used!.by;
    }

    private edgesOf(document: LangiumDocument): Edges {
        const sheet = document.parseResult.value as Sheet;
        const known = this.edges.get(document);
        if (known?.of === sheet && known.from === this.roots) return known;
        const targets = super.targets(document);
        if (known && areSame(known.targets, targets)) {
            known.of = sheet;
            known.from = this.roots;
            return known;
        }
        const edges = { of: sheet, from: this.roots, targets };
        this.edges.set(document, edges);
        return edges;
    }
}

function areSame(some: readonly URI[], others: readonly URI[]): boolean {
    return (
        some.length === others.length && some.every((uri, at) => uri.toString() === others[at]!.toString())
    );
}
