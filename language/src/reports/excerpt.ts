import type { Place } from '../plan/origin.ts';
import { harmless, type Width } from './width.ts';

export interface Excerpt {
    /** The line that the place begins on, tabs spread, cut to what fits. */
    readonly line: string;
    /** Blanks, then carets under the place. */
    readonly carets: string;
}

const tab = 4;
const ellipsis = '…';

/**
 * The line of the text that a place begins on, with carets under it.
 *
 * @param columns  that the line may take; of a longer one the part around the place is shown
 */
export function excerpt(text: string, place: Place, columns: number, width: Width): Excerpt {
    const start = Math.min(place.start, text.length);
    // Of a line far longer than the terminal only the neighbourhood is looked at.
    const lineStart = lineStartBefore(text, start, start - columns - 1);
    const lineEnd = lineEndAfter(text, start, start + 2 * columns + 1);
    const end = Math.max(start, Math.min(place.end, lineEnd));

    const from = Math.max(lineStart, start - columns);
    const to = Math.min(lineEnd, start + 2 * columns);
    let before = spread(text.slice(from, start), 0, width);
    const marked = spread(text.slice(start, Math.min(end, to)), width(before), width);
    const after = spread(text.slice(Math.min(end, to), to), width(before) + width(marked), width);

    let ahead = from > lineStart ? ellipsis : '';
    const room = columns - Math.min(width(marked) + 20, Math.ceil(columns / 2));
    if (width(ahead + before) > room) {
        before = lastColumns(before, room - 1, width);
        ahead = ellipsis;
    }
    const whole = ahead + before + marked + after;
    const cut = width(whole) > columns || to < lineEnd;
    const line = cut ? firstColumns(whole, columns - 1, width) + ellipsis : whole;

    const indent = width(ahead + before);
    const carets = Math.max(1, Math.min(width(marked.trimEnd()), width(line) - indent));
    return { line: line.trimEnd(), carets: ' '.repeat(indent) + '^'.repeat(carets) };
}

/** Where the line begins, or a place ahead of that where it begins earlier. */
function lineStartBefore(text: string, offset: number, earliest: number): number {
    let at = offset;
    // Between the two halves of a line end the line is still the one that it ends.
    if (text[at - 1] === '\r' && text[at] === '\n') at--;
    while (at > 0 && at > earliest && text[at - 1] !== '\n' && text[at - 1] !== '\r') at--;
    return at;
}

/** Where the line ends, or the last place looked at where it ends later. */
function lineEndAfter(text: string, offset: number, latest: number): number {
    const near = text.slice(offset, latest);
    const end = near.search(/[\r\n]/);
    return offset + (end < 0 ? near.length : end);
}

function spread(text: string, column: number, width: Width): string {
    if (!text.includes('\t')) return harmless(text);
    let spreadOut = '';
    for (const [index, piece] of text.split('\t').entries()) {
        if (index > 0) spreadOut += ' '.repeat(tab - ((column + width(spreadOut)) % tab));
        spreadOut += harmless(piece);
    }
    return spreadOut;
}

function firstColumns(text: string, columns: number, width: Width): string {
    let kept = '';
    for (const letter of text) {
        if (width(kept + letter) > columns) break;
        kept += letter;
    }
    return kept;
}

function lastColumns(text: string, columns: number, width: Width): string {
    let kept = '';
    for (const letter of Array.from(text).reverse()) {
        if (width(letter + kept) > columns) break;
        kept = letter + kept;
    }
    return kept;
}
