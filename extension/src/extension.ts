import type { ExtensionContext } from 'vscode';
import { checked } from '../../language/src/editor/protocol.ts';
import { contributeCommands } from './commands.ts';
import { contributeDiagrams } from './diagram/diagrams.ts';
import { extendMarkdown } from './fences.ts';
import { contributeFirstPlan } from './first-plan.ts';
import { followPlans } from './gaze.ts';
import { type Launch, startServer } from './server.ts';
import { contributeStatus } from './status.ts';
import { contributeTexts } from './texts.ts';

/** What happens when the extension wakes up, wherever it runs. Nothing here waits for anything. */
export function begin(context: ExtensionContext, launch: Launch) {
    const server = startServer(context, launch);
    const gaze = followPlans();
    context.subscriptions.push(
        server,
        gaze,
        contributeTexts(server),
        contributeDiagrams(context, server, gaze),
        contributeStatus(server, gaze),
        contributeFirstPlan(server),
        contributeCommands(context, server, gaze),
    );
    const { extendMarkdownIt, forget } = extendMarkdown(server);
    context.subscriptions.push(server.hear(checked, forget));
    return { extendMarkdownIt };
}
