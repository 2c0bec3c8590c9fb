import type {
    AnalysedPlan,
    LureInTurnFigures,
    PairInTurnFigures,
    SensitivityFigures,
    TurnChange,
    TurnFigures,
} from '../plan/figures.ts';
import { print } from '../units/print.ts';
import { type Unit, units } from '../units/unit.ts';
import { estimateMark, marginWords, nameOf, type Rows, type Speech } from './figures-speech.ts';

/** The turn that the plan allows, and what the tightest clean ones hang on. */
export function tablesOfTurns({ turns, sensitivity }: AnalysedPlan, speech: Speech): Rows[] {
    return [
        ...(turns?.known && turns.value.asked
            ? askedTables(turns.value, speech, turns.standing === 'estimated')
            : []),
        ...(sensitivity?.known ? [sensitivityTable(sensitivity.value, speech)] : []),
    ];
}

const sides = ['port', 'starboard'] as const;

function askedTables(turns: TurnFigures, speech: Speech, estimated: boolean): Rows[] {
    const mark = estimated ? estimateMark : '';
    const within = print(turns.asked!.si, turns.asked!.quantity ?? speech.length);
    return [
        {
            title: `Pairs in a half turn of ${within}`,
            columns: [
                { head: 'Pair' },
                { head: 'Turning to' },
                { head: 'Nearest, swaying', align: 'right' },
                { head: 'after', align: 'right' },
                { head: 'turned', align: 'right' },
                { head: 'Touch at a sway of', align: 'right' },
            ],
            rows: worstOfPairs(turns).map(({ pair, side }) => [
                `${nameOf(pair.a)} and ${nameOf(pair.b)}`,
                side,
                `${mark}${print(pair.clearance, speech.length)}`,
                print(pair.time, units.s, { digits: 0 }),
                print(pair.turned, units.deg, { digits: 0 }),
                pair.passedThrough === undefined
                    ? marginWords(pair, speech, estimated)
                    : 'pass through each other',
            ]),
        },
        {
            title: `Lures in a half turn of ${within}`,
            columns: [
                { head: 'Position' },
                { head: 'Slowest to port', align: 'right' },
                { head: 'to starboard', align: 'right' },
                { head: 'followed as' },
            ],
            rows: turns.port.lures.map((lure, index) => [
                nameOf(lure.line),
                lureWords(lure, speech, mark),
                lureWords(turns.starboard.lures[index]!, speech, mark),
                lure.model === 'taut' ? 'a taut line' : 'a chain',
            ]),
        },
    ];
}

function lureWords({ slowest, slackAt }: LureInTurnFigures, { speed }: Speech, mark: string): string {
    return slackAt === undefined
        ? `${mark}${print(slowest, speed)}`
        : `slack after ${mark}${print(slackAt, units.s, { digits: 0 })}`;
}

/** Each pair on the side on which it comes nearer, the nearest pair first. */
function worstOfPairs(turns: TurnFigures): { pair: PairInTurnFigures; side: string }[] {
    const worst = new Map<string, { pair: PairInTurnFigures; side: string }>();
    for (const side of sides) {
        for (const pair of turns[side].pairs) {
            const key = `${nameOf(pair.a)}\n${nameOf(pair.b)}`;
            const before = worst.get(key);
            if (!before || pair.clearance < before.pair.clearance) worst.set(key, { pair, side });
        }
    }
    return [...worst.values()].sort(
        ({ pair: one }, { pair: other }) =>
            one.clearance - other.clearance || one.swayMargin - other.swayMargin,
    );
}

/** By so much a turn has to change to be worth a row, m. */
const WORTH_TELLING = 0.5;

/** What one change would make of the tightest clean turns. */
export function sensitivityTable({ now, changes }: SensitivityFigures, { length, speed }: Speech): Rows {
    const radii = (of: Pick<SensitivityFigures['now'], 'port' | 'starboard'>) =>
        sides.flatMap((side) => [of[side].noFoul.radius, of[side].allWorking.radius]);
    const before = radii(now);
    const told = (radius: number | undefined, was: number | undefined) => {
        if (radius === undefined) return 'none';
        const by = was === undefined ? 0 : radius - was;
        const sign =
            Math.abs(by) < WORTH_TELLING ? '' : ` (${by > 0 ? '+' : '−'}${print(Math.abs(by), length)})`;
        return `${estimateMark}${print(noTighter(radius, length), length, { digits: 0 })}${sign}`;
    };
    const matters = (after: readonly (number | undefined)[]) =>
        after.some((radius, index) => {
            const was = before[index];
            return radius === undefined || was === undefined
                ? radius !== was
                : Math.abs(radius - was) >= WORTH_TELLING;
        });
    return {
        title: 'What one change would make of the tightest clean turns (less than 0.5 m, and trades that leave none, are left out)',
        columns: [
            { head: 'Change' },
            { head: 'To port no foul', align: 'right' },
            { head: 'all work', align: 'right' },
            { head: 'To starboard no foul', align: 'right' },
            { head: 'all work', align: 'right' },
        ],
        rows: [
            ['as it is', ...before.map((radius) => told(radius, radius))],
            ...changes.flatMap((changed) => {
                const after = radii(changed);
                // Most trades are absurd.
                const absurd = changed.change.what === 'traded' && after.includes(undefined);
                if (absurd || !matters(after)) return [];
                return [
                    [
                        changeWords(changed.change, { length, speed }),
                        ...after.map((radius, index) => told(radius, before[index])),
                    ],
                ];
            }),
        ],
    };
}

/** The next whole one: between two whole metres the tighter is not clean, and the sentences name the wider. */
function noTighter(radius: number, { toSI }: Unit): number {
    return Math.ceil(radius / toSI - 1e-9) * toSI;
}

function changeWords(change: TurnChange, { length, speed }: Pick<Speech, 'length' | 'speed'>): string {
    switch (change.what) {
        case 'back':
            return `${nameOf(change.line)} ${print(Math.abs(change.by), length)} ${change.by > 0 ? 'further back' : 'closer'}`;
        case 'without':
            return `without ${nameOf(change.line)}`;
        case 'traded':
            return `${change.lines.map(nameOf).join(' and ')} trade distances`;
        case 'sway':
            return `${print(Math.abs(change.by), units.deg)} ${change.by > 0 ? 'more' : 'less'} sway`;
        case 'contact':
            return `touching ${print(Math.abs(change.by), length)} ${change.by > 0 ? 'sooner' : 'later'}`;
        case 'speed':
            return `${print(Math.abs(change.by), speed)} ${change.by > 0 ? 'faster' : 'slower'}`;
    }
}
