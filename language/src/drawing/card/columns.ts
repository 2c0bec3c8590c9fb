import { capital } from '../words.ts';
import type { CardRow } from './rows.ts';
import { estimateMark, type Told } from './told.ts';

/** A column of the table that a crew works from; a cell is one or more lines. */
export interface CardColumn {
    readonly head: string;
    /** Repeated where the table is too wide for the paper and goes on below. */
    readonly key?: true;
    readonly cell: (row: CardRow) => readonly (string | undefined)[];
}

const columns: readonly CardColumn[] = [
    { head: 'Set', key: true, cell: ({ number }) => [number === undefined ? undefined : String(number)] },
    { head: 'Side', key: true, cell: ({ side }) => [side] },
    { head: 'Position', key: true, cell: ({ position, angler }) => [capital(position), angler] },
    {
        head: 'Tows',
        cell: ({ gear, kind, length, role }) => [
            gear,
            [role === 'standby' && 'ready', kind].filter(Boolean).join(', '),
            length && told(length),
        ],
    },
    { head: 'Back', cell: ({ back }) => both(back) },
    { head: 'Wave', cell: ({ wave, part }) => [wave?.replace('wave ', ''), part] },
    { head: 'On the line', cell: ({ reading }) => [reading] },
    { head: 'From', cell: ({ from }) => [from] },
    { head: 'Outfit', cell: ({ outfit, lineClass }) => [outfit, lineClass && told(lineClass)] },
    { head: 'Clip', cell: ({ clip, wraps }) => [...both(clip), wraps] },
    { head: 'Loop', cell: ({ loop }) => both(loop) },
    { head: 'Drag set', cell: ({ drags }) => both(drags.set) },
    { head: 'Wait', cell: ({ wait }) => [wait] },
    { head: 'Hooked', cell: ({ drags }) => both(drags.hooked) },
    { head: 'Full', cell: ({ drags }) => both(drags.full) },
    { head: 'Scale test', cell: ({ tested }) => [tested?.date, tested?.by] },
];

/** Those that have something to say for any of the rows. */
export function columnsFor(rows: readonly CardRow[]): CardColumn[] {
    return columns.filter(({ cell }) => rows.some((row) => cell(row).some(Boolean)));
}

function both(number: Told | undefined): (string | undefined)[] {
    return number ? [`${number.about ? estimateMark : ''}${number.own}`, number.other] : [];
}

function told({ own, other }: Told): string {
    return other ? `${own} (${other})` : own;
}
