import { FileType, SnippetString, Uri, window, workspace } from 'vscode';
import type { Home } from '../commands.ts';

/** Asks what a plan is called, makes a file for it beside the team's other plans, and begins it there. */
export async function newPlan({ gaze }: Home): Promise<void> {
    const folder = await plansFolder(gaze.place?.document.uri);
    if (!folder) {
        const document = await workspace.openTextDocument({ language: 'layback', content: '' });
        const editor = await window.showTextDocument(document);
        await editor.insertSnippet(planSnippet('Our first plan', []));
        return;
    }
    const title = await window.showInputBox({
        title: 'New Plan',
        prompt: `A file in ${shownAs(folder)}`,
        placeHolder: 'Settled day, two on deck',
        async validateInput(value) {
            if (nameFrom(value) === '') return 'Give it a title with at least one letter.';
            const file = fileFor(folder, value);
            return (await exists(file)) ? `${workspace.asRelativePath(file)} is there already.` : undefined;
        },
    });
    if (title === undefined) return;
    const file = fileFor(folder, title);
    await workspace.fs.writeFile(file, new Uint8Array());
    const editor = await window.showTextDocument(file, { preview: false });
    await editor.insertSnippet(planSnippet(title, await shelves(folder)));
}

function shownAs(folder: Uri): string {
    const whole = workspace.getWorkspaceFolder(folder);
    return whole?.uri.path === folder.path ? whole.name : workspace.asRelativePath(folder);
}

/** Where plans are kept: with the file that one works in if that is a plan, in `plans/` if there is one. */
async function plansFolder(current: Uri | undefined): Promise<Uri | undefined> {
    const root =
        (current && workspace.getWorkspaceFolder(current)?.uri) ?? workspace.workspaceFolders?.[0]?.uri;
    if (!root) return undefined;
    if (current && current.scheme === root.scheme) {
        const here = Uri.joinPath(current, '..');
        if (here.path !== root.path && here.path.endsWith('/plans')) return here;
        const below = Uri.joinPath(here, 'plans');
        if (await exists(below)) return below;
    }
    const found = await nearestPlans(root);
    if (found) return found;
    return current && current.scheme === root.scheme ? Uri.joinPath(current, '..') : root;
}

/** So many folders are looked into, and no more: somebody is waiting. */
const mostFolders = 200;

/**
 * The uppermost folder `plans/` with a plan in it. Looked for folder by folder: a search waits for whoever searches,
 * and for a folder that is on no disk that may be nobody.
 */
async function nearestPlans(root: Uri): Promise<Uri | undefined> {
    const folders = [root];
    for (let at = 0; at < folders.length && at < mostFolders; at++) {
        const folder = folders[at]!;
        const entries = await workspace.fs.readDirectory(folder).then(undefined, () => []);
        const isPlan = ([name, type]: [string, FileType]) => type & FileType.File && name.endsWith('.spread');
        if (folder !== root && folder.path.endsWith('/plans') && entries.some(isPlan)) return folder;
        const below = entries.filter(
            ([name, type]) => type & FileType.Directory && !/^\.|^node_modules$/.test(name),
        );
        folders.push(...below.map(([name]) => Uri.joinPath(folder, name)));
    }
    return undefined;
}

/** Files of the folder above that a plan is made from, as it names them: boats, tackle, rules, but no plans. */
async function shelves(folder: Uri): Promise<string[]> {
    if (!folder.path.endsWith('/plans')) return [];
    const above = Uri.joinPath(folder, '..');
    const entries = await workspace.fs.readDirectory(above).then(undefined, () => []);
    return entries
        .map(([name]) => name)
        .filter((name) => name.endsWith('.spread'))
        .sort()
        .map((name) => `../${name}`);
}

export function planSnippet(title: string, uses: readonly string[]): SnippetString {
    const snippet = new SnippetString();
    for (const path of [...uses, 'layback:species']) snippet.appendText(`use ${JSON.stringify(path)}\n`);
    snippet
        .appendText(`\n/** `)
        .appendPlaceholder('Who it is for, and when.')
        .appendText(
            ` */\nspread ${nameFrom(title)} ${JSON.stringify(title.replaceAll('"', '’'))} {\n    boat `,
        )
        .appendTabstop()
        .appendText('\n    target ')
        .appendTabstop()
        .appendText('\n    speed ')
        .appendPlaceholder('8')
        .appendText(' kn\n    sea ')
        .appendPlaceholder('0.5')
        .appendText(' m\n\n    ')
        .appendTabstop(0)
        .appendText('\n}\n');
    return snippet;
}

/** A title as a name that the language takes: lower case, words joined by hyphens. */
export function nameFrom(title: string): string {
    return title
        .normalize('NFKD')
        .replace(/\p{M}/gu, '')
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^[-0-9]+|-+$/g, '');
}

function fileFor(folder: Uri, title: string): Uri {
    return Uri.joinPath(folder, `${nameFrom(title)}.spread`);
}

function exists(uri: Uri): Promise<boolean> {
    return Promise.resolve(workspace.fs.stat(uri)).then(
        () => true,
        () => false,
    );
}
