import type { LangiumDocument, URI } from 'langium';
import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import { library } from '../../library/library.ts';
import { PACKAGE_SCHEME, packageOf } from '../../plan/names/packages.ts';
import { LIBRARY_SCHEME, pathBetween, pathOf, targetOf, usesOf } from '../../plan/names/uses.ts';
import type { EditorServices } from '../services.ts';
import type { Quoted } from './caret.ts';

/** Paths for a `use` line: the team's files as seen from here, and the built-in library. */
export function fileOffers(
    quoted: Quoted,
    document: LangiumDocument,
    { shared }: EditorServices,
): CompletionItem[] {
    const { textDocument, uri } = document;
    const range = { start: textDocument.positionAt(quoted.start), end: textDocument.positionAt(quoted.end) };
    const written = textDocument.getText(range);
    const used = new Set(
        usesOf(document.parseResult.value as Sheet)
            .map(pathOf)
            .filter((path) => path !== written),
    );
    const files = shared.workspace.LangiumDocuments.all
        .filter((other) => other.uri.scheme === uri.scheme && other.uri.toString() !== uri.toString())
        .map((other) => pathTo(other.uri, uri))
        .filter((path) => ['file', 'package'].includes(targetOf(uri, path, shared.names.Reach.roots).kind))
        .toArray();
    const builtIn = [...library.keys()]
        .filter((name) => name !== 'basics')
        .map((name) => `${LIBRARY_SCHEME}:${name}`);
    return [...files, ...builtIn]
        .filter((path) => !used.has(path))
        .map((path) => ({
            label: path,
            kind: CompletionItemKind.File,
            // What lies nearest comes first, the library last.
            sortText: `${path.startsWith(`${LIBRARY_SCHEME}:`) ? 9 : path.includes(':') ? 8 : path.split('/').length} ${path}`,
            filterText: path,
            textEdit: { range, newText: path },
        }));
}

function pathTo(uri: URI, from: URI): string {
    const own = packageOf(uri);
    return own
        ? `${PACKAGE_SCHEME}:${own.name}${uri.path.slice(own.folder.path.length)}`
        : pathBetween(from, uri);
}
