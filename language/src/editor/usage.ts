import { type AstNode, AstUtils, isReference, type LangiumDocument } from 'langium';

/**
 * Which definitions other files refer to. A definition that nobody uses is a finding in the file that holds it,
 * so an edit in one file can change what is found in another one that does not even know the first.
 */
export class Usage {
    private readonly foreign = new Map<string, ReadonlySet<AstNode>>();
    private readonly counts = new Map<AstNode, number>();

    /** Whether a file other than the definition's own refers to it. */
    isUsed(definition: AstNode): boolean {
        return this.counts.has(definition);
    }

    /**
     * Takes note of what linked documents refer to.
     *
     * @returns the documents whose definitions came into or fell out of use
     */
    note(documents: readonly LangiumDocument[]): Set<LangiumDocument> {
        const touched = new Set<AstNode>();
        for (const document of documents) this.replace(document.uri.toString(), foreignOf(document), touched);
        return ownersOf(touched);
    }

    /** The same for a document that is gone. */
    forget(uri: string): Set<LangiumDocument> {
        const touched = new Set<AstNode>();
        this.replace(uri, new Set(), touched);
        return ownersOf(touched);
    }

    private replace(uri: string, now: ReadonlySet<AstNode>, touched: Set<AstNode>): void {
        const before = this.foreign.get(uri);
        now.size > 0 ? this.foreign.set(uri, now) : this.foreign.delete(uri);
        for (const definition of now) if (!before?.has(definition)) this.count(definition, 1, touched);
        for (const definition of before ?? []) if (!now.has(definition)) this.count(definition, -1, touched);
    }

    private count(definition: AstNode, by: 1 | -1, touched: Set<AstNode>): void {
        const before = this.counts.get(definition) ?? 0;
        const now = before + by;
        now > 0 ? this.counts.set(definition, now) : this.counts.delete(definition);
        if (before === 0 || now === 0) touched.add(definition);
    }
}

function foreignOf(document: LangiumDocument): Set<AstNode> {
    const found = new Set<AstNode>();
    for (const reference of document.references) {
        const target = isReference(reference) ? reference.ref : undefined;
        if (target && AstUtils.getDocument(target) !== document) found.add(target);
    }
    return found;
}

/** Those that still stand in the text: a definition that was parsed anew is another node. */
function ownersOf(definitions: ReadonlySet<AstNode>): Set<LangiumDocument> {
    const owners = new Set<LangiumDocument>();
    for (const definition of definitions) {
        const root = AstUtils.findRootNode(definition);
        if (root.$document?.parseResult.value === root) owners.add(root.$document);
    }
    return owners;
}
