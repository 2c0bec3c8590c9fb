import { DocumentState } from 'langium';
import {
    addCodeActionHandler,
    addCodeLensHandler,
    addCompletionHandler,
    addDocumentHighlightHandler,
    addDocumentLinkHandler,
    addDocumentSymbolHandler,
    addDocumentUpdateHandler,
    addFileOperationHandler,
    addFindReferencesHandler,
    addFoldingRangeHandler,
    addFormattingHandler,
    addGotoDefinitionHandler,
    addHoverHandler,
    addInlayHintHandler,
    addRenameHandler,
    addSemanticTokenHandler,
    addSignatureHelpHandler,
    addTypeHierarchyHandler,
    addWorkspaceSymbolHandler,
} from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { answerCommands } from './extension-requests.ts';
import { resolveHint } from './hints.ts';
import { publish } from './publish.ts';
import { answerPulls } from './pull.ts';
import { refresh } from './refresh.ts';
import { answerRequests } from './requests.ts';
import { answerSelections } from './selection.ts';
import { answerSensitivity } from './sensitivity.ts';
import { createEditorServices, type EditorSharedServices, type Home } from './services.ts';
import { soon } from './soon.ts';
import type { TeamFolders } from './team-folders.ts';

/** Serves an editor over a connection until it goes. */
export function startServer(connection: Connection, home: Home): void {
    const { shared } = createEditorServices(connection, home);
    addDocumentUpdateHandler(connection, shared);
    addFileOperationHandler(connection, shared);
    addCodeActionHandler(connection, shared);
    addCompletionHandler(connection, shared);
    addHoverHandler(connection, shared, DocumentState.Validated);
    addInlayHintHandler(connection, shared, DocumentState.Validated);
    connection.languages.inlayHint.resolve(resolveHint);
    addCodeLensHandler(connection, shared, DocumentState.Validated);
    addSignatureHelpHandler(connection, shared, DocumentState.Parsed);
    addGotoDefinitionHandler(connection, shared);
    addFindReferencesHandler(connection, shared);
    addDocumentHighlightHandler(connection, shared);
    addDocumentLinkHandler(connection, shared, DocumentState.IndexedReferences);
    addRenameHandler(connection, shared);
    addDocumentSymbolHandler(connection, shared);
    addWorkspaceSymbolHandler(connection, shared);
    addFoldingRangeHandler(connection, shared);
    addSemanticTokenHandler(connection, shared);
    addFormattingHandler(connection, shared);
    addTypeHierarchyHandler(connection, shared);
    answerSelections(connection, shared);
    publish(shared);
    refresh(shared);
    answerPulls(connection, shared);
    answerRequests(connection, shared);
    answerCommands(connection, shared);
    answerSensitivity(connection, shared);

    connection.onInitialize((params) => shared.lsp.LanguageServer.initialize(params));
    connection.onInitialized((params) => {
        shared.lsp.LanguageServer.initialized(params);
        if (!shared.editor.Client.capabilities.workspace?.workspaceFolders) return;
        connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
            (shared.workspace.WorkspaceManager as TeamFolders)
                .change(added, removed)
                .catch((fault) =>
                    connection.console.error(`The folders did not change. ${fault?.stack ?? fault}`),
                );
        });
    });
    connection.onShutdown(() => shared.editor.SecondLook.stop());
    sweepAtRest(shared);
    shared.workspace.TextDocuments.listen(connection);
    connection.listen();
}

/** So long after findings are told, ms, whoever types has read nothing yet and pressed no further key. */
const breath = 15;

/** Tidies up between two keystrokes, so that it need not happen during one. */
function sweepAtRest({ editor }: EditorSharedServices): void {
    const { sweep } = editor.Home;
    if (!sweep) return;
    const due = soon(breath, sweep);
    editor.Findings.onChange(({ phase }) => phase === 'first' && due());
}
