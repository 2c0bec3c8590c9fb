import {
    CancellationTokenSource,
    commands,
    type Position,
    Range,
    Selection,
    Uri,
    ViewColumn,
    type WebviewPanel,
    window,
    workspace,
} from 'vscode';
import { checked, type Picture } from '../../../language/src/editor/protocol.ts';
import type { Gaze } from '../gaze.ts';
import type { Server } from '../server.ts';
import { fileName, type Looked, look, type Wanted } from './look.ts';
import { fromPage, type Offer, offers, type Shown, type ToPage, type View } from './messages.ts';
import { moverOver } from './mover.ts';
import { paletteFor } from './palette.ts';
import { furnish } from './panel.ts';
import { paperFor, type Room } from './paper.ts';
import { elementsAt } from './places.ts';
import type { Choice } from './scene-messages.ts';

export interface PlanName {
    readonly uri: string;
    readonly plan: string;
}

/** One panel with a plan in it. */
export interface Diagram {
    readonly panel: WebviewPanel;
    readonly shown: Shown | undefined;
    readonly picture: Picture | undefined;
    pin(pinned: boolean): void;
    /** Goes to where the text says what an element stands for. */
    reveal(id: string): Promise<void>;
    /** Writes a lure's new place into the text, m astern of the transom. */
    move(position: string, astern: number): Promise<void>;
    swapSides(position: string): Promise<void>;
    /** Shows the plan over an earlier version, or over another plan. */
    compare(earlier: NonNullable<Choice['earlier']>): void;
    /** Shows a plan, or the one that is being worked in. */
    show(plan?: PlanName): void;
}

export const diagramType = 'layback.diagram';

/** How long a picture may take, ms, before it is said that there is none yet. */
const patience = 400;

/** What takes long is followed when nobody has typed for so long, ms. */
const rest = 250;

/**
 * Fills a panel with a plan and keeps it up to date.
 *
 * What is asked last is shown, whatever is answered last; a picture stays until there is a better one.
 */
export function fillPanel(
    panel: WebviewPanel,
    home: { readonly extension: Uri; readonly server: Server; readonly gaze: Gaze },
    kept: Shown | undefined,
    told: () => void,
): Diagram {
    const { server, gaze } = home;
    let pinned = kept?.pinned ?? false;
    let view: View = kept?.view ?? 'above';
    let at: PlanName | undefined = kept;
    /** A plan that was asked for by name stays until the caret moves. */
    let isHeld = false;
    let looked: Looked | undefined;
    let choice: Choice = kept?.choice ?? {};
    let isReady = false;
    let room: Room | undefined;
    let asked = new CancellationTokenSource();

    const send = (message: ToPage) => void panel.webview.postMessage(message);
    const say = (state: 'loading' | 'empty' | 'stopped', words: string, ...offers: Offer[]) =>
        send({ kind: 'words', state, words, offers });
    const shown = (): Shown | undefined => at && { ...at, view, pinned, choice };

    const wishes = () => {
        const bow = workspace.getConfiguration('layback').get<'up' | 'right'>('diagram.bow', 'up');
        const palette = paletteFor(window.activeColorTheme.kind);
        return { palette, live: true, bow, ...paperFor(room, view, bow) };
    };
    /** Unless pinned: the plan at the caret, where the file that one works in has a plan. */
    const wanted = (): Wanted | undefined => {
        const { place } = gaze;
        if (!pinned && !isHeld && place) {
            const { line, character } = place.caret;
            return {
                uri: place.document.uri.toString(),
                position: { line, character },
                view,
                choice,
                wishes: wishes(),
            };
        }
        return at && { ...at, view, choice, wishes: wishes() };
    };

    let resting: ReturnType<typeof setTimeout> | undefined;
    const draw = async () => {
        // A page that is hidden is gone, and asks when it is back.
        if (!isReady || !panel.visible) return;
        clearTimeout(resting);
        asked.cancel();
        asked = new CancellationTokenSource();
        const { token } = asked;
        const current = () => !token.isCancellationRequested;
        if (server.state === 'stopped') {
            say(
                'stopped',
                'The Layback language server is not running, so nothing can be drawn.',
                'Restart Language Server',
                'Show the Log',
            );
            return;
        }
        const want = wanted();
        if (!want) {
            say(
                'empty',
                'No plan is open. Open a .spread file: the spread that the caret is in is drawn here.',
                'New Plan…',
                'New Team Folder…',
            );
            return;
        }
        const late = setTimeout(
            () => current() && say('loading', `Drawing ${fileName(want.uri)} …`),
            patience,
        );
        try {
            const answer =
                (await look(server, want, token)) ??
                // What one works in now has no plan: the one before stays.
                (at && at.uri !== want.uri ? await look(server, { ...want, ...at }, token) : undefined);
            if (!current()) return;
            if (answer) take(answer);
            else if (server.state === 'running') nothingIn(want.uri);
        } catch (fault) {
            server.log.error(`A picture could not be drawn. ${(fault as Error).message}`);
            if (current()) say('stopped', 'This plan could not be drawn. The log says why.', 'Show the Log');
        } finally {
            clearTimeout(late);
        }
    };

    const mover = moverOver(server, send);
    /** The lure of the plan on show that a hand has hold of. */
    const held = ({ position, astern }: { readonly position: string; readonly astern: number }) =>
        at && { uri: at.uri, plan: at.plan, position, astern };

    const take = (answer: Looked) => {
        looked = answer;
        at = { uri: answer.uri, plan: answer.plan.name };
        panel.title = `${answer.plan.title}${pinned ? ' (pinned)' : ''}`;
        send(answer.message({ ...at, view, pinned, choice }));
        mark();
        told();
    };

    const nothingIn = (uri: string) => {
        looked = undefined;
        panel.title = 'Diagram';
        say(
            'empty',
            `There is no spread in ${fileName(uri)} yet. Type “spread” there to begin one; it is drawn as soon as it has a boat.`,
            'New Plan…',
        );
        told();
    };

    const mark = () => {
        const { place } = gaze;
        const ids =
            looked && place ? elementsAt(looked.places, place.document.uri.toString(), place.caret) : [];
        send({ kind: 'mark', ids });
        return ids;
    };

    /** A bite comes to the line that the caret goes to. */
    const biteAt = (ids: readonly string[]) => {
        const line = looked?.places.find(({ id }) => ids.includes(id))?.position;
        if (view !== 'strike' || line === undefined || line === looked?.line) return;
        choice = { ...choice, strike: { ...choice.strike, line } };
        void draw();
    };

    /** Goes to where the text says it: in the editor that shows the file, else beside the panel. */
    const reveal = async (id: string) => {
        const target = looked?.places.find((each) => each.id === id);
        if (!target) return;
        const { start, end } = target.range;
        const range = new Range(start.line, start.character, end.line, end.character);
        const uri = Uri.parse(target.uri, true);
        const there = window.visibleTextEditors.find(
            ({ document }) => document.uri.toString() === target.uri,
        );
        const editor = await window.showTextDocument(uri, {
            viewColumn: there?.viewColumn ?? otherColumn(panel),
        });
        editor.selection = new Selection(range.start, range.start);
        editor.revealRange(range);
    };

    panel.webview.onDidReceiveMessage((received: unknown) => {
        const message = fromPage(received);
        if (!message) return;
        switch (message.kind) {
            case 'ready':
                isReady = true;
                void draw();
                break;
            case 'room':
                room = { width: message.width, height: message.height };
                void draw();
                break;
            case 'reveal':
                reveal(message.id).catch((fault) => server.log.error(`${fault}`));
                break;
            case 'view':
                view = message.view;
                void draw();
                break;
            case 'choose': {
                const { turn, strike } = message.choice;
                choice = { ...choice, ...(turn && { turn }), ...(strike && { strike }) };
                void draw();
                break;
            }
            case 'try': {
                const wanted = held(message);
                if (wanted && view !== 'turn' && view !== 'strike' && view !== 'compare')
                    mover.try({ ...wanted, view, wishes: wishes() });
                break;
            }
            case 'move':
                diagram.move(message.position, message.astern).catch((fault) => server.log.error(`${fault}`));
                break;
            case 'leave':
                mover.leave();
                break;
            case 'offer':
                void commands.executeCommand(offers[message.offer]);
                break;
        }
    });

    /** A text that is back where it was before anybody looked is not checked anew, and nobody says so. */
    let overdue: ReturnType<typeof setTimeout> | undefined;
    const drawRested = () => {
        clearTimeout(resting);
        if (view === 'turn') resting = setTimeout(() => void draw(), rest);
        else void draw();
    };

    const listening = [
        workspace.onDidChangeTextDocument(({ document }) => {
            if (document.uri.toString() !== at?.uri) return;
            clearTimeout(overdue);
            overdue = setTimeout(() => {
                if (looked?.version !== document.version) drawRested();
            }, patience);
        }),
        gaze.onMove((place) => {
            if (!place) return;
            isHeld = false;
            const uri = place.document.uri.toString();
            const isElsewhere = !pinned && (looked?.uri !== uri || !isInPlan(looked, place.caret));
            if (isElsewhere) void draw();
            else biteAt(mark());
        }),
        server.hear(checked, ({ uri }) => {
            if (uri === at?.uri || (!pinned && uri === gaze.place?.document.uri.toString())) drawRested();
        }),
        server.onState((state) => {
            if (state !== 'starting') void draw();
        }),
        window.onDidChangeActiveColorTheme(() => void draw()),
        workspace.onDidChangeConfiguration((change) => {
            if (change.affectsConfiguration('layback.diagram')) void draw();
        }),
        panel.onDidChangeViewState(told),
    ];
    panel.onDidDispose(() => {
        asked.cancel();
        clearTimeout(resting);
        clearTimeout(overdue);
        for (const each of listening) each.dispose();
    });

    furnish(panel, home.extension);

    const diagram: Diagram = {
        panel,
        get shown() {
            return shown();
        },
        get picture() {
            return looked?.picture;
        },
        reveal,
        async move(position, astern) {
            const wanted = held({ position, astern });
            if (wanted) await mover.write(wanted);
        },
        async swapSides(position) {
            if (at) await mover.swap({ uri: at.uri, plan: at.plan, position });
        },
        compare(earlier) {
            choice = { ...choice, earlier };
            view = 'compare';
            void draw();
        },
        pin(next) {
            // There has to be something to be pinned to.
            pinned = next && at !== undefined;
            void draw();
            told();
        },
        show(plan) {
            at = plan ?? at;
            isHeld = plan !== undefined;
            void draw();
        },
    };
    return diagram;
}

function isInPlan({ plan }: Looked, caret: Position): boolean {
    const { start, end } = plan.range;
    return new Range(start.line, start.character, end.line, end.character).contains(caret);
}

function otherColumn({ viewColumn }: WebviewPanel): ViewColumn {
    return viewColumn === ViewColumn.One ? ViewColumn.Two : ViewColumn.One;
}
