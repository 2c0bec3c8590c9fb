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

/** A reach that works out once where the `use` lines of a text lead: at every keystroke all of them are asked. */
export class RememberedReach extends Reach {
    private edges = new WeakMap<Sheet, readonly URI[]>();
    private edgesFor: readonly URI[] = this.roots;

    override targets(document: LangiumDocument): URI[] {
        if (this.edgesFor !== this.roots) {
            this.edgesFor = this.roots;
            this.edges = new WeakMap();
        }
        const sheet = document.parseResult.value as Sheet;
        let targets = this.edges.get(sheet);
        if (!targets) {
            targets = super.targets(document);
            this.edges.set(sheet, targets);
        }
        return [...targets];
    }
}
