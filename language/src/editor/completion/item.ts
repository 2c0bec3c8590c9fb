import {
    type CompletionItem,
    type CompletionItemKind,
    InsertTextFormat,
    type MarkupContent,
    MarkupKind,
} from 'vscode-languageserver';
import { commands } from '../protocol.ts';
import type { EditorServices } from '../services.ts';
import type { Caret } from './caret.ts';

/** Something to be put in, before anybody knows where. */
export interface Offer {
    readonly label: string;
    readonly kind: CompletionItemKind;
    /** Plain text to put in; the label where there is none. */
    readonly text?: string;
    /** The same with places to fill in, for an editor that has them. */
    readonly snippet?: string;
    readonly detail?: string;
    readonly documentation?: string;
    /** Items stand in the order of their ranks, then by label. */
    readonly rank: number;
    /** Something else to be completed follows at once. */
    readonly goesOn?: boolean;
    readonly data?: unknown;
    readonly filter?: string;
}

export function itemOf(offer: Offer, caret: Caret, services: EditorServices): CompletionItem {
    const { Client } = services.shared.editor;
    const { positionAt } = caret.document.textDocument;
    const at = (offset: number) => positionAt.call(caret.document.textDocument, offset);
    const isSnippet = offer.snippet !== undefined && Client.takesSnippets;
    const newText = isSnippet ? offer.snippet! : (offer.text ?? offer.label);
    const insert = { start: at(caret.start), end: at(caret.offset) };
    const replace = { start: at(caret.start), end: at(caret.end) };
    const { insertReplaceSupport } = Client.capabilities.textDocument?.completion?.completionItem ?? {};
    const goesOn = offer.goesOn && Client.carriesOut(commands.suggest);
    return {
        label: offer.label,
        kind: offer.kind,
        sortText: `${String(offer.rank).padStart(4, '0')} ${offer.label}`,
        textEdit: insertReplaceSupport ? { newText, insert, replace } : { newText, range: insert },
        insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
        ...(offer.filter && { filterText: offer.filter }),
        ...(offer.detail && { detail: offer.detail }),
        ...(offer.documentation && { documentation: markdown(offer.documentation) }),
        ...(goesOn && { command: { title: '', command: commands.suggest } }),
        ...(offer.data !== undefined && { data: offer.data }),
    };
}

function markdown(value: string): MarkupContent {
    return { kind: MarkupKind.Markdown, value };
}
