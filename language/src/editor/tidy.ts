import type { LangiumDocument, ParseResult } from 'langium';
import type { Formatter } from 'langium/lsp';
import type { TextEdit } from 'vscode-languageserver';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { type Change, formatChanges, formatTyped } from './format.ts';
import type { EditorServices } from './services.ts';

/** Lays text out as the house writes it: a whole file, some lines, or what was just closed by `}` or Enter. */
export function tidy(services: EditorServices): Formatter {
    return {
        formatDocument: (document) => editsOf(formatChanges(sourceOf(document), services as never), document),

        formatDocumentRange(document, { range }) {
            const { textDocument } = document;
            const lines = {
                start: textDocument.offsetAt(range.start),
                end: textDocument.offsetAt(range.end),
            };
            return editsOf(formatChanges(sourceOf(document), services as never, lines), document);
        },

        formatDocumentOnType(document, { position, ch }) {
            if (ch !== '}' && ch !== '\n') return [];
            const offset = document.textDocument.offsetAt(position);
            return editsOf(formatTyped(sourceOf(document), services as never, offset, ch), document);
        },

        get formatOnTypeOptions() {
            return { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] };
        },
    };
}

function sourceOf({ textDocument, parseResult }: LangiumDocument) {
    return { text: textDocument.getText(), parsed: parseResult as ParseResult<Sheet> };
}

function editsOf(changes: readonly Change[], { textDocument }: LangiumDocument): TextEdit[] {
    return changes.map(({ start, end, text }) => ({
        range: { start: textDocument.positionAt(start), end: textDocument.positionAt(end) },
        newText: text,
    }));
}
