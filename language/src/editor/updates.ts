import { DocumentState, URI } from 'langium';
import type { DocumentUpdateHandler } from 'langium/lsp';
import {
    DidChangeWatchedFilesNotification,
    type DidChangeWatchedFilesParams,
    Emitter,
    FileChangeType,
    type TextDocumentChangeEvent,
    type TextEdit,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { safeEdits } from './quick-fixes.ts';
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
        const watchers = [{ globPattern: '**/*' }];
        services.lsp.Connection?.client
            .register(DidChangeWatchedFilesNotification.type, { watchers })
            .catch(() => undefined);
    });

    let { linkedPackages } = services.editor.Settings.current;
    services.editor.Settings.onChange((now) => {
        if (now.linkedPackages === linkedPackages) return;
        linkedPackages = now.linkedPackages;
        Sources.lookAgain();
        void update(Sources.packageFiles(), []);
    });

    return {
        didOpenDocument: () => Sources.lookAgain(),
        didChangeContent: updateOne,
        willSaveDocumentWaitUntil: ({ document }) => fixesOnSave(document, services),
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

/** The safe fixes of a file that is about to be saved, where a person wants that. */
async function fixesOnSave(document: TextDocument, services: EditorSharedServices): Promise<TextEdit[]> {
    if (!services.editor.Settings.current.fixOnSave) return [];
    const uri = URI.parse(document.uri);
    const found = await services.workspace.DocumentBuilder.waitUntil(DocumentState.Validated, uri)
        .then(() => services.editor.Findings.currentOf(uri.toString()))
        .catch(() => []);
    return safeEdits(found, services)?.changes?.[uri.toString()] ?? [];
}
