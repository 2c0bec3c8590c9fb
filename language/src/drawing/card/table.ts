import { palettes } from '../palette.ts';
import { line, rectangle, text } from '../pen.ts';
import { cutToWidth, textWidth, type Weight, wrap } from '../text-width.ts';
import { type CardColumn, columnsFor } from './columns.ts';
import { sizes } from './paper.ts';
import type { Piece } from './piece.ts';
import type { CardRow } from './rows.ts';

const { ink, face } = palettes.light;
const gap = 18;
const pad = 8;

/** A table on paper: a head that is repeated on a new page, and its rows. */
export interface PlacedTable {
    readonly head: Piece;
    readonly rows: readonly Piece[];
}

/** One table, or where the paper is too narrow several with the same key columns, one below the other. */
export function tablesFor(rows: readonly CardRow[], width: number): PlacedTable[] {
    if (rows.length === 0) return [];
    return parts(columnsFor(rows), rows, width).map((columns) => placed(columns, rows, width));
}

/** As few parts as the width allows, about as wide as each other. */
function parts(columns: readonly CardColumn[], rows: readonly CardRow[], width: number): CardColumn[][] {
    const least = (some: readonly CardColumn[]) =>
        some.reduce((sum, column) => sum + widths(column, rows).least + gap, -gap);
    if (least(columns) <= width) return [[...columns]];
    const keys = columns.filter(({ key }) => key);
    const others = columns.filter(({ key }) => !key);
    const room = width - least(keys) - gap;
    const needed = others.map((column) => least([column]) + gap);
    const count = Math.max(2, Math.ceil(needed.reduce((sum, each) => sum + each, 0) / room));
    const limits = Array.from({ length: 20 }, (_, i) => (room * (i + 1)) / 20);
    const split = (limit: number) => {
        const found: CardColumn[][] = [];
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
    /** Of the longest word, and of the longest line. */
    readonly least: number;
    readonly natural: number;
}

const widestCell = 420;

function widths({ head, cell }: CardColumn, rows: readonly CardRow[]): Widths {
    const lines = [{ words: head, weight: 'bold' as Weight }].concat(
        rows.flatMap((row) => cell(row).map((words, at) => ({ words: words ?? '', weight: weightOf(at) }))),
    );
    const natural = Math.max(...lines.map(({ words, weight }) => textWidth(words, sizes.table, weight)));
    const least = Math.max(
        ...lines.flatMap(({ words, weight }) =>
            words.split(/\s+/).map((word) => textWidth(word, sizes.table, weight)),
        ),
    );
    return { least: Math.min(least, widestCell), natural: Math.min(natural, widestCell) };
}

function weightOf(line: number): Weight {
    return line === 0 ? 'bold' : 'regular';
}

function placed(columns: readonly CardColumn[], rows: readonly CardRow[], width: number): PlacedTable {
    const wide = columns.map((column) => widths(column, rows));
    const room = width - gap * (columns.length - 1);
    const least = wide.reduce((sum, each) => sum + each.least, 0);
    const natural = wide.reduce((sum, each) => sum + each.natural, 0);
    const share = natural > least ? Math.min(1, (room - least) / (natural - least)) : 0;
    const extra = Math.max(0, room - least - share * (natural - least)) / columns.length;
    const own = wide.map((each) => each.least + share * (each.natural - each.least) + extra);
    let x = 0;
    const lefts = own.map((each) => {
        const left = x;
        x += each + gap;
        return left;
    });
    const piece = (cells: readonly (readonly string[])[], head: boolean): Piece => {
        const height = Math.max(1, ...cells.map((lines) => lines.length)) * sizes.line + 2 * pad;
        return {
            height,
            keep: head,
            draw: ([left, top]) =>
                (head ? rectangle([left, top], width, height, { fill: face }) : '') +
                `<g data-tag="TR">${cells
                    .map((lines, column) => {
                        const drawn = lines.map((words, row) =>
                            text(
                                [left + lefts[column]! + 4, top + pad + row * sizes.line + sizes.table],
                                words,
                                {
                                    size: sizes.table,
                                    weight: head || row === 0 ? 'bold' : 'regular',
                                    fill: ink,
                                },
                            ),
                        );
                        return `<g data-tag="${head ? 'TH' : 'TD'}">${drawn.join('')}</g>`;
                    })
                    .join('')}</g>` +
                line([left, top + height], [left + width, top + height], {
                    stroke: ink,
                    width: head ? 4 : 1.5,
                }),
        };
    };
    const broken = (lines: readonly (string | undefined)[], column: number): string[] =>
        lines.flatMap((words, at) =>
            words
                ? wrap(words, own[column]! + 1, sizes.table, weightOf(at)).map((each) =>
                      cutToWidth(each, own[column]! + 1, sizes.table, weightOf(at)),
                  )
                : [],
        );
    return {
        head: piece(
            columns.map(({ head }, column) => wrap(head, own[column]! + 1, sizes.table, 'bold')),
            true,
        ),
        rows: rows.map((row) =>
            piece(
                columns.map((column, index) => broken(column.cell(row), index)),
                false,
            ),
        ),
    };
}
