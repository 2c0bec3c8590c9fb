import { capital } from '../../plan/wording.ts';
import type { CardContents } from './contents.ts';
import type { CardRow } from './rows.ts';
import type { ClearingRow } from './sections.ts';
import { estimateMark, inWords, type Told } from './told.ts';

/** One line of a cell. */
export interface CellLine {
    readonly words: string;
    /** `large` is what is read at arm's length, `strong` what the cell is about; the rest is plain. */
    readonly as?: 'large' | 'strong';
}

/** A column of a table on a card, whatever it is printed on. */
export interface Column<Row> {
    readonly head: string;
    /** Repeated where the table is too wide for the paper and goes on below. */
    readonly key?: true;
    readonly cell: (row: Row) => readonly CellLine[];
}

const working: readonly Column<CardRow>[] = [
    { head: 'Set', key: true, cell: ({ number }) => large(number === undefined ? undefined : `${number}`) },
    { head: 'Position', key: true, cell: ({ name, angler }) => [...strong(capital(name)), ...plain(angler)] },
    {
        head: 'Tows',
        cell: ({ gear, kind, length, role }) => [
            ...strong(gear),
            ...plain([role === 'standby' && 'ready', kind].filter(Boolean).join(', ')),
            ...plain(inBoth(length)),
        ],
    },
    {
        head: 'Outfit',
        cell: ({ outfit, lineClass }) => [...strong(outfit), ...plain(inBoth(lineClass))],
    },
    { head: 'Back', cell: ({ back, wave, part }) => [...big(back), ...plain(wave, part)] },
    { head: 'On the line', cell: ({ reading }) => strong(reading) },
    {
        head: 'From',
        cell: ({ from, loop }) => [...strong(from), ...plain(loop && `loop ${marked(loop)}`, loop?.other)],
    },
    { head: 'Clip', cell: ({ clip, wraps }) => [...number(clip), ...plain(wraps)] },
    { head: 'Drag set', cell: ({ drags }) => big(drags.set) },
    {
        head: 'Hooked',
        cell: ({ drags, wait }) => [...big(drags.hooked), ...plain(wait && `after ${wait}`)],
    },
    { head: 'Full', cell: ({ drags }) => big(drags.full) },
    {
        head: 'Scale test',
        cell: ({ tested }) => plain(tested?.date, tested?.by),
    },
];

/** The table that a crew works from: the columns that have something to say for any of its rows. */
export function workingColumns(rows: readonly CardRow[]): Column<CardRow>[] {
    return working.filter(({ cell }) => rows.some((row) => cell(row).length > 0));
}

const places = ['First', 'Second', 'Third', 'Fourth', 'Fifth', 'Sixth', 'Seventh', 'Eighth', 'Ninth'];

/** As many columns as there are lines to clear; why it is cleared then stands below each. */
export function clearingColumns(rows: readonly ClearingRow[]): Column<ClearingRow>[] {
    const most = Math.max(0, ...rows.map(({ order }) => order.length));
    return [
        { head: 'Fish on', key: true, cell: ({ hooked }) => strong(capital(hooked)) },
        ...Array.from(
            { length: most },
            (_, index): Column<ClearingRow> => ({
                head: places[index] ?? `${index + 1}th`,
                cell: ({ order }) => {
                    const cleared = order[index];
                    return cleared ? [...strong(capital(cleared.position)), ...plain(cleared.reason)] : [];
                },
            }),
        ),
    ];
}

/** What the helm looks for on the sheet: for the title block. */
export function helmCells({ turns, times }: CardContents): { caption: string; value: string }[] {
    return [
        ...turns.sides.flatMap(({ side, clean }) =>
            clean
                ? [
                      {
                          caption: `Tightest clean turn to ${side}`,
                          value: [inWords(clean.radius), clean.halfTurn && `half turn ${clean.halfTurn}`]
                              .filter(Boolean)
                              .join(', '),
                      },
                  ]
                : [],
        ),
        ...times.filter(({ caption }) => caption.startsWith('Lines ')),
    ];
}

function big(load: Told | undefined): CellLine[] {
    return load ? [...large(marked(load)), ...plain(load.other)] : [];
}

function number(told: Told | undefined): CellLine[] {
    return told ? [...strong(marked(told)), ...plain(told.other)] : [];
}

function inBoth(told: Told | undefined): string | undefined {
    return told && [told.own, told.other].filter(Boolean).join(', ');
}

function marked({ own, about }: Told): string {
    return `${about ? estimateMark : ''}${own}`;
}

function large(words: string | undefined): CellLine[] {
    return words ? [{ words, as: 'large' }] : [];
}

function strong(words: string | undefined): CellLine[] {
    return words ? [{ words, as: 'strong' }] : [];
}

function plain(...all: readonly (string | undefined)[]): CellLine[] {
    return all.flatMap((words) => (words ? [{ words }] : []));
}
