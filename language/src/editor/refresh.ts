import { DocumentState } from 'langium';
import { CodeLensRefreshRequest } from 'vscode-languageserver';
import type { EditorSharedServices } from './services.ts';
import { soon } from './soon.ts';

/** So long, ms, what changes meanwhile is asked for in one go. */
const gather = { hints: 120, lenses: 400 };

/** Has the editor ask again for lenses and hints where they change without an edit in their own file. */
export function refresh(services: EditorSharedServices): void {
    const { Findings, Settings, Client } = services.editor;
    const { DocumentBuilder, TextDocuments } = services.workspace;
    const connection = services.lsp.Connection;
    const lenses = soon(gather.lenses, () => {
        if (Client.capabilities.workspace?.codeLens?.refreshSupport)
            connection?.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
    });
    const hints = soon(gather.hints, () => {
        if (Client.capabilities.workspace?.inlayHint?.refreshSupport)
            connection?.languages.inlayHint.refresh().catch(() => undefined);
    });
    const versions = new Map<string, number>();
    DocumentBuilder.onDocumentPhase(DocumentState.Validated, ({ uri }) => {
        const open = TextDocuments.get(uri);
        if (!open) return;
        // After an edit of its own the editor asks anyway.
        const isEdited = versions.get(open.uri) !== open.version;
        versions.set(open.uri, open.version);
        if (!isEdited) hints();
    });
    TextDocuments.onDidClose(({ document }) => versions.delete(document.uri));
    // Who uses what is counted over all files, so an edit anywhere may change a count.
    Findings.onChange(lenses);
    Settings.onChange(() => {
        lenses();
        hints();
    });
}
