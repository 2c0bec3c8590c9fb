import { commands, Uri, window, workspace } from 'vscode';
import { type Picture, type PictureWanted, picture, png } from '../../../language/src/editor/protocol.ts';
import type { Place } from '../gaze.ts';
import type { Server } from '../server.ts';
import type { Shown, View } from './messages.ts';

/**
 * Writes a picture to a file, in light inks whatever the screen looks like: it is for paper, and for others.
 *
 * @param wanted  what may be meant; the first of it that there is, is exported
 */
export async function exportDiagram(
    ending: 'svg' | 'png',
    { server }: { readonly server: Server },
    wanted: readonly PictureWanted[],
): Promise<void> {
    await server.started();
    let [want, drawn]: [PictureWanted?, (Picture | null)?] = [];
    for (const each of wanted) {
        drawn = await server.ask(picture, each);
        want = each;
        if (drawn) break;
    }
    if (!want || !drawn) {
        void window.showInformationMessage('Nothing to export: put the caret into a spread.');
        return;
    }
    const target = await window.showSaveDialog({
        title: `Export ${drawn.plan.title}`,
        defaultUri: beside(Uri.parse(want.uri, true), drawn.plan.name, want.view, ending),
        filters: ending === 'svg' ? { 'SVG drawing': ['svg'] } : { 'PNG image': ['png'] },
    });
    if (!target) return;
    const bytes = ending === 'svg' ? new TextEncoder().encode(drawn.svg) : await pixels(server, want);
    if (!bytes) throw new Error('The Layback language server is not running.');
    await workspace.fs.writeFile(target, bytes);
    const old = drawn.outdated ? ` It is not the text as it stands. ${drawn.outdated}` : '';
    const openIt = 'Open It';
    const chosen = await window.showInformationMessage(`Wrote ${nameIn(target)}.${old}`, openIt);
    if (chosen === openIt) await commands.executeCommand('vscode.open', target);
}

export function wantedOf({ uri, plan, view }: Shown): PictureWanted {
    return { uri, plan, view: onPaper(view) };
}

export function wantedAt({ document, caret }: Place, view: View = 'above'): PictureWanted {
    const { line, character } = caret;
    return { uri: document.uri.toString(), position: { line, character }, view: onPaper(view) };
}

/** What moves, and what is compared, goes onto paper from above; `layback draw` has all of them. */
function onPaper(view: View): 'above' | 'side' {
    return view === 'side' ? 'side' : 'above';
}

async function pixels(server: Server, want: PictureWanted): Promise<Uint8Array | undefined> {
    const content = await server.ask(png, want);
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
