import { type ExtensionContext, Uri } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { begin } from './extension.ts';

/** In VS Code for the Web: the server is a web worker. */
export function activate(context: ExtensionContext): void {
    const script = Uri.joinPath(context.extensionUri, 'dist/server-browser.js').toString(true);
    let worker: Worker | undefined;
    const end = () => worker?.terminate();
    const connect = async () => {
        end();
        worker = new Worker(script);
        // Made here: the client only knows a worker by its class, and the editor has put another one in its place.
        return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
    };
    context.subscriptions.push({ dispose: end });
    begin(context, (options) => new LanguageClient('layback', 'Layback', connect, options));
}
