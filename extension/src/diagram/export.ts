import { CancellationTokenSource, commands, Uri, window, workspace } from 'vscode';
import { type NotCompared, png } from '../../../language/src/editor/protocol.ts';
import type { Place } from '../gaze.ts';
import type { Server } from '../server.ts';
import { type Sheet, sheetOf, type Wanted } from './look.ts';
import type { Shown, View } from './messages.ts';
import type { Choice } from './scene-messages.ts';

/** What may be meant by a command. */
export type Meant = Omit<Wanted, 'wishes'>;

/**
 * Writes a view to a file, in light inks whatever the screen looks like: it is for paper, and for others.
 *
 * @param wanted  what may be meant; the first of it that there is, is exported
 */
export async function exportDiagram(
    ending: 'svg' | 'png',
    server: Server,
    wanted: readonly Meant[],
): Promise<void> {
    await server.started();
    const { token } = new CancellationTokenSource();
    let drawn: Sheet | NotCompared | undefined;
    for (const each of wanted) {
        drawn = await sheetOf(server, { ...each, wishes: {} }, token);
        if (drawn) break;
    }
    if (!drawn) {
        void window.showInformationMessage('Nothing to export: put the caret into a spread.');
        return;
    }
    if ('reason' in drawn) {
        void window.showInformationMessage(drawn.reason);
        return;
    }
    const target = await window.showSaveDialog({
        title: `Export ${drawn.plan.title}`,
        defaultUri: beside(Uri.parse(drawn.uri, true), drawn.plan.name, drawn.view, ending),
        filters: ending === 'svg' ? { 'SVG drawing': ['svg'] } : { 'PNG image': ['png'] },
    });
    if (!target) return;
    const bytes = ending === 'svg' ? new TextEncoder().encode(drawn.svg) : await pixels(server, drawn.svg);
    await workspace.fs.writeFile(target, bytes);
    const old = drawn.outdated ? ` It is not the text as it stands. ${drawn.outdated}` : '';
    const openIt = 'Open It';
    const chosen = await window.showInformationMessage(`Wrote ${nameIn(target)}.${old}`, openIt);
    if (chosen === openIt) await commands.executeCommand('vscode.open', target);
}

/** What a panel shows; a bite on the line at the caret, unless another one was chosen. */
export function wantedOf({ uri, plan, view, choice = {}, pinned }: Shown, place?: Place): Meant {
    const isHere = !pinned && place?.document.uri.toString() === uri;
    const position = isHere && { position: { line: place.caret.line, character: place.caret.character } };
    return { uri, plan, ...position, view, choice };
}

export function wantedAt({ document, caret }: Place, view: View = 'above', choice: Choice = {}): Meant {
    const { line, character } = caret;
    return { uri: document.uri.toString(), position: { line, character }, view, choice };
}

async function pixels(server: Server, svg: string): Promise<Uint8Array> {
    const content = await server.ask(png, { svg });
    if (typeof content !== 'string') throw new Error('The Layback language server is not running.');
    return Uint8Array.from(atob(content), (character) => character.charCodeAt(0));
}

/** Named as the command line names it: after the plan, and after the view where it is not the usual one. */
function beside(file: Uri, plan: string, view: View, ending: string): Uri {
    const name = `${plan}${view === 'above' ? '' : `-${view}`}.${ending}`;
    return file.scheme === 'untitled' ? Uri.file(name) : Uri.joinPath(file, '..', name);
}

function nameIn(uri: Uri): string {
    return workspace.asRelativePath(uri);
}
