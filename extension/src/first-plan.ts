import { commands, Disposable, workspace } from 'vscode';
import { checked, plansOfFile } from '../../language/src/editor/protocol.ts';
import type { Server } from './server.ts';

/** Tells the walkthrough of the first plan of the crew's own that was saved and in which nothing was found. */
export function contributeFirstPlan(server: Server): Disposable {
    const saved = new Set<string>();
    const clean = new Set<string>();
    const look = async (uri: string) => {
        if (!saved.has(uri) || !clean.has(uri)) return;
        const found = await server.ask(plansOfFile, { uri });
        if (found && found.plans.length > 0) {
            await commands.executeCommand('setContext', 'layback.firstCleanPlan', true);
        }
    };
    return Disposable.from(
        workspace.onDidSaveTextDocument(({ languageId, uri }) => {
            if (languageId !== 'layback') return;
            saved.add(uri.toString());
            void look(uri.toString());
        }),
        server.hear(checked, ({ uri, errors, warnings, hints }) => {
            if (errors + warnings + hints > 0) {
                clean.delete(uri);
                return;
            }
            clean.add(uri);
            void look(uri);
        }),
    );
}
