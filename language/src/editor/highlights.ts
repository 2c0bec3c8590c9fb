import type { DocumentHighlightProvider } from 'langium/lsp';
import { DocumentHighlight, DocumentHighlightKind } from 'vscode-languageserver';
import { definitionNamed } from './named.ts';
import { positionsAlike } from './positions-alike.ts';
import type { EditorServices } from './services.ts';
import { spotAt } from './spot.ts';

/** Marks every place of the file that names the same thing as the word at the caret. */
export function highlights(services: EditorServices): DocumentHighlightProvider {
    return {
        getDocumentHighlight(document, { position }) {
            const spot = spotAt(document, position);
            if (!spot) return undefined;
            const definition = definitionNamed(spot, services);
            if (!definition) {
                return positionsAlike(spot.node).flatMap(({ node, isBlock }) =>
                    node.$cstNode ? [DocumentHighlight.create(node.$cstNode.range, kindOf(isBlock))] : [],
                );
            }
            return services.references.References.findReferences(definition, {
                documentUri: document.uri,
                includeDeclaration: true,
            })
                .filter(({ sourceUri }) => sourceUri.toString() === document.uri.toString())
                .map(({ segment, sourcePath, targetPath }) =>
                    DocumentHighlight.create(segment.range, kindOf(sourcePath === targetPath)),
                )
                .toArray();
        },
    };
}

function kindOf(introduces: boolean): DocumentHighlightKind {
    return introduces ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
}
