import type {
    AnalysedPlan,
    CleanTurn,
    ClearingFigures,
    ClearingReason,
    Figure,
    OrderFigures,
    SideTurnFigures,
    TurnFigures,
} from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import { limitWords } from '../plan/turn-words.ts';
import { listed } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { type Unit, units } from '../units/unit.ts';
import { estimateMark, nameOf } from './figures-speech.ts';

/** What the tables have no columns for: turns both ways, and the orders of setting, taking in and clearing. */
export function sentencesOf(
    { plan, turns, order, clearings, tightestHeld }: AnalysedPlan,
    length: Unit,
): string[] {
    return [
        ...(turns?.known
            ? [
                  ...turnSentences('port', turns.value.port, turns.value, length),
                  ...turnSentences('starboard', turns.value.starboard, turns.value, length),
                  ...unknownSentences(turns.value),
                  ...(plan.turn && !turns.value.asked ? [notHeld(plan.turn, tightestHeld, length)] : []),
                  ...(plan.refused?.turn === undefined
                      ? []
                      : [
                            `\`${plan.refused.turn}\` cannot be used: the pairs and lures of that turn are not computed.`,
                        ]),
              ]
            : []),
        ...(order?.known && order.value.set.length > 1 ? orderSentences(order.value) : []),
        ...(clearings?.known ? clearings.value.map((each) => clearingSentence(each, length)) : []),
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

function clearingSentence({ hooked, order }: ClearingFigures, length: Unit): string {
    const told = order.map(({ line, reason }) => `${nameOf(line)} (${reasonWords(reason, length)})`);
    return `With a fish on ${nameOf(hooked)}, clear ${told.join(', then ')}.`;
}

function reasonWords(reason: ClearingReason, length: Unit): string {
    switch (reason.kind) {
        case 'release':
            return 'the line falls across it';
        case 'run':
            return `met with the fish ${print(Math.max(1, Math.round(reason.aside)), length, { digits: 0 })} to ${reason.side}`;
        case 'astern':
            return 'met as the fish runs straight astern';
        case 'in the way':
            return `in the way of ${nameOf(reason.of)}`;
        case 'rest':
            return 'clear of it';
    }
}

function turnSentences(side: string, { noFoul, allWorking }: SideTurnFigures, of: TurnFigures, length: Unit) {
    return [
        cleanTurn(noFoul, length, {
            clean: (radius) => `Turns to ${side} are clean down to ${radius}`,
            never: `No turn to ${side} that was looked at is clean`,
        }),
        ...(noneKnown(of)
            ? []
            : [
                  cleanTurn(allWorking, length, {
                      clean: (radius) => `To ${side} ${everyLure(of)} works down to ${radius}`,
                      never: `No turn to ${side} that was looked at keeps ${everyLure(of)} working`,
                  }),
              ]),
    ];
}

/** Why there are no tables of the turn that the plan allows. */
function notHeld({ si, quantity }: Measure, held: Figure | undefined, length: Unit): string {
    const least = held?.known
        ? ` (${estimateMark}${print(held.value, length, { digits: 0 })} is the tightest at this speed)`
        : '';
    return `A boat cannot be held to the ${print(si, quantity ?? length)} that the plan turns within${least}: the pairs and lures of that turn are not computed.`;
}

/** Whose least speed nobody said. */
function unknownSentences({ leastUnknown }: TurnFigures): string[] {
    if (leastUnknown.length === 0) return [];
    const names = listed(leastUnknown.map(nameOf));
    return [`Whether ${names} still works in a turn is not known: say from which speed it \`runs\`.`];
}

function noneKnown({ leastKnown, leastUnknown }: TurnFigures): boolean {
    return leastKnown.length === 0 && leastUnknown.length > 0;
}

function everyLure({ leastUnknown }: TurnFigures): string {
    return leastUnknown.length === 0 ? 'every lure' : 'every lure of a known least speed';
}

/** What is wrong in a turn tighter than the tightest, or in all of them. */
function cleanTurn(
    { radius, limit, halfTurn }: CleanTurn,
    length: Unit,
    words: { clean: (radius: string) => string; never: string },
): string {
    const trouble = limit ? limitWords(limit) : undefined;
    if (radius === undefined) return `${words.never}${trouble ? `: ${trouble}` : ''}.`;
    const time =
        halfTurn === undefined ? '' : ` (a half turn takes ${print(halfTurn, units.s, { digits: 0 })})`;
    const end = trouble ? `; tighter, ${trouble}` : ', the tightest that was looked at';
    return `${words.clean(`${estimateMark}${print(radius, length, { digits: 0 })}`)}${time}${end}.`;
}
