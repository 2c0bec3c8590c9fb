import { type ExtensionContext, Uri } from 'vscode';
import { begin } from './extension.ts';

/** In VS Code for the Web: the server is a web worker. */
export function activate(context: ExtensionContext) {
    const script = Uri.joinPath(context.extensionUri, 'dist/server-browser.js').toString(true);
    let worker: Worker | undefined;
    const end = () => worker?.terminate();
    context.subscriptions.push({ dispose: end });
    return begin(context, async (options) => {
        const library = await import('vscode-languageclient/browser');
        const connect = async () => {
            end();
            worker = new Worker(script);
            // Made here: the client only knows a worker by its class, and the editor has put another in its place.
            return {
                reader: new library.BrowserMessageReader(worker),
                writer: new library.BrowserMessageWriter(worker),
            };
        };
        return new library.LanguageClient('layback', 'Layback', connect, options);
    });
}
