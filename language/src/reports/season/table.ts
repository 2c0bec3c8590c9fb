import type { Season } from '../../plan/season/bites.ts';
import type { Grouping } from '../../plan/season/groupings.ts';
import { type Tally, tallies, total } from '../../plan/season/tally.ts';
import { type Ink, noColours } from '../ink.ts';
import { table } from '../table.ts';
import { readable, widthFor } from '../width.ts';
import { groupingNames, hoursWords, readingNotes, shareWords, tenHoursWords } from './words.ts';

/** A season as tables, one for each thing that it can be told apart by. */
export async function seasonTable(
    season: Season,
    by: readonly Grouping[],
    ink: Ink = noColours,
): Promise<string> {
    const groups = by.map((grouping) => ({ grouping, rows: tallies(season, grouping) }));
    const width = await widthFor(groups.flatMap(({ rows }) => rows.map(({ of = '' }) => of)));
    const blocks = groups
        .filter(({ rows }) => rows.some(({ of }) => of !== undefined))
        .map(({ grouping, rows }) => table(columnsOf(grouping), rows.map(rowOf), ink, width).join('\n'));
    return `${[ink.strong(readable(summaryOf(season))), ...blocks, ink.faint(readingNotes.join('\n'))].join('\n\n')}\n`;
}

export function summaryOf(season: Season): string {
    const { logs } = season;
    const { raised, bit, hooked, boated, released, landed } = total(season);
    if (logs.length === 0) return 'There is no log.';
    const days =
        logs.length === 1
            ? `One day, ${logs[0]!.date.value}`
            : `${logs.length} days, ${logs[0]!.date.value} to ${logs.at(-1)!.date.value}`;
    return `${days}: ${raised} raised, ${bit} bit, ${hooked} hooked, ${boated} to the boat (${released} released, ${landed} landed).`;
}

const right = (head: string) => ({ head, align: 'right' as const });

const columnsOf = (grouping: Grouping) => [
    { head: groupingNames[grouping] },
    right('Raised'),
    right('Bit'),
    right('Hooked, of bites'),
    right('To the boat, of hooked'),
    right('Fished'),
    right('Bites in 10 h'),
];

function rowOf(tally: Tally): string[] {
    const { of = 'not known', raised, bit, hooked, boated } = tally;
    return [
        of,
        String(raised),
        String(bit),
        shareWords(hooked, bit),
        shareWords(boated, hooked),
        hoursWords(tally),
        tenHoursWords(tally),
    ];
}
