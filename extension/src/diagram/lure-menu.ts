import { commands, Disposable, window } from 'vscode';
import type { Diagram } from './diagram.ts';
import { nextFace } from './snap.ts';

/**
 * What a right click on a lure offers. The editor hands over what the page wrote at the lure, which is taken as a
 * name to look up and as nothing else.
 */
export function contributeLureMenu(meant: () => Diagram | undefined): Disposable {
    const at = (given: unknown) => {
        const diagram = meant();
        const position = (given as { laybackPosition?: unknown } | undefined)?.laybackPosition;
        if (!diagram || typeof position !== 'string') return undefined;
        const isThere = diagram.picture?.summary.rows.some((row) => row.position === position);
        return isThere ? { diagram, position } : undefined;
    };
    const move = async (given: unknown, way: -1 | 1) => {
        const lure = at(given);
        const found = lure?.diagram.picture?.moves.find(({ position }) => position === lure.position);
        if (!lure || !found) return;
        const astern = nextFace(found, found.astern, way);
        if (astern === found.astern) {
            void window.showInformationMessage(
                way > 0
                    ? `There is no wave further back that the ${lure.position} could be let out to.`
                    : `There is no wave nearer the boat that the ${lure.position} could be taken in to.`,
            );
            return;
        }
        await lure.diagram.move(lure.position, astern);
    };

    return Disposable.from(
        commands.registerCommand('layback.lureToText', async (given: unknown) => {
            const lure = at(given);
            await lure?.diagram.reveal(placeOf(lure.diagram, lure.position));
        }),
        commands.registerCommand('layback.lureOut', (given: unknown) => move(given, 1)),
        commands.registerCommand('layback.lureIn', (given: unknown) => move(given, -1)),
        commands.registerCommand('layback.lureAcross', async (given: unknown) => {
            const lure = at(given);
            await lure?.diagram.swapSides(lure.position);
        }),
        commands.registerCommand('layback.lureWaive', async (given: unknown) => {
            const lure = at(given);
            if (!lure) return;
            const found = lure.diagram.picture?.places.find(
                ({ id, positions }) => id.startsWith('mark:') && positions?.includes(lure.position),
            );
            if (!found) {
                void window.showInformationMessage(`Nothing was found about the ${lure.position}.`);
                return;
            }
            await lure.diagram.reveal(found.id);
            await commands.executeCommand('layback.waive');
        }),
    );
}

/** The lure's element, or that of gear standing by. */
function placeOf({ picture }: Diagram, position: string): string {
    const own = (id: string) => ['lure', 'standby', 'note'].some((kind) => id === `${kind}:${position}`);
    return picture?.places.find(({ id }) => own(id))?.id ?? '';
}
