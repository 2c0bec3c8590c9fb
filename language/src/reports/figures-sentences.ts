import type { AnalysedPlan, CleanTurn, LineFigures, SideTurnFigures, TurnLimit } from '../plan/figures.ts';
import { print } from '../units/print.ts';
import { type Unit, units } from '../units/unit.ts';

/** What the tables have no columns for: turns both ways, and the order of setting. */
export function sentencesOf({ turns, order }: AnalysedPlan, length: Unit): string[] {
    return [
        ...(turns?.known
            ? [
                  ...turnSentences('port', turns.value.port, length),
                  ...turnSentences('starboard', turns.value.starboard, length),
              ]
            : []),
        ...(order?.known && order.value.set.length > 1
            ? [`Set in this order: ${order.value.set.map(nameOf).join(', ')}.`]
            : []),
    ];
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

function limitWords({ kind, lines }: TurnLimit): string {
    const names = lines.map(nameOf).join(' and ');
    switch (kind) {
        case 'foul':
            return `${names} touch`;
        case 'slack':
            return `${names} falls slack`;
        case 'slow':
            return `${names} runs slower than it works`;
        case 'unsettled':
            return `whether ${names} touch would take too long to find`;
    }
}

function nameOf({ line }: LineFigures): string {
    return line.position.name;
}
