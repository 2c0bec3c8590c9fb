import { URI } from 'langium';
import type { DocumentUpdateHandler } from 'langium/lsp';
import {
    DidChangeWatchedFilesNotification,
    type DidChangeWatchedFilesParams,
    Emitter,
    FileChangeType,
    type TextDocumentChangeEvent,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { EditorSharedServices } from './services.ts';

/** Hears of texts and files that change, in the editor and outside of it, and has everything brought up to date. */
export function updates(services: EditorSharedServices): DocumentUpdateHandler {
    const { WorkspaceManager, WorkspaceLock, DocumentBuilder } = services.workspace;
    const { Sources } = services.editor;
    const watched = new Emitter<DidChangeWatchedFilesParams>();

    async function update(changed: URI[], deleted: URI[]): Promise<void> {
        DocumentBuilder.announce();
        await WorkspaceManager.ready;
        await WorkspaceLock.write((token) => DocumentBuilder.update(changed, deleted, token)).catch((fault) =>
            services.lsp.Connection?.console.error(`An update failed. ${fault?.stack ?? fault}`),
        );
    }
    const updateOne = ({ document }: TextDocumentChangeEvent<TextDocument>) =>
        void update([URI.parse(document.uri)], []);

    services.editor.Client.onInitialized(() => {
        if (!services.editor.Client.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration)
            return;
        // Folders too: some clients report a folder that went, and none of the files in it.
        services.lsp.Connection?.client.register(DidChangeWatchedFilesNotification.type, {
            watchers: [{ globPattern: '**/*' }],
        });
    });

    return {
        didOpenDocument: () => Sources.lookAgain(),
        didChangeContent: updateOne,
        didSaveDocument: () => Sources.lookAgain(),
        // The text in the editor is gone, saved or not: what is on the disk counts again.
        didCloseDocument: updateOne,
        didChangeWatchedFiles(params) {
            Sources.lookAgain();
            watched.fire(params);
            const gone = params.changes.filter(({ type }) => type === FileChangeType.Deleted);
            const others = params.changes.filter(({ type }) => type !== FileChangeType.Deleted);
            void update(uris(others), uris(gone));
        },
        onWatchedFilesChange: watched.event,
    };
}

function uris(changes: DidChangeWatchedFilesParams['changes']): URI[] {
    return [...new Set(changes.map(({ uri }) => uri))].map((uri) => URI.parse(uri));
}
