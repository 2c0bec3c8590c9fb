import { ViewColumn, window, workspace } from 'vscode';
import { type Home, running } from '../commands.ts';
import { seasonAddress } from '../texts.ts';

/** Opens what the logs of the workspace tell, as a text that changes with them. */
export async function showSeason(home: Home): Promise<void> {
    if (!(await running(home))) return;
    const shown = await workspace.openTextDocument(seasonAddress());
    await window.showTextDocument(shown, { viewColumn: ViewColumn.Beside, preview: true });
}
