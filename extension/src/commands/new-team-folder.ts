import { commands, Uri, window, workspace } from 'vscode';
import { starter } from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';

/** Starts a folder with a boat, tackle, a method, rules and a first plan. Nothing that is there is overwritten. */
export async function newTeamFolder(home: Home): Promise<void> {
    const server = await running(home);
    if (!server) return;
    const folder = await chooseFolder();
    if (!folder) return;
    const files = await server.ask(starter, {});
    if (!files) return;
    for (const { path, text } of files) {
        await workspace.fs.writeFile(Uri.joinPath(folder, path), new TextEncoder().encode(text));
    }
    const first = files.find(({ path }) => path.startsWith('plans/'));
    if (isInWorkspace(folder)) {
        if (first) await window.showTextDocument(Uri.joinPath(folder, first.path), { preview: false });
        const measure = 'Open boat.spread';
        const said = 'The boat and every figure are made up. Put your own in their place, the boat’s first.';
        const next = await window.showInformationMessage(said, measure);
        if (next === measure) await window.showTextDocument(Uri.joinPath(folder, 'boat.spread'));
        return;
    }
    const openIt = 'Open Folder';
    const chosen = await window.showInformationMessage(`Wrote ${files.length} files.`, openIt);
    if (chosen === openIt) await commands.executeCommand('vscode.openFolder', folder);
}

async function chooseFolder(): Promise<Uri | undefined> {
    const [open] = workspace.workspaceFolders ?? [];
    if (!open) {
        const [parent] =
            (await window.showOpenDialog({
                title: 'Where should the team’s folder go?',
                canSelectFolders: true,
                canSelectFiles: false,
                openLabel: 'Put It Here',
            })) ?? [];
        return parent && (await nameFolder(parent, 'that folder'));
    }
    return nameFolder(open.uri, open.name);
}

/** Asks for the name of a folder that is not there, or is empty. */
async function nameFolder(parent: Uri, shown: string): Promise<Uri | undefined> {
    const name = await window.showInputBox({
        title: 'New Team Folder',
        prompt: `A folder in ${shown}`,
        value: (await isFree(parent)) ? '.' : 'our-boat',
        async validateInput(value) {
            const folder = below(parent, value);
            if (!folder)
                return 'Name a folder inside this one: letters, digits, hyphens, and / for one in another.';
            return (await isFree(folder))
                ? undefined
                : `${value} holds something already. Name a new folder.`;
        },
    });
    return name === undefined ? undefined : below(parent, name);
}

/** A folder inside another one, by a relative path that never leaves it; `.` for that one itself. */
function below(parent: Uri, path: string): Uri | undefined {
    const names = path
        .trim()
        .split('/')
        .filter((name) => name !== '' && name !== '.');
    if (path.trim() === '' || path.startsWith('/') || names.some((name) => !isPlainName(name)))
        return undefined;
    return Uri.joinPath(parent, ...names);
}

function isPlainName(name: string): boolean {
    return name !== '..' && !/[\\:*?"<>|\p{Cc}]/u.test(name);
}

async function isFree(folder: Uri): Promise<boolean> {
    const entries = await workspace.fs.readDirectory(folder).then(undefined, () => []);
    return entries.every(([name]) => name.startsWith('.'));
}

function isInWorkspace(folder: Uri): boolean {
    return workspace.getWorkspaceFolder(folder) !== undefined;
}
