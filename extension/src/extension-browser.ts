import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { begin } from './extension.ts';

/** In VS Code for the Web: the server is a web worker. */
export function activate(context: ExtensionContext): void {
    const script = Uri.joinPath(context.extensionUri, 'dist/server-browser.js').toString(true);
    begin(
        context,
        (options) => new LanguageClient('layback', 'Layback', async () => new Worker(script), options),
    );
}
