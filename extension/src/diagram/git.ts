import { extensions, type Uri } from 'vscode';

/** Of the editor's Git extension, what is asked of it here; its first and so far only published interface. */
interface Git {
    getRepository(uri: Uri): { show(ref: string, path: string): Promise<string> } | null;
}

export type Committed = { readonly text: string } | { readonly reason: string };

/** A file's text as of its last commit; where there is none, what to do instead. */
export async function lastCommitted(uri: Uri): Promise<Committed> {
    const name = uri.path.slice(uri.path.lastIndexOf('/') + 1);
    const git = await gitOfEditor();
    if (!git) {
        return {
            reason: 'The editor’s Git extension is not there, or is turned off (the setting git.enabled), so there is no last commit to compare with. Compare with another plan, or run “layback diff” where the repository is.',
        };
    }
    const repository = git.getRepository(uri);
    if (!repository) {
        return {
            reason: `${name} is in no Git repository that the editor has open. Open the folder of the repository, or compare with another plan.`,
        };
    }
    try {
        return { text: await repository.show('HEAD', uri.fsPath) };
    } catch {
        return {
            reason: `${name} is not in the last commit. Commit it once, or compare with another plan.`,
        };
    }
}

async function gitOfEditor(): Promise<Git | undefined> {
    const extension = extensions.getExtension<{ getAPI(version: 1): Git }>('vscode.git');
    try {
        return (await extension?.activate())?.getAPI(1);
    } catch {
        // It is there, and turned off.
        return undefined;
    }
}
