import type { HandledLine } from '../../physics/order/crossing.ts';
import { arrange } from '../../physics/order/precedence.ts';
import { type HandlingOrder, settingOrder } from '../../physics/order/setting.ts';
import type { Figure, LineFigures, OrderFigures } from '../figures.ts';
import { known, leaningOf, silent } from './figure.ts';

/**
 * In which order the fished lines of a plan can be set and taken in. Lines whose rod, tow point or distance is not
 * known are left out, and teasers, which are handled from elsewhere.
 *
 * @param contact  nearer than this, m, one line is in the way of another
 */
export function orderOf(lines: readonly LineFigures[], contact: number): Figure<OrderFigures> {
    const placed = lines.flatMap((figures) => {
        const handled = handledLine(figures);
        return handled ? [{ figures, handled }] : [];
    });
    if (placed.length < 2) return noneHandled;
    const handled = placed.map((each) => each.handled);
    const found = remembered(handled, contact);
    const line = (index: number) => placed[index]!.figures;
    // Setting backwards; the shortest first where that leaves it free (common practice, no source).
    const backwards = found.demands.map(({ first, second }) => ({ first: second, second: first }));
    const shorter = (one: number, other: number) => handled[one]!.astern - handled[other]!.astern;
    return known(
        {
            set: found.order.map(line),
            takeIn: arrange(handled.length, backwards, shorter).order.map(line),
            demands: found.demands.map(({ first, second, mover, ...crossed }) => ({
                first: line(first),
                second: line(second),
                mover: line(mover),
                ...crossed,
            })),
            cycles: found.cycles.map((cycle) => cycle.map(line)),
        },
        'computed',
        [
            'Lines hang straight and do not sway while they are handled.',
            ...leaningOf(
                ...placed.flatMap(({ figures: { rodTip, towPoint, astern } }) => [rodTip!, towPoint, astern]),
            ),
        ],
    );
}

/** What is said of an order where there are not two lines to put in order. */
export const noneHandled = silent(
    'No two lines have all of a rod (`outfit`) in a `holder`, a tow point (`from`) and a distance (`back`).',
);

/** A line as its handling is computed; undefined where its place is not known. */
export function handledLine({ line, rodTip, towPoint, astern }: LineFigures): HandledLine | undefined {
    if (line.role !== 'fished' || !rodTip?.known || !towPoint.known || !astern.known) return undefined;
    return { rodTip: rodTip.value, towPoint: towPoint.value, astern: astern.value };
}

// Pure answers to pure questions: while a crew types elsewhere in the plan, the order is not worked out again.
const memory = new Map<string, HandlingOrder>();
const MOST_REMEMBERED = 64;

function remembered(lines: readonly HandledLine[], contact: number): HandlingOrder {
    const key = JSON.stringify([contact, lines]);
    const answer = memory.get(key) ?? settingOrder(lines, contact);
    memory.delete(key);
    memory.set(key, answer);
    if (memory.size > MOST_REMEMBERED) memory.delete(memory.keys().next().value!);
    return answer;
}
