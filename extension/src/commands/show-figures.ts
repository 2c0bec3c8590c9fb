import { ViewColumn, window, workspace } from 'vscode';
import { figures } from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';
import { figuresAddress } from '../texts.ts';

/** Opens every computed number of the plan at the caret, as a text that changes with the plan. */
export async function showFigures(home: Home): Promise<void> {
    const server = await running(home);
    const { place } = home.gaze;
    if (!server) return;
    if (!place) {
        void window.showInformationMessage('Put the caret into a spread: its figures are shown.');
        return;
    }
    const { document, caret } = place;
    const uri = document.uri.toString();
    const found = await server.ask(figures, {
        uri,
        position: { line: caret.line, character: caret.character },
    });
    if (!found) {
        void window.showInformationMessage('There is no spread in this file.');
        return;
    }
    const shown = await workspace.openTextDocument(figuresAddress(found.title, { uri, plan: found.name }));
    await window.showTextDocument(shown, {
        viewColumn: ViewColumn.Beside,
        preserveFocus: true,
        preview: true,
    });
}
