import { workspace } from 'vscode';
import {
    type MoveWanted,
    type MoveWritten,
    type PositionWanted,
    swapSides,
    type TryMove,
    tryMove,
    writeMove,
} from '../../../language/src/editor/protocol.ts';
import { editOf } from '../edits.ts';
import type { Server } from '../server.ts';
import type { ToPage } from './messages.ts';

/** Answers a hand that moves lures in a picture. */
export interface Mover {
    /** Shows what would follow; of many places the last one counts. */
    try(wanted: TryMove): void;
    /** Writes it into the text: one step to undo. */
    write(wanted: MoveWanted): Promise<void>;
    /** Lets a position change sides with the one across the boat: one step to undo, too. */
    swap(wanted: PositionWanted): Promise<void>;
    leave(): void;
}

/** A hand that rests so long, ms, may want to know how the plan turns then. */
const rest = 60;

export function moverOver(server: Server, send: (message: ToPage) => void): Mover {
    let asked = 0;
    let isAsking = false;
    let next: TryMove | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;

    /** One question at a time: a hand is quicker than any answer, and only its last place is of interest. */
    const ask = async () => {
        if (isAsking) return;
        isAsking = true;
        try {
            for (let wanted = next; wanted; wanted = next) {
                next = undefined;
                await show(wanted, false);
                if (!next) turnSoon(wanted);
            }
        } finally {
            isAsking = false;
        }
    };
    const show = async (wanted: TryMove, turns: boolean) => {
        const turn = asked;
        const trial = await server.ask(tryMove, { ...wanted, turns });
        if (turn !== asked || !trial) return;
        send({ kind: 'trial', position: wanted.position, ...trial, turning: !turns });
    };
    const turnSoon = (wanted: TryMove) => {
        timer = setTimeout(() => void show(wanted, true).catch(log), rest);
    };
    const log = (fault: unknown) => server.log.error(`A lure could not be tried elsewhere. ${fault}`);
    const stop = () => {
        asked++;
        next = undefined;
        clearTimeout(timer);
    };

    const apply = async (
        { uri }: PositionWanted,
        written: MoveWritten | null | undefined,
        instead: string,
    ): Promise<void> => {
        const document = workspace.textDocuments.find((each) => each.uri.toString() === uri);
        const isCurrent = written?.version === undefined || written.version === document?.version;
        if (written && isCurrent && (await workspace.applyEdit(editOf(written.edit)))) return;
        const words = written
            ? 'The text has changed meanwhile, so nothing was written. Try again.'
            : instead;
        send({ kind: 'unmoved', words });
    };

    return {
        try(wanted) {
            stop();
            next = wanted;
            void ask().catch(log);
        },
        async write(wanted) {
            stop();
            const instead = `The ${wanted.position} cannot be moved from here: change its “back” in the text.`;
            await apply(wanted, await server.ask(writeMove, wanted), instead);
        },
        async swap(wanted) {
            stop();
            const instead = `The ${wanted.position} cannot change sides from here: change its name, or write “swap”, in the text.`;
            await apply(wanted, await server.ask(swapSides, wanted), instead);
        },
        leave: stop,
    };
}
