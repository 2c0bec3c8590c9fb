import {
    CancellationTokenSource,
    commands,
    type Disposable,
    type QuickPickItem,
    Disposable as Registered,
    Uri,
    window,
    workspace,
} from 'vscode';
import { plansOfFile, type Request } from '../../../language/src/editor/protocol.ts';
import type { Server } from '../server.ts';
import type { Diagram } from './diagram.ts';
import type { Choice } from './scene-messages.ts';

interface PlanItem extends QuickPickItem {
    readonly earlier: Choice['earlier'] & object;
}

/** The commands that say what a plan is compared with. */
export function contributeComparison(server: Server, meant: () => Diagram | undefined): Disposable {
    return Registered.from(
        commands.registerCommand('layback.compareWithPlan', async () => {
            const diagram = meant();
            if (!diagram) return;
            const chosen = await window.showQuickPick(plansBut(server, diagram), {
                title: 'Compare with which plan?',
                placeHolder: 'The plan that is taken for the earlier version',
                matchOnDescription: true,
            });
            if (chosen) diagram.compare(chosen.earlier);
        }),
        commands.registerCommand('layback.compareWithCommit', () => meant()?.compare('commit')),
    );
}

/** Every plan of the workspace but the one on show, by the server's own list: not every file system can be searched. */
async function plansBut(server: Server, { shown }: Diagram): Promise<PlanItem[]> {
    // Left out, it would count as a parameter of a request that names its own.
    const { token } = new CancellationTokenSource();
    const all = (await server.ask(symbols, { query: '' }, token)) ?? [];
    const files = new Set(
        all
            .filter(({ containerName }) => containerName?.startsWith('spread in '))
            .map((each) => each.location.uri),
    );
    const items = await Promise.all(
        [...files].map(async (uri): Promise<PlanItem[]> => {
            const found = await server.ask(plansOfFile, { uri });
            return (found?.plans ?? [])
                .filter(({ name }) => uri !== shown?.uri || name !== shown.plan)
                .map(({ name, title }) => ({
                    label: title,
                    description: workspace.asRelativePath(Uri.parse(uri, true)),
                    earlier: { uri, plan: name },
                }));
        }),
    );
    // Plans beside it in its file are most likely meant.
    const isNear = ({ earlier }: PlanItem) => earlier.uri === shown?.uri;
    return items.flat().sort((a, b) => Number(isNear(b)) - Number(isNear(a)) || (a.label < b.label ? -1 : 1));
}

/** Of the standard protocol. */
const symbols: Request<
    { readonly query: string },
    readonly { readonly containerName?: string; readonly location: { readonly uri: string } }[]
> = { method: 'workspace/symbol' };
