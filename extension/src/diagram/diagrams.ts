import { commands, Disposable, type ExtensionContext, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { Gaze } from '../gaze.ts';
import type { Server } from '../server.ts';
import { contributeComparison } from './compare-with.ts';
import { type Diagram, diagramType, fillPanel, type PlanName } from './diagram.ts';
import { exportDiagram, type Meant, wantedAt, wantedOf } from './export.ts';
import { contributeLureMenu } from './lure-menu.ts';
import { keptFrom, type Shown } from './messages.ts';
import { saveCard } from './save-card.ts';

/** Panels with diagrams: at most one follows the plan that one works in, any number are pinned to theirs. */
export function contributeDiagrams(context: ExtensionContext, server: Server, gaze: Gaze): Disposable {
    const diagrams = new Set<Diagram>();
    const home = { extension: context.extensionUri, server, gaze };

    const fill = (panel: WebviewPanel, kept?: Shown): Diagram => {
        const diagram = fillPanel(panel, home, kept, () => tellEditor());
        diagrams.add(diagram);
        panel.onDidDispose(() => {
            diagrams.delete(diagram);
            tellEditor();
        });
        return diagram;
    };
    const active = () => [...diagrams].find(({ panel }) => panel.active);
    /** The one that a command means: that in front, else the one that follows, else any. */
    const meant = () => active() ?? following() ?? [...diagrams][0];
    /** The diagram in front; with a text in front its plan, which a diagram that follows may not have drawn yet. */
    const wantedFor = (): Meant[] => [
        ...(active()?.shown ? [wantedOf(active()!.shown!, gaze.place)] : []),
        ...(gaze.place ? [wantedAt(gaze.place, meant()?.shown?.view, meant()?.shown?.choice)] : []),
        ...(meant()?.shown ? [wantedOf(meant()!.shown!, gaze.place)] : []),
    ];
    const following = () => [...diagrams].find(({ shown }) => !shown?.pinned);
    const tellEditor = () => {
        void commands.executeCommand('setContext', 'layback.diagramPinned', meant()?.shown?.pinned ?? false);
        void commands.executeCommand('setContext', 'layback.diagramOpen', diagrams.size > 0);
    };

    const open = (uri?: unknown, plan?: unknown) => {
        const named: PlanName | undefined =
            typeof uri === 'string' && typeof plan === 'string' ? { uri, plan } : undefined;
        const there = following();
        if (there) {
            // Beside the text, never over it.
            const isBehind = window.activeTextEditor?.viewColumn === there.panel.viewColumn;
            there.panel.reveal(isBehind ? ViewColumn.Beside : undefined, true);
            there.show(named);
            return;
        }
        const column = { viewColumn: ViewColumn.Beside, preserveFocus: true };
        fill(window.createWebviewPanel(diagramType, 'Diagram', column)).show(named);
    };

    return Disposable.from(
        window.registerWebviewPanelSerializer(diagramType, {
            async deserializeWebviewPanel(panel, state: unknown) {
                fill(panel, keptFrom(state).shown);
            },
        }),
        commands.registerCommand('layback.openDiagram', open),
        contributeLureMenu(meant),
        contributeComparison(server, meant),
        commands.registerCommand('layback.pinDiagram', () => meant()?.pin(true)),
        commands.registerCommand('layback.followPlan', () => meant()?.pin(false)),
        commands.registerCommand('layback.exportSvg', () => exportDiagram('svg', server, wantedFor())),
        commands.registerCommand('layback.exportPng', () => exportDiagram('png', server, wantedFor())),
        commands.registerCommand('layback.saveCard', () => saveCard(server, wantedFor())),
    );
}
