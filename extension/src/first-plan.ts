import { commands, Disposable, workspace } from 'vscode';
import { checked } from '../../language/src/editor/protocol.ts';
import type { Server } from './server.ts';

/** Tells the walkthrough of a plan that was saved as one in which nothing is found, its turns included. */
export function contributeFirstPlan(server: Server): Disposable {
    /** The version of each text that was saved last, and that in which nothing was found. */
    const saved = new Map<string, number>();
    const clean = new Map<string, number>();
    const look = (uri: string) => {
        const version = saved.get(uri);
        if (version === undefined || version !== clean.get(uri)) return;
        void commands.executeCommand('setContext', 'layback.firstCleanPlan', true);
    };
    return Disposable.from(
        workspace.onDidSaveTextDocument(({ languageId, uri, version }) => {
            if (languageId !== 'layback') return;
            saved.set(uri.toString(), version);
            look(uri.toString());
        }),
        // Versions count from the opening of a text.
        workspace.onDidCloseTextDocument(({ uri }) => {
            saved.delete(uri.toString());
            clean.delete(uri.toString());
        }),
        server.hear(checked, ({ uri, version, phase, plans, errors, warnings, hints }) => {
            clean.delete(uri);
            if (version === undefined || phase !== 'second') return;
            if (plans === 0 || errors + warnings + hints > 0) return;
            clean.set(uri, version);
            look(uri);
        }),
    );
}
