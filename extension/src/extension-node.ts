import type { ExtensionContext } from 'vscode';
import { begin } from './extension.ts';
import { provideTasks } from './tasks.ts';

/** In a desktop VS Code, or on a server that one is connected to: the server is a process of its own. */
export function activate(context: ExtensionContext) {
    const offered = begin(context, async (options) => {
        const { LanguageClient, TransportKind } = await import('vscode-languageclient/node');
        const module = context.asAbsolutePath('dist/server-node.cjs');
        return new LanguageClient('layback', 'Layback', { module, transport: TransportKind.stdio }, options);
    });
    provideTasks(context);
    return offered;
}
