import { commands, Disposable, workspace } from 'vscode';
import { checked } from '../../language/src/editor/protocol.ts';
import type { Server } from './server.ts';

/** Tells the walkthrough of a plan that was saved and in which nothing was found. */
export function contributeFirstPlan(server: Server): Disposable {
    const saved = new Set<string>();
    const clean = new Set<string>();
    const look = (uri: string) => {
        if (!saved.has(uri) || !clean.has(uri)) return;
        void commands.executeCommand('setContext', 'layback.firstCleanPlan', true);
    };
    return Disposable.from(
        workspace.onDidSaveTextDocument(({ languageId, uri }) => {
            if (languageId !== 'layback') return;
            saved.add(uri.toString());
            look(uri.toString());
        }),
        server.hear(checked, ({ uri, plans, errors, warnings, hints }) => {
            if (plans > 0 && errors + warnings + hints === 0) clean.add(uri);
            else clean.delete(uri);
            look(uri);
        }),
    );
}
