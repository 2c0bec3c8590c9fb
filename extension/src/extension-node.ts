import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { begin } from './extension.ts';
import { provideTasks } from './tasks.ts';

/** In a desktop VS Code, or on a server that one is connected to: the server is a process of its own. */
export function activate(context: ExtensionContext): void {
    const module = context.asAbsolutePath('dist/server-node.cjs');
    begin(
        context,
        (options) =>
            new LanguageClient('layback', 'Layback', { module, transport: TransportKind.stdio }, options),
    );
    provideTasks(context);
}
