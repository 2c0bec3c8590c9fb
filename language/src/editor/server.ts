import { addDocumentUpdateHandler } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { publish } from './publish.ts';
import { answerPulls } from './pull.ts';
import { answerRequests } from './requests.ts';
import { createEditorServices, type Home } from './services.ts';
import type { TeamFolders } from './team-folders.ts';

/** Serves an editor over a connection until it goes. */
export function startServer(connection: Connection, home: Home): void {
    const { shared } = createEditorServices(connection, home);
    addDocumentUpdateHandler(connection, shared);
    publish(shared);
    answerPulls(connection, shared);
    answerRequests(connection, shared);

    connection.onInitialize((params) => shared.lsp.LanguageServer.initialize(params));
    connection.onInitialized((params) => {
        shared.lsp.LanguageServer.initialized(params);
        if (!shared.editor.Client.capabilities.workspace?.workspaceFolders) return;
        connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
            void (shared.workspace.WorkspaceManager as TeamFolders).change(added, removed);
        });
    });
    shared.workspace.TextDocuments.listen(connection);
    connection.listen();
}
