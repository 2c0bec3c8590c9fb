import { DefaultLangiumDocuments, type LangiumDocument, type Stream, stream, type URI } from 'langium';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { Reach } from '../plan/names/reach.ts';

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
