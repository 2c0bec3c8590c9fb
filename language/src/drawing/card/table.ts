import { palettes } from '../palette.ts';
import { line, rectangle, text } from '../pen.ts';
import { cutToWidth, textWidth, type Weight } from '../text-width.ts';
import { breakLines } from './breaking.ts';
import type { CellLine, Column } from './columns.ts';
import { sizes } from './paper.ts';
import type { Piece } from './piece.ts';

const { ink, face } = palettes.light;
const pad = 9;

/** Between columns of numbers; columns of words need more, or they are read across. */
export const columnGap = { numbers: 18, words: 32 };

/** A table on paper: a head that is repeated on a new page, and its rows. */
export interface PlacedTable {
    readonly head: Piece;
    readonly rows: readonly Piece[];
}

/** One table, or where the paper is too narrow several with the same key columns, one below the other. */
export function tablesFor<Row>(
    columns: readonly Column<Row>[],
    rows: readonly Row[],
    width: number,
    gap = columnGap.numbers,
): PlacedTable[] {
    if (rows.length === 0) return [];
    const all = parts(columns, rows, width, gap);
    return all.flatMap((some) => {
        // Where the table is in parts, a row that has nothing for one of them is left out there.
        const told = rows.filter((row) => some.some(({ key, cell }) => !key && cell(row).length > 0));
        const shown = all.length === 1 ? rows : told;
        return shown.length > 0 ? [placed(some, shown, width, gap)] : [];
    });
}

/** As few parts as the width allows, about as wide as each other. */
function parts<Row>(
    columns: readonly Column<Row>[],
    rows: readonly Row[],
    width: number,
    gap: number,
): (readonly Column<Row>[])[] {
    const least = (some: readonly Column<Row>[]) =>
        some.reduce((sum, column) => sum + widths(column, rows).least + gap, -gap);
    if (least(columns) <= width) return [columns];
    const keys = columns.filter(({ key }) => key);
    const others = columns.filter(({ key }) => !key);
    const room = width - least(keys) - gap;
    const needed = others.map((column) => least([column]) + gap);
    const count = Math.max(2, Math.ceil(needed.reduce((sum, each) => sum + each, 0) / room));
    const limits = Array.from({ length: 20 }, (_, i) => (room * (i + 1)) / 20);
    const split = (limit: number) => {
        const found: Column<Row>[][] = [];
        let used = Number.POSITIVE_INFINITY;
        for (const [index, column] of others.entries()) {
            if (used + needed[index]! > limit) {
                found.push([]);
                used = 0;
            }
            found.at(-1)!.push(column);
            used += needed[index]!;
        }
        return found;
    };
    const even = limits.map(split).find(({ length }) => length <= count) ?? split(room);
    return even.map((some) => [...keys, ...some]);
}

interface Widths {
    /** Of what is never broken, and of the longest line. */
    readonly least: number;
    readonly natural: number;
    /** Of the cell that has most of them. */
    readonly lines: number;
}

/** A word or a number that is wider gives way. */
const widestWord = 260;
const widestCell = 330;

function widths<Row>({ head, cell }: Column<Row>, rows: readonly Row[]): Widths {
    const lines: CellLine[] = [{ words: head, as: 'strong' }, ...rows.flatMap((row) => cell(row))];
    const natural = Math.max(...lines.map((each) => textWidth(each.words, sizeOf(each), weightOf(each))));
    const least = Math.max(
        ...lines.flatMap((each) =>
            breakLines(each.words, 0, sizeOf(each), weightOf(each)).map((words) =>
                textWidth(words, sizeOf(each), weightOf(each)),
            ),
        ),
    );
    return {
        least: Math.min(least, widestWord),
        natural: Math.max(Math.min(least, widestWord), Math.min(natural, widestCell)),
        lines: Math.max(...rows.map((row) => cell(row).length)),
    };
}

function weightOf({ as }: CellLine): Weight {
    return as ? 'bold' : 'regular';
}

function sizeOf({ as }: CellLine): number {
    return as === 'large' ? sizes.large : sizes.table;
}

function placed<Row>(
    columns: readonly Column<Row>[],
    rows: readonly Row[],
    width: number,
    gap: number,
): PlacedTable {
    const own = shared(
        columns.map((column) => widths(column, rows)),
        width - gap * (columns.length - 1),
    );
    let x = 0;
    const lefts = own.map((each) => {
        const left = x;
        x += each + gap;
        return left;
    });
    const broken = (lines: readonly CellLine[], column: number): CellLine[] =>
        lines.flatMap((each) =>
            breakLines(each.words, own[column]! + 0.5, sizeOf(each), weightOf(each)).map((words) => ({
                ...each,
                words: cutToWidth(words, own[column]! + 0.5, sizeOf(each), weightOf(each)),
            })),
        );
    return {
        head: rowPiece(
            columns.map(({ head }, column) => broken([{ words: head, as: 'strong' }], column)),
            lefts,
            width,
            true,
        ),
        rows: rows.map((row) =>
            rowPiece(
                columns.map((column, index) => broken(column.cell(row), index)),
                lefts,
                width,
                false,
            ),
        ),
    };
}

/**
 * Every column has what it needs. What is left goes first to those that have most lines, since these make the rows
 * high, so that they break none; then to others that would; then to all.
 */
function shared(wide: readonly Widths[], width: number): number[] {
    let room = width;
    const least = wide.reduce((sum, each) => sum + each.least, 0);
    // A single word too many for the paper: all give way alike, and what does not fit is cut.
    if (least > room) return wide.map((each) => (each.least * room) / least);
    room -= least;
    const own = wide.map((each) => each.least);
    const most = Math.max(...wide.map(({ lines }) => lines));
    for (const served of [(each: Widths) => each.lines === most, (each: Widths) => each.lines < most]) {
        const wanted = wide.map((each) => (served(each) ? each.natural - each.least : 0));
        const sum = wanted.reduce((a, b) => a + b, 0);
        const share = sum > 0 ? Math.min(1, room / sum) : 0;
        for (const [index, each] of wanted.entries()) own[index]! += share * each;
        room -= share * sum;
    }
    return own.map((each) => each + room / wide.length);
}

function rowPiece(
    cells: readonly (readonly CellLine[])[],
    lefts: readonly number[],
    width: number,
    head: boolean,
): Piece {
    // First lines stand on one line across the row, whatever their size.
    const first = Math.max(...cells.map(([line]) => (line ? sizeOf(line) : 0)), sizes.table);
    const drops = cells.map((lines) => {
        let y = pad + first;
        return lines.map((line, index) => {
            if (index > 0) y += line.as === 'large' ? sizes.large * 1.15 : sizes.tableLine;
            return y;
        });
    });
    const height = Math.max(...drops.map((drop) => drop.at(-1) ?? 0), pad + first) + pad + 6;
    return {
        height,
        keep: head,
        draw: ([left, top]) =>
            (head ? rectangle([left, top], width, height, { fill: face }) : '') +
            `<g data-tag="TR">${cells
                .map((lines, column) => {
                    const drawn = lines.map((each, row) =>
                        text([left + lefts[column]!, top + drops[column]![row]!], each.words, {
                            size: sizeOf(each),
                            weight: weightOf(each),
                            fill: ink,
                        }),
                    );
                    return `<g data-tag="${head ? 'TH' : 'TD'}">${drawn.join('')}</g>`;
                })
                .join('')}</g>` +
            line([left, top + height], [left + width, top + height], { stroke: ink, width: head ? 4 : 1.5 }),
    };
}
