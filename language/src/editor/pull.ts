import { DocumentState, URI } from 'langium';
import {
    type Connection,
    type Diagnostic,
    type DocumentDiagnosticReport,
    DocumentDiagnosticReportKind,
    LSPErrorCodes,
    ResponseError,
} from 'vscode-languageserver';
import type { EditorSharedServices } from './services.ts';
import { soon } from './soon.ts';

/** After so long, ms, what changed meanwhile is asked for in one go. */
const gather = 60;

/**
 * Answers an editor that asks what is found in an open file, and tells it to ask again where findings change
 * without an edit in that file: the late ones, and those that another file brings about.
 */
export function answerPulls(connection: Connection, services: EditorSharedServices): void {
    const { Findings, Client, Sources } = services.editor;
    const { DocumentBuilder, WorkspaceManager, TextDocuments } = services.workspace;
    const answered = new Map<string, string>();

    connection.languages.diagnostics.on(async ({ textDocument, previousResultId }, token) => {
        const uri = URI.parse(textDocument.uri);
        const key = uri.toString();
        await WorkspaceManager.ready;
        try {
            await DocumentBuilder.waitUntil(DocumentState.Validated, uri, token);
        } catch (reason) {
            // A file that is not read has no document to wait for, and still something to say.
            if (!Sources.refusals.has(key)) return cancelled(reason);
        }
        const items = Findings.diagnosticsOf(key);
        const resultId = nameOf(items);
        answered.set(key, resultId);
        return reportOf(items, resultId, previousResultId);
    });

    TextDocuments.onDidClose(({ document }) => answered.delete(document.uri));
    const askAgain = soon(gather, () => {
        const isOther = [...answered].some(
            ([uri, resultId]) => nameOf(Findings.diagnosticsOf(uri)) !== resultId,
        );
        if (isOther) connection.languages.diagnostics.refresh().catch(() => undefined);
    });
    Findings.onChange(({ uri }) => {
        if (Client.capabilities.workspace?.diagnostics?.refreshSupport && answered.has(uri)) askAgain();
    });
}

function reportOf(items: Diagnostic[], resultId: string, previous?: string): DocumentDiagnosticReport {
    return resultId === previous
        ? { kind: DocumentDiagnosticReportKind.Unchanged, resultId }
        : { kind: DocumentDiagnosticReportKind.Full, resultId, items };
}

function cancelled(reason: unknown): ResponseError<{ retriggerRequest: boolean }> {
    if (reason instanceof ResponseError) return reason;
    return new ResponseError(LSPErrorCodes.ServerCancelled, 'The file changed.', { retriggerRequest: true });
}

/** Equal for equal findings (FNV-1a over their JSON): the same name means that nothing has to be sent. */
function nameOf(items: readonly Diagnostic[]): string {
    let hash = 0x811c9dc5;
    for (const character of JSON.stringify(items))
        hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193) >>> 0;
    return `${items.length}-${hash.toString(36)}`;
}
