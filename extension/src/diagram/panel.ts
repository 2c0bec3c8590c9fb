import { Uri, type WebviewPanel } from 'vscode';
import { page } from './page.ts';

/** Lays the page out in a panel. */
export function furnish(panel: WebviewPanel, extension: Uri): void {
    const { webview } = panel;
    const media = Uri.joinPath(extension, 'extension/media');
    panel.iconPath = {
        light: Uri.joinPath(media, 'spread-light.svg'),
        dark: Uri.joinPath(media, 'spread-dark.svg'),
    };
    const part = (name: string) => webview.asWebviewUri(Uri.joinPath(extension, 'dist', name)).toString();
    webview.options = { enableScripts: true, localResourceRoots: [Uri.joinPath(extension, 'dist')] };
    webview.html = page({
        script: part('preview.js'),
        style: part('preview.css'),
        source: webview.cspSource,
        nonce: nonce(),
    });
}

function nonce(): string {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
