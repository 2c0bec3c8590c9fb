import { type ClearingOrder, clearingOrder } from '../../physics/order/clearing.ts';
import type { HandledLine } from '../../physics/order/crossing.ts';
import type { AnalysedPlan, Figure, LineFigures } from '../figures.ts';
import { known, leaningOf, silent } from './figure.ts';
import { remembering } from './memory.ts';
import { handledLine } from './order.ts';

/** Why a line comes in when it does, with a fish on another one. */
export type ClearingReason =
    /** The hooked line falls across it as its clip opens. */
    | { readonly kind: 'release' }
    /** The running line meets it when the fish has gone so far to that side, rad from straight behind the rod. */
    | { readonly kind: 'run'; readonly side: 'port' | 'starboard'; readonly angle: number }
    /** That one cannot come in before it. */
    | { readonly kind: 'in the way'; readonly of: LineFigures }
    /** The running line does not meet it. */
    | { readonly kind: 'rest' };

/** What comes in, and in which order, with a fish on one line. */
export interface ClearingFigures {
    readonly hooked: LineFigures;
    readonly order: readonly { readonly line: LineFigures; readonly reason: ClearingReason }[];
}

/** The order of clearing the other fished lines after a strike at each; lines whose place is not known are left out. */
export function clearingsOf({
    lines,
    contact,
}: Pick<AnalysedPlan, 'lines' | 'contact'>): Figure<readonly ClearingFigures[]> {
    const placed = lines.flatMap((figures) => {
        const handled = handledLine(figures);
        return handled ? [{ figures, handled }] : [];
    });
    if (placed.length < 2)
        return silent('No two lines have a rod in its holder, a tow point and a distance.');
    const orders = remembered({ lines: placed.map(({ handled }) => handled), contact });
    const line = (index: number) => placed[index]!.figures;
    return known(
        orders.map(({ order }, hooked) => ({
            hooked: line(hooked),
            order: order.map(({ line: index, reason }) => ({
                line: line(index),
                reason: reason.kind === 'in the way' ? { ...reason, of: line(reason.of) } : reason,
            })),
        })),
        'computed',
        [
            'Lines hang straight and do not sway while they are handled; the fish is taken to be 100 m off (estimate).',
            ...leaningOf(
                ...placed.flatMap(({ figures: { rodTip, towPoint, astern } }) => [rodTip!, towPoint, astern]),
            ),
        ],
    );
}

interface Question {
    readonly lines: readonly HandledLine[];
    readonly contact: number;
}

const remembered = remembering(
    ({ lines, contact }: Question): ClearingOrder[] =>
        lines.map((_, hooked) => clearingOrder(lines, { hooked, contact })!),
    16,
);
