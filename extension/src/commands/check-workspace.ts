import { commands, ProgressLocation, window } from 'vscode';
import { type Tally, tallyOfAll } from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';
import { countWords } from '../count-words.ts';
import type { Server } from '../server.ts';

/** How long to wait for the findings that take long, ms. */
const patience = 60_000;

/** Says what was found in all files of the workspace, once everything was looked for. */
export async function checkWorkspace(home: Home): Promise<void> {
    const server = await running(home);
    if (!server) return;
    const title = 'Checking every plan of the workspace';
    const tally = await window.withProgress({ location: ProgressLocation.Window, title }, () =>
        whole(server),
    );
    if (!tally) return;
    if (tally.files === 0) {
        const begin = 'New Team Folder…';
        const chosen = await window.showInformationMessage(
            'There is no .spread file in this workspace.',
            begin,
        );
        if (chosen) await commands.executeCommand('layback.newTeamFolder');
        return;
    }
    if (tally.errors + tally.warnings + tally.hints > 0) {
        await commands.executeCommand('workbench.actions.view.problems');
    }
    void window.showInformationMessage(tallyWords(tally));
}

/** The count when nothing is left to be sought, or as it is when that takes too long. */
async function whole(server: Server): Promise<Tally | undefined> {
    for (const end = Date.now() + patience; ; ) {
        const tally = await server.ask(tallyOfAll, {});
        if (!tally?.unfinished || Date.now() > end) return tally;
        await new Promise((resolve) => setTimeout(resolve, 300));
    }
}

export function tallyWords({ files, filesWithFindings, errors, warnings, hints, unfinished }: Tally): string {
    const of = files === 1 ? '1 file' : `${files} files`;
    const rest = unfinished ? ' Some findings are still being sought.' : '';
    const found = countWords({ errors, warnings, hints });
    if (found.length === 0) return `Nothing was found in ${of}.${rest}`;
    const listed = found.length === 1 ? found[0] : `${found.slice(0, -1).join(', ')} and ${found.at(-1)}`;
    return `${listed} in ${filesWithFindings} of ${of}.${rest}`;
}
