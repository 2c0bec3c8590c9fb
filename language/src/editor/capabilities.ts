import { DefaultLanguageServer } from 'langium/lsp';
import {
    CodeActionKind,
    type InitializedParams,
    type InitializeParams,
    type InitializeResult,
} from 'vscode-languageserver';
import { fixAllKind } from './quick-fixes.ts';
import type { EditorSharedServices } from './services.ts';

/** Meets the client, and tells it what the server can do. */
export class LaybackServer extends DefaultLanguageServer {
    private readonly shared: EditorSharedServices;

    constructor(services: EditorSharedServices) {
        super(services);
        this.shared = services;
    }

    override async initialize(params: InitializeParams): Promise<InitializeResult> {
        this.shared.editor.Client.meet(params);
        return super.initialize(params);
    }

    protected override buildInitializeResult(params: InitializeParams): InitializeResult {
        const { capabilities } = super.buildInitializeResult(params);
        return {
            capabilities: {
                ...capabilities,
                selectionRangeProvider: true,
                inlayHintProvider: { resolveProvider: true },
                codeActionProvider: {
                    codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.Refactor, fixAllKind],
                },
                workspace: {
                    ...capabilities.workspace,
                    workspaceFolders: { supported: true, changeNotifications: true },
                },
                ...(this.shared.editor.Client.pullsFindings && {
                    diagnosticProvider: {
                        identifier: 'layback',
                        interFileDependencies: true,
                        workspaceDiagnostics: false,
                    },
                }),
            },
            serverInfo: { name: 'layback' },
        };
    }

    protected override fireInitializedOnDefaultServices(params: InitializedParams): void {
        this.shared.editor.Client.begin();
        void this.shared.workspace.WorkspaceManager.initialized(params).catch((fault) =>
            this.shared.lsp.Connection?.console.error(
                `The folders could not be read. ${fault?.stack ?? fault}`,
            ),
        );
    }
}
