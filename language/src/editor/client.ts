import type { ClientCapabilities, InitializeParams } from 'vscode-languageserver';
import { Emitter } from 'vscode-languageserver';
import type { InitializationOptions } from './protocol.ts';

/** What is known of the editor at the other end. */
export class Client {
    capabilities: ClientCapabilities = {};
    options: InitializationOptions = {};
    private readonly initialized = new Emitter<void>();
    readonly onInitialized = this.initialized.event;

    meet({ capabilities, initializationOptions }: InitializeParams): void {
        this.capabilities = capabilities;
        this.options = (initializationOptions as InitializationOptions | null) ?? {};
    }

    begin(): void {
        this.initialized.fire();
    }

    /** Whether it carries out a command of ours. */
    carriesOut(command: string): boolean {
        return this.options.commands?.includes(command) ?? false;
    }

    /** Whether it asks for the findings of open files instead of being told. */
    get pullsFindings(): boolean {
        return this.capabilities.textDocument?.diagnostic !== undefined;
    }

    get takesSnippets(): boolean {
        return this.capabilities.textDocument?.completion?.completionItem?.snippetSupport === true;
    }

    /** Whether an edit may make a file. */
    get makesFiles(): boolean {
        const { documentChanges, resourceOperations } = this.capabilities.workspace?.workspaceEdit ?? {};
        return documentChanges === true && resourceOperations?.includes('create') === true;
    }

    /** Snippets in edits of files, as an action makes them. */
    get takesSnippetEdits(): boolean {
        const { documentChanges, snippetEditSupport } = this.capabilities.workspace?.workspaceEdit ?? {};
        return documentChanges === true && snippetEditSupport === true;
    }
}
