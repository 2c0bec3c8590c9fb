import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink, Range } from 'vscode-languageserver';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { pathOf, usesOf } from '../plan/names/uses.ts';
import type { EditorServices } from './services.ts';
import { rangeOf } from './spot.ts';

/** The paths of `use` lines, where they lead to something. */
export function links({ shared }: EditorServices): DocumentLinkProvider {
    return {
        getDocumentLinks(document) {
            return usesOf(document.parseResult.value as Sheet).flatMap((use): DocumentLink[] => {
                const range = rangeOf(use, 'path');
                const target = shared.names.Reach.target(document.uri, pathOf(use));
                if (!range || !('uri' in target)) return [];
                if (!shared.workspace.LangiumDocuments.hasDocument(target.uri)) return [];
                const tooltip =
                    target.kind === 'library'
                        ? 'Built-in library'
                        : target.kind === 'package'
                          ? 'Open the file of the package'
                          : 'Open the file';
                return [{ range: insideQuotes(range, pathOf(use)), target: target.uri.toString(), tooltip }];
            });
        },
    };
}

/** The path without its quotes; a text ends on its line, so the rest of the line is the path. */
export function insideQuotes({ start }: Range, path: string): Range {
    const from = { line: start.line, character: start.character + 1 };
    return { start: from, end: { line: start.line, character: from.character + path.length } };
}
