import { type ClearingOrder, clearingOrder } from '../../physics/order/clearing.ts';
import type { HandledLine } from '../../physics/order/crossing.ts';
import type { AnalysedPlan, ClearingFigures, Figure } from '../figures.ts';
import { known, leaningOf } from './figure.ts';
import { remembering } from './memory.ts';
import { handledLine, noneHandled } from './order.ts';

/** The order of clearing the other fished lines after a strike at each; lines whose place is not known are left out. */
export function clearingsOf({
    lines,
    contact,
}: Pick<AnalysedPlan, 'lines' | 'contact'>): Figure<readonly ClearingFigures[]> {
    const placed = lines.flatMap((figures) => {
        const handled = handledLine(figures);
        return handled ? [{ figures, handled }] : [];
    });
    if (placed.length < 2) return noneHandled;
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
            'Lines hang straight and do not sway while they are handled.',
            'A fish runs up to 100 m straight astern of its lure, and to the side anywhere on that way (estimate).',
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
