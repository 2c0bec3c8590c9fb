import { commands, Disposable, type ExtensionContext, window } from 'vscode';
import { checkWorkspace } from './commands/check-workspace.ts';
import { explainRule } from './commands/explain-rule.ts';
import { newPlan } from './commands/new-plan.ts';
import { newTeamFolder } from './commands/new-team-folder.ts';
import { openGuide } from './commands/open-guide.ts';
import { setRuleSeverity } from './commands/rule-severity.ts';
import { showFigures } from './commands/show-figures.ts';
import { showSeason } from './commands/show-season.ts';
import { showSensitivity } from './commands/show-sensitivity.ts';
import { showFindings, showReferences } from './commands/shown-places.ts';
import { waive } from './commands/waive.ts';
import type { Gaze } from './gaze.ts';
import type { Server } from './server.ts';

/** What the commands work with. */
export interface Home {
    readonly context: ExtensionContext;
    readonly server: Server;
    readonly gaze: Gaze;
}

/** Registers every command but those of diagrams. */
export function contributeCommands(context: ExtensionContext, server: Server, gaze: Gaze): Disposable {
    const home: Home = { context, server, gaze };
    const carriedOut: Readonly<Record<string, (home: Home, ...given: unknown[]) => unknown>> = {
        'layback.checkWorkspace': checkWorkspace,
        'layback.explainRule': explainRule,
        'layback.openGuide': openGuide,
        'layback.newPlan': newPlan,
        'layback.newTeamFolder': newTeamFolder,
        'layback.showFigures': showFigures,
        'layback.showSeason': showSeason,
        'layback.showSensitivity': showSensitivity,
        'layback.waive': waive,
        'layback.setRuleSeverity': setRuleSeverity,
        'layback.showReferences': showReferences,
        'layback.showFindings': showFindings,
        'layback.openProblems': () => commands.executeCommand('workbench.actions.view.problems'),
        'layback.showLog': () => server.log.show(true),
        'layback.restart': async () => {
            await server.restart();
            if (server.state === 'running')
                window.setStatusBarMessage('The Layback language server runs again.', 4000);
        },
    };
    return Disposable.from(
        ...Object.entries(carriedOut).map(([name, carryOut]) =>
            commands.registerCommand(name, (...given: unknown[]) => carryOut(home, ...given)),
        ),
    );
}

/** The server, where it is there to answer, or is so soon; says so where it is not. */
export async function running({ server }: Home): Promise<Server | undefined> {
    if (await server.started()) return server;
    const restart = 'Restart Language Server';
    void window
        .showWarningMessage('The Layback language server is not running.', restart)
        .then((chosen) => chosen && commands.executeCommand('layback.restart'));
    return undefined;
}
