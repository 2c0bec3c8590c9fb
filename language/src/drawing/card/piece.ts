import type { Spot } from '../pen.ts';

/** Something of a known height that goes on a page as a whole. Sizes in tenths of a millimetre. */
export interface Piece {
    readonly height: number;
    /** Stays on the page or in the column of what follows it. */
    readonly keep?: boolean;
    /** Stands above it where it opens a column and what it belongs to began in another one. */
    readonly again?: Piece;
    /** Room before what follows; none is needed where it would open a column. */
    readonly blank?: boolean;
    /** SVG of ours, from its upper left corner. */
    readonly draw: (at: Spot) => string;
}

/** The pieces that fit into a column, and those that do not. Never none, or nothing would ever fit. */
export function fill(pieces: readonly Piece[], room: number): [fitting: Piece[], rest: Piece[]] {
    let used = 0;
    let count = 0;
    while (count < pieces.length && used + pieces[count]!.height <= room) used += pieces[count++]!.height;
    if (count < pieces.length) while (count > 0 && pieces[count - 1]!.keep) count--;
    return [pieces.slice(0, count), pieces.slice(count)];
}

export function heightOf(pieces: readonly Piece[]): number {
    return pieces.reduce((sum, { height }) => sum + height, 0);
}

/** One below the other. */
export function stack(pieces: readonly Piece[], [x, top]: Spot): string {
    let y = top;
    return pieces
        .map((piece) => {
            const drawn = piece.draw([x, y]);
            y += piece.height;
            return drawn;
        })
        .join('');
}

/** Columns filled one after the other, and what is left. */
export function fillColumns(
    pieces: readonly Piece[],
    columns: number,
    room: number,
): [columns: Piece[][], rest: Piece[]] {
    const filled: Piece[][] = [];
    let rest = [...pieces];
    for (let column = 0; column < columns; column++) {
        if (rest[0]?.blank) rest = rest.slice(1);
        const again = rest[0]?.again;
        const [fitting, left] = fill(again ? [again, ...rest] : rest, room);
        filled.push(fitting);
        if (fitting.length > 0) rest = left;
    }
    return [filled, rest];
}

/** The least room in which all pieces fit into so many columns. */
export function evenRoom(pieces: readonly Piece[], columns: number): number {
    const again = Math.max(0, ...pieces.map((piece) => piece.again?.height ?? 0));
    let [low, high] = [heightOf(pieces) / columns, heightOf(pieces) + columns * again + 1];
    while (high - low > 5) {
        const middle = (low + high) / 2;
        if (fillColumns(pieces, columns, middle)[1].length > 0) low = middle;
        else high = middle;
    }
    return high;
}
