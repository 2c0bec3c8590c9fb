import { ProgressLocation, ViewColumn, window, workspace } from 'vscode';
import { type Sensitivity, sensitivity } from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';
import { sensitivityAddress } from '../texts.ts';

/**
 * Works out what one change would make of the tightest turns of a plan, the one given or the one at the caret, and
 * opens that as a text. Takes seconds, says so, and can be cancelled.
 */
export async function showSensitivity(home: Home, ...[uri, plan]: unknown[]): Promise<void> {
    const server = await running(home);
    if (!server) return;
    const { place } = home.gaze;
    const wanted =
        typeof uri === 'string' && typeof plan === 'string'
            ? { uri, plan }
            : place && {
                  uri: place.document.uri.toString(),
                  position: { line: place.caret.line, character: place.caret.character },
              };
    if (!wanted) {
        void window.showInformationMessage('Put the caret into a spread: its turns are looked at.');
        return;
    }
    const title = 'Working out what one change would make of the turns';
    const location = ProgressLocation.Notification;
    const found = await window.withProgress({ location, title, cancellable: true }, async (_, token) => ({
        answer: await server.ask(sensitivity, wanted, token),
        isUnwanted: token.isCancellationRequested,
    }));
    if (found.answer) await open(found.answer);
    else if (!found.isUnwanted) void window.showInformationMessage('There is no spread in this file.');
}

async function open(found: Sensitivity): Promise<void> {
    const shown = await workspace.openTextDocument(sensitivityAddress(found));
    await window.showTextDocument(shown, {
        viewColumn: ViewColumn.Beside,
        preserveFocus: true,
        preview: true,
    });
}
