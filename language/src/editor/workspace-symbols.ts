import type { LangiumDocument, URI } from 'langium';
import type { WorkspaceSymbolProvider } from 'langium/lsp';
import type { WorkspaceSymbol } from 'vscode-languageserver';
import type { Definition } from '../../grammar/generated/ast.ts';
import { nameOf } from '../plan/names/scope.ts';
import { definitionsOf } from './named.ts';
import { symbolKinds } from './outline.ts';
import type { EditorSharedServices } from './services.ts';
import { rangeOf } from './spot.ts';
import type { TeamFolders } from './team-folders.ts';

/** Every definition of the team's, found by a part of its name or title. */
export function workspaceSymbols(services: EditorSharedServices): WorkspaceSymbolProvider {
    const { LangiumDocuments, WorkspaceManager, TextDocuments } = services.workspace;
    const folders = WorkspaceManager as TeamFolders;
    const isOurs = ({ uri }: LangiumDocument) => folders.holds(uri) || TextDocuments.get(uri) !== undefined;
    return {
        getSymbols({ query }) {
            const { FuzzyMatcher } = services.lsp;
            const asked = query.toLowerCase();
            const fits = (name: string, title = '') =>
                FuzzyMatcher.match(query, name) || title.toLowerCase().includes(asked);
            return LangiumDocuments.all
                .filter(isOurs)
                .flatMap((document) =>
                    definitionsOf(document.parseResult.value).flatMap(
                        (each) => symbolOf(each, document, fits) ?? [],
                    ),
                )
                .toArray();
        },
    };
}

function symbolOf(
    definition: Definition,
    { uri }: LangiumDocument,
    fits: (name: string, title?: string) => boolean,
): WorkspaceSymbol | undefined {
    const name = nameOf(definition) ?? ('date' in definition ? definition.date : undefined);
    const range = rangeOf(definition, nameOf(definition) ? 'name' : 'date');
    if (!name || !range || !fits(name, definition.title)) return undefined;
    return {
        name,
        kind: symbolKinds[definition.kind],
        containerName: [definition.kind, fileName(uri)].join(' in '),
        location: { uri: uri.toString(), range },
    };
}

function fileName(uri: URI): string {
    return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}
