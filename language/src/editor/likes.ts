import { AstUtils, DocumentState, type LangiumDocument, URI } from 'langium';
import type { TypeHierarchyProvider } from 'langium/lsp';
import type { TypeHierarchyItem } from 'vscode-languageserver';
import type { Definition } from '../../grammar/generated/ast.ts';
import { nameOf } from '../plan/names/scope.ts';
import { baseOf } from '../plan/resolve/gather.ts';
import { definitionNamed, definitionsOf, targetOf } from './named.ts';
import { symbolKinds } from './outline.ts';
import type { EditorServices } from './services.ts';
import { definitionAround, spotAt } from './spot.ts';

/** Walks along `like`: what a definition is like above it, what is like it below. */
export function likes(services: EditorServices): TypeHierarchyProvider {
    const { LangiumDocuments } = services.shared.workspace;

    /** An item comes back as it was sent; the text may have changed since. */
    const definitionOf = ({ uri, name, data }: TypeHierarchyItem): Definition | undefined => {
        const document = LangiumDocuments.getDocument(URI.parse(uri));
        return (
            document && definitionsIn(document).find((each) => nameOf(each) === name && each.kind === data)
        );
    };
    return {
        prepareTypeHierarchy(document, { position }) {
            const spot = spotAt(document, position);
            const definition = spot && (definitionNamed(spot, services) ?? definitionAround(spot.node));
            const item = definition && itemOf(definition);
            return item && [item];
        },
        supertypes({ item }) {
            const definition = definitionOf(item);
            const base = definition && baseOf(definition);
            const above = base && itemOf(base);
            return above ? [above] : [];
        },
        subtypes({ item }) {
            const definition = definitionOf(item);
            return (
                definition && likeOne(definition, LangiumDocuments.all).flatMap((each) => itemOf(each) ?? [])
            );
        },
    };
}

/** Every definition that is directly like another one. */
export function likeOne(definition: Definition, documents: Iterable<LangiumDocument>): Definition[] {
    const found: Definition[] = [];
    for (const document of documents) {
        if (document.state < DocumentState.Linked) continue;
        for (const each of definitionsIn(document)) if (baseOf(each) === definition) found.push(each);
    }
    return found;
}

function definitionsIn(document: LangiumDocument): readonly Definition[] {
    return definitionsOf(document.parseResult.value);
}

function itemOf(definition: Definition): TypeHierarchyItem | undefined {
    const target = targetOf(definition);
    const name = nameOf(definition);
    if (!target || !name) return undefined;
    const { uri } = AstUtils.getDocument(definition);
    return {
        name,
        kind: symbolKinds[definition.kind],
        detail: `${definition.kind} in ${uri.path.slice(uri.path.lastIndexOf('/') + 1)}`,
        uri: target.uri,
        range: target.whole,
        selectionRange: target.name,
        data: definition.kind,
    };
}
