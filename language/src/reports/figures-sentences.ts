import type {
    AnalysedPlan,
    CleanTurn,
    ClearingFigures,
    ClearingReason,
    OrderFigures,
    SideTurnFigures,
} from '../plan/figures.ts';
import { limitWords } from '../plan/turn-words.ts';
import { print } from '../units/print.ts';
import { type Unit, units } from '../units/unit.ts';
import { nameOf } from './figures-speech.ts';

/** What the tables have no columns for: turns both ways, and the orders of setting, taking in and clearing. */
export function sentencesOf({ turns, order, clearings }: AnalysedPlan, length: Unit): string[] {
    return [
        ...(turns?.known
            ? [
                  ...turnSentences('port', turns.value.port, length),
                  ...turnSentences('starboard', turns.value.starboard, length),
              ]
            : []),
        ...(order?.known && order.value.set.length > 1 ? orderSentences(order.value) : []),
        ...(clearings?.known ? clearings.value.map(clearingSentence) : []),
    ];
}

function orderSentences({ set, takeIn, demands, cycles }: OrderFigures): string[] {
    return [
        `Set in this order: ${set.map(nameOf).join(', ')}.`,
        `Take in in this order: ${takeIn.map(nameOf).join(', ')}.`,
        ...demands.map(
            ({ first, second, mover, stage }) =>
                `Set ${nameOf(first)} before ${nameOf(second)}: ${stage}, ${nameOf(mover)} would sweep across.`,
        ),
        ...cycles.map(
            (cycle) => `No order sets ${cycle.map(nameOf).join(', ')} without one sweeping across another.`,
        ),
    ];
}

function clearingSentence({ hooked, order }: ClearingFigures): string {
    const told = order.map(({ line, reason }) => `${nameOf(line)} (${reasonWords(reason)})`);
    return `With a fish on ${nameOf(hooked)}, clear ${told.join(', then ')}.`;
}

function reasonWords(reason: ClearingReason): string {
    switch (reason.kind) {
        case 'release':
            return 'the line falls across it';
        case 'run':
            return `met ${print(reason.angle, units.deg, { digits: 0 })} to ${reason.side}`;
        case 'in the way':
            return `in the way of ${nameOf(reason.of)}`;
        case 'rest':
            return 'clear of it';
    }
}

function turnSentences(side: string, { noFoul, allWorking }: SideTurnFigures, length: Unit): string[] {
    const works =
        allWorking.radius === undefined
            ? ''
            : ` Every lure works down to ${print(allWorking.radius, length)}.`;
    return [`${cleanTurn(side, noFoul, length)}${works}`];
}

function cleanTurn(side: string, { radius, limit, halfTurn }: CleanTurn, length: Unit): string {
    const trouble = limit ? limitWords(limit) : undefined;
    if (radius === undefined)
        return `No turn to ${side} that was looked at is clean${trouble ? `: ${trouble}` : ''}.`;
    const time = halfTurn === undefined ? '' : ` (a half turn takes ${print(halfTurn, units.s)})`;
    return `Turns to ${side} are clean down to ${print(radius, length)}${time}${trouble ? `; tighter, ${trouble}` : ''}.`;
}
