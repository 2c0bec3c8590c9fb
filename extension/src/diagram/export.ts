import { commands, Uri, window, workspace } from 'vscode';
import { type PictureWanted, picture, png } from '../../../language/src/editor/protocol.ts';
import type { Gaze } from '../gaze.ts';
import type { Server } from '../server.ts';
import type { Shown } from './messages.ts';

/**
 * Writes a picture to a file, in light inks whatever the screen looks like: it is for paper, and for others.
 *
 * @param shown  the diagram that is meant; without one, the plan at the caret
 */
export async function exportDiagram(
    ending: 'svg' | 'png',
    { server, gaze, extension }: { readonly server: Server; readonly gaze: Gaze; readonly extension: Uri },
    shown: Shown | undefined,
): Promise<void> {
    const want = shown ? wantedOf(shown) : wantedAt(gaze);
    if (!want) {
        void window.showInformationMessage('Open a plan first: the spread that the caret is in is exported.');
        return;
    }
    const drawn = await server.ask(picture, want);
    if (!drawn) {
        void window.showInformationMessage('There is no spread to export in this file.');
        return;
    }
    const target = await window.showSaveDialog({
        title: `Export ${drawn.plan.title}`,
        defaultUri: beside(Uri.parse(want.uri, true), drawn.plan.name, want.view, ending),
        filters: ending === 'svg' ? { 'SVG drawing': ['svg'] } : { 'PNG image': ['png'] },
    });
    if (!target) return;
    const bytes =
        ending === 'svg' ? new TextEncoder().encode(drawn.svg) : await pixels(server, want, extension);
    if (!bytes) throw new Error('The Layback language server is not running.');
    await workspace.fs.writeFile(target, bytes);
    const old = drawn.outdated ? ` It is not the text as it stands. ${drawn.outdated}` : '';
    const openIt = 'Open It';
    const chosen = await window.showInformationMessage(`Wrote ${nameIn(target)}.${old}`, openIt);
    if (chosen === openIt) await commands.executeCommand('vscode.open', target);
}

function wantedOf({ uri, plan, view }: Shown): PictureWanted {
    return { uri, plan, view };
}

function wantedAt({ place }: Gaze): PictureWanted | undefined {
    if (!place) return undefined;
    const { line, character } = place.caret;
    return { uri: place.document.uri.toString(), position: { line, character } };
}

async function pixels(server: Server, want: PictureWanted, extension: Uri): Promise<Uint8Array | undefined> {
    const press = Uri.joinPath(extension, 'dist/press').toString();
    const content = await server.ask(png, { ...want, press });
    if (content === undefined) return undefined;
    if (content === null) throw new Error('There is no such plan any more.');
    return Uint8Array.from(atob(content), (character) => character.charCodeAt(0));
}

/** Named as the command line names it: after the plan, and after the view where it is not the usual one. */
function beside(file: Uri, plan: string, view: PictureWanted['view'], ending: string): Uri {
    const name = `${plan}${view === 'side' ? '-side' : ''}.${ending}`;
    return file.scheme === 'untitled' ? Uri.file(name) : Uri.joinPath(file, '..', name);
}

function nameIn(uri: Uri): string {
    return workspace.asRelativePath(uri);
}
