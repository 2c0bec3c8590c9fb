import { DocumentState, URI } from 'langium';
import { type CancellationToken, type Connection, LSPErrorCodes } from 'vscode-languageserver';
import { sensitivityOf } from '../plan/analyse/sensitivity.ts';
import { inTurns, orCancelled, overtaken } from './in-turns.ts';
import { planWanted } from './pictures.ts';
import * as protocol from './protocol.ts';
import type { EditorSharedServices } from './services.ts';

/**
 * Answers what one metre, one line or one trade would make of a plan's tightest turns. That takes seconds, so it is
 * worked out when somebody asks, beside whatever else is asked or typed, and left off when nobody wants it any more
 * or the plan has changed.
 */
export function answerSensitivity(connection: Connection, services: EditorSharedServices): void {
    connection.onRequest(protocol.sensitivity.method, (wanted: protocol.PlanWanted, token) =>
        orCancelled(sensitivityAsked(wanted, services, token)),
    );
}

async function sensitivityAsked(
    wanted: protocol.PlanWanted,
    { workspace, editor }: EditorSharedServices,
    token: CancellationToken,
): Promise<protocol.Sensitivity | null> {
    const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = workspace;
    const uri = URI.parse(wanted.uri);
    await WorkspaceManager.ready;
    if (!LangiumDocuments.hasDocument(uri) && !TextDocuments.get(uri)) return null;
    await DocumentBuilder.waitUntil(DocumentState.Validated, uri, token);
    const document = LangiumDocuments.getDocument(uri);
    const sheet = editor.Checks.of(uri);
    const analysed = document && sheet && planWanted(sheet, wanted, document);
    if (!analysed) return null;

    const version = TextDocuments.get(uri)?.version;
    const sensitivity = await inTurns(sensitivityOf(analysed), () => {
        if (token.isCancellationRequested) throw overtaken(LSPErrorCodes.RequestCancelled);
        if (editor.Checks.of(uri) !== sheet || DocumentBuilder.isBehind(uri))
            throw overtaken(LSPErrorCodes.ContentModified);
    });
    const { sensitivityText } = await editor.Press.views();
    const { name, title } = analysed.plan;
    return {
        uri: uri.toString(),
        ...(version !== undefined && { version }),
        name,
        title,
        text: await sensitivityText({ ...analysed, sensitivity }),
    };
}
