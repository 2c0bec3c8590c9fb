import { type AstNode, AstUtils } from 'langium';
import type { ReferencesProvider } from 'langium/lsp';
import { Location } from 'vscode-languageserver';
import type { Definition } from '../../grammar/generated/ast.ts';
import { definitionNamed } from './named.ts';
import { positionsAlike } from './positions-alike.ts';
import type { EditorServices } from './services.ts';
import { spotAt } from './spot.ts';

/** Everything that names a definition, in every file; for a position, wherever its plan speaks of it. */
export function references(services: EditorServices): ReferencesProvider {
    return {
        findReferences(document, { position, context }) {
            const spot = spotAt(document, position);
            if (!spot) return [];
            const definition = definitionNamed(spot, services);
            if (definition) return referencesTo(definition, services, context.includeDeclaration);
            return positionsAlike(spot.node)
                .filter(({ isBlock }) => context.includeDeclaration || !isBlock)
                .flatMap(({ node }) => locationOf(node));
        },
    };
}

export function referencesTo(
    definition: Definition,
    services: EditorServices,
    includeDeclaration = false,
): Location[] {
    return services.references.References.findReferences(definition, { includeDeclaration })
        .map(({ sourceUri, segment }) => Location.create(sourceUri.toString(), segment.range))
        .toArray();
}

function locationOf(node: AstNode): Location[] {
    const uri = AstUtils.getDocument(node).uri.toString();
    return node.$cstNode ? [Location.create(uri, node.$cstNode.range)] : [];
}
