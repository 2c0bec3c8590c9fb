import type { IToken } from 'chevrotain';
import { type Entry, isComment, type Stretch } from './entry.ts';

/** What is to stand before each piece of a file; undefined where the author's own spacing stays. */
export type Spacing = (string | undefined)[];

/** A stretch that changes between one line and several: partly changed it would look torn. */
export type Whole = readonly [first: number, last: number];

const WIDTH = 80;
const INDENT = 4;
const MOST_ON_A_LINE = 3;
/** Between properties that share a line, and before the comment that ends one. */
const APART = '  ';

/**
 * Decides the white space of a file, and nothing else: words, texts and comments cannot be lost or reordered.
 *
 * @param readsAsUnit  whether a word would become a unit if it stood behind a number on its line
 */
export function layOut(
    text: string,
    pieces: readonly IToken[],
    stretches: readonly Stretch[],
    eol: string,
    readsAsUnit: (word: IToken) => boolean,
): { spacing: Spacing; wholes: Whole[] } {
    const spacing: Spacing = new Array(pieces.length + 1);
    const wholes: Whole[] = [];
    const widths = new Map<Entry, number>();
    layOutFile();
    return { spacing, wholes };

    function layOutFile(): void {
        let before: Stretch | undefined;
        let beforeFlat = false;
        for (const stretch of stretches) {
            const flat = stretch.sound ? place(stretch.sound, 0) : false;
            if (stretch.sound && (before?.sound || !before)) {
                const together = beforeFlat && flat && isHeading(before!) === isHeading(stretch);
                between(
                    before?.last ?? -1,
                    stretch.first,
                    0,
                    before ? 'middle' : 'start',
                    !!before && !together,
                );
            }
            before = stretch;
            beforeFlat = flat;
        }
        if (before?.sound || !before)
            between(before?.last ?? -1, pieces.length, 0, before ? 'middle' : 'start');
    }

    /** `layback 1` and `use`: they stand together above the definitions. */
    function isHeading(stretch: Stretch): boolean {
        return /^(layback|use)$/.test(pieces[stretch.first]!.image);
    }

    /** Lays out an entry from its first word on. @returns whether it stands on one line */
    function place(entry: Entry, indent: number): boolean {
        const { first, last, open } = entry;
        if (!entry.known) return pieces[first]!.startLine === pieces[last]!.endLine;
        const width = widthOf(entry);
        const rigid = isRigid(entry);
        if (width < Infinity && (rigid || indent + width <= WIDTH)) {
            if (linesIn(first, last) > 0) wholes.push([first, last]);
            flow(entry);
            return true;
        }
        const headEnd = open < 0 ? last : open;
        const wrapped = head(entry, headEnd, indent);
        if (open < 0 || rigid) return !wrapped;
        if (linesIn(open, last) === 0) wholes.push([open, last]);
        let before = open;
        for (const inner of entry.entries) {
            if (stays(before, inner)) for (let at = before + 1; at <= inner.first; at++) spacing[at] = ' ';
            else between(before, inner.first, indent + INDENT, before === open ? 'open' : 'middle');
            place(inner, indent + INDENT);
            before = inner.last;
        }
        between(before, last, indent, before === open ? 'empty' : 'close');
        return false;
    }

    /** An unknown word behind others on its line is most likely a slip in their property. */
    function stays(before: number, inner: Entry): boolean {
        return !inner.known && linesIn(before, inner.first) === 0;
    }

    /** The words before an entry's block, on one line or broken where they may be. @returns whether they were */
    function head(entry: Entry, end: number, indent: number): boolean {
        const next = `${eol}${' '.repeat(indent + INDENT)}`;
        const opens = end === entry.open ? 2 : 0;
        let wide = opens;
        let commented = false;
        for (let index = entry.first; index <= end; index++) {
            wide += pieces[index]!.image.length + 1;
            commented ||= isComment(pieces[index]!);
        }
        const fill = !commented && indent + wide - 1 > WIDTH;
        let column = indent + pieces[entry.first]!.image.length;
        let wrapped = false;
        for (let index = entry.first + 1; index <= end; index++) {
            const piece = pieces[index]!;
            const keepsLine =
                isComment(piece) || isComment(pieces[index - 1]!)
                    ? linesBefore(index) > 0
                    : !joins(index - 1, index) || isHeld(entry, index);
            const breaks = fill && entry.breaks.has(index) && column + chunk(entry, index, end) > WIDTH;
            if (keepsLine || breaks) {
                spacing[index] = index === entry.open ? `${eol}${' '.repeat(indent)}` : next;
                column = indent + INDENT + piece.image.length;
                wrapped = true;
            } else {
                spacing[index] = gap(index);
                column += spacing[index]!.length + piece.image.length;
            }
        }
        return wrapped;
    }

    /** Width of the words from a possible break up to the next one, with the space before them. */
    function chunk(entry: Entry, from: number, end: number): number {
        let width = 0;
        for (let index = from; index <= end; index++) {
            if (index > from && entry.breaks.has(index)) break;
            width += gap(index).length + pieces[index]!.image.length;
        }
        return width;
    }

    /** Everything on one line. */
    function flow(entry: Entry): void {
        const { first, last, open, entries } = entry;
        const headEnd = open < 0 ? last : open;
        for (let index = first + 1; index <= headEnd; index++) spacing[index] = gap(index);
        if (open < 0 || isRigid(entry)) return;
        entries.forEach((inner, index) => {
            spacing[inner.first] = index === 0 ? ' ' : APART;
            flow(inner);
        });
        spacing[last] = entries.length === 0 ? '' : ' ';
    }

    /** Width of an entry on one line; Infinity where it needs several. */
    function widthOf(entry: Entry): number {
        let width = widths.get(entry);
        if (width === undefined) {
            width = measure(entry);
            widths.set(entry, width);
        }
        return width;
    }

    function measure(entry: Entry): number {
        const { first, last, open, entries } = entry;
        if (!entry.known) return Infinity;
        const headEnd = open < 0 ? last : open;
        let width = pieces[first]!.image.length;
        for (let index = first + 1; index <= headEnd; index++) {
            if (isComment(pieces[index]!) || !joins(index - 1, index) || isHeld(entry, index))
                return Infinity;
            width += gap(index).length + pieces[index]!.image.length;
        }
        if (open < 0) return width;
        if (isRigid(entry)) return width + pieces[last]!.endOffset! - pieces[open]!.endOffset!;
        if (entries.length > MOST_ON_A_LINE) return Infinity;
        let before = open;
        for (const inner of entries) {
            // A gap in the numbering is a comment.
            if (inner.first !== before + 1 || !joins(before, inner.first)) return Infinity;
            width += (before === open ? 1 : APART.length) + widthOf(inner);
            before = inner.last;
        }
        if (last !== before + 1) return Infinity;
        return width + (entries.length === 0 ? 1 : 2);
    }

    /** A block on one line that holds a word nobody knows: its parts cannot be told apart. */
    function isRigid(entry: Entry): boolean {
        return (
            entry.open >= 0 &&
            linesIn(entry.open, entry.last) === 0 &&
            entry.entries.some((inner) => !inner.known)
        );
    }

    /** Whether a piece means the same on the line of the one before it. */
    function joins(before: number, index: number): boolean {
        if (pieces[before]!.tokenType.name !== 'NUMBER' || linesBefore(index) === 0) return true;
        return !readsAsUnit(pieces[index]!);
    }

    function isHeld(entry: Entry, index: number): boolean {
        return entry.held.has(index) && linesBefore(index) > 0;
    }

    function gap(index: number): string {
        return pieces[index]!.image === ',' ? '' : ' ';
    }

    function linesBefore(index: number): number {
        return pieces[index]!.startLine! - pieces[index - 1]!.endLine!;
    }

    function linesIn(first: number, last: number): number {
        return pieces[last]!.endLine! - pieces[first]!.startLine!;
    }

    /**
     * White space and comments from one entry to the next: a comment stays on the line of what it follows or
     * leads; a blank line stays where there was one, but not at the edges of a block.
     */
    function between(before: number, next: number, indent: number, edge: Edge, wantsBlank = false): void {
        const inside = edge === 'close' || edge === 'empty' ? indent + INDENT : indent;
        let leads = before < 0;
        let blank = false;
        let firstBreak = -1;
        for (let index = before + 1; index <= next; index++) {
            const last = index === next;
            const lines = index === 0 || index === pieces.length ? 1 : linesBefore(index);
            const sameLine =
                lines === 0 &&
                (last
                    ? leads && edge !== 'close' && edge !== 'empty'
                    : index > before + 1 || follows(index, next, edge));
            if (index === 0) spacing[index] = text.startsWith('\uFEFF') ? '\uFEFF' : '';
            else if (index === pieces.length) spacing[index] = eol;
            else if (sameLine) spacing[index] = index === before + 1 ? APART : ' ';
            else {
                const atEdge =
                    (index === before + 1 && (edge === 'open' || edge === 'empty')) ||
                    (last && (edge === 'close' || edge === 'empty'));
                const two = lines > 1 && !atEdge;
                spacing[index] = `${eol}${two ? eol : ''}${' '.repeat(last ? indent : inside)}`;
                blank ||= two;
                if (firstBreak < 0) firstBreak = index;
                leads = true;
            }
        }
        if (wantsBlank && !blank && firstBreak >= 0) spacing[firstBreak] = `${eol}${spacing[firstBreak]}`;
    }

    /** Whether the comment behind an entry belongs to it, and not to the one that it stands before. */
    function follows(index: number, next: number, edge: Edge): boolean {
        const leading = edge === 'open' || edge === 'empty' || pieces[index]!.image.startsWith('/**');
        if (!leading) return true;
        for (let at = index + 1; at <= next && at < pieces.length; at++) if (linesBefore(at) > 0) return true;
        return next === pieces.length;
    }
}

/** Where a gap lies: at the file's start, behind `{`, between entries, before `}`, or between `{` and `}`. */
type Edge = 'start' | 'open' | 'middle' | 'close' | 'empty';
