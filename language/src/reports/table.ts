import type { Ink } from './ink.ts';
import { padEnd, padStart, readable, type Width } from './width.ts';

export interface Column {
    readonly head: string;
    readonly align?: 'right';
}

/** Rows under their heads, two blanks between columns. Columns in which nothing stands are left out. */
export function table(
    columns: readonly Column[],
    rows: readonly (readonly string[])[],
    ink: Ink,
    width: Width,
): string[] {
    const clean = rows.map((row) => row.map((cell) => readable(cell)));
    const shown = columns.map((_, index) => index).filter((index) => clean.some((row) => row[index]));
    const widths = shown.map((index) =>
        Math.max(width(columns[index]!.head), ...clean.map((row) => width(row[index] ?? ''))),
    );
    const lineOf = (cells: readonly string[]) =>
        shown
            .map((index, place) => {
                const pad = columns[index]!.align === 'right' ? padStart : padEnd;
                return pad(cells[index] ?? '', widths[place]!, width);
            })
            .join('  ')
            .trimEnd();
    return [ink.strong(lineOf(columns.map((column) => column.head))), ...clean.map(lineOf)];
}
