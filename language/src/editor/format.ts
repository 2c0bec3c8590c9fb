import type { IToken } from 'chevrotain';
import type { ParseResult } from 'langium';
import type { Sheet } from '../../grammar/generated/ast.ts';
import type { LaybackServices } from '../plan/services.ts';
import type { PlaceAwareLexer } from '../plan/syntax/lexer.ts';
import { isComment, stretchesOf } from './format/entry.ts';
import { layOut, type Spacing } from './format/layout.ts';

/** A replacement in the text; offsets in UTF-16 code units, end exclusive. */
export interface Change {
    readonly start: number;
    readonly end: number;
    readonly text: string;
}

/** A file and what the parser made of it. An editor has both at hand. */
export interface ParsedText {
    readonly text: string;
    readonly parsed: ParseResult<Sheet>;
}

/**
 * The text as the house writes it: one property a line, blocks of up to three properties on one line where
 * they fit in 80 columns, four spaces a level, no columns.
 *
 * Only white space changes, so nothing is lost or reordered and the meaning stays. A definition with a syntax
 * error stays as it is. A file whose every line ends in CR LF keeps that, any other gets LF; a byte order mark is
 * kept.
 */
export function format(text: string, services: LaybackServices): string {
    const parsed = services.parser.LangiumParser.parse<Sheet>(text);
    return applyChanges(text, formatChanges({ text, parsed }, services));
}

/**
 * The same as single replacements, in order, for a whole file or for the lines of a range. A block that changes
 * between one line and several is changed as a whole if any line of it is in the range.
 */
export function formatChanges(
    { text, parsed }: ParsedText,
    services: LaybackServices,
    range?: { readonly start: number; readonly end: number },
): Change[] {
    const lexer = services.parser.Lexer as PlaceAwareLexer;
    const { tokens, hidden } = lexer.tokenize(text);
    const pieces = inOrder(tokens, hidden);
    const eol = /\r\n/.test(text) && !/\r(?!\n)|(?<!\r)\n/.test(text) ? '\r\n' : '\n';
    const { spacing, wholes } = layOut(text, pieces, stretchesOf(parsed, pieces), eol, (word) =>
        lexer.readsAsUnit(word),
    );
    const changes = changesFor(text, pieces, spacing, eol);
    if (!range) return changes;
    let [start, end] = linesAround(text, range.start, range.end);
    for (let grown = true; grown; ) {
        grown = false;
        for (const [first, last] of wholes) {
            const [from, to] = [pieces[first]!.startOffset, pieces[last]!.endOffset! + 1];
            if (to <= start || from >= end || (from >= start && to <= end)) continue;
            [start, end] = [Math.min(start, from), Math.max(end, to)];
            grown = true;
        }
    }
    return changes.filter((change) => change.end >= start && change.end <= end);
}

/**
 * What to change right after a key: behind `}` the block that it closes, behind a line break the new line's
 * indentation.
 *
 * @param offset  right behind what was typed
 */
export function formatTyped(
    source: ParsedText,
    services: LaybackServices,
    offset: number,
    typed: '}' | '\n',
): Change[] {
    const { text } = source;
    const { tokens } = services.parser.Lexer.tokenize(text);
    const open: IToken[] = [];
    for (const token of tokens) {
        if (token.startOffset >= offset) break;
        if (token.image === '{') open.push(token);
        else if (token.image === '}') {
            const opening = open.pop();
            if (typed === '}' && token.endOffset! + 1 === offset)
                return opening
                    ? formatChanges(source, services, { start: opening.startOffset, end: offset })
                    : [];
        }
    }
    if (typed === '}') return [];
    const [start] = linesAround(text, offset, offset);
    const [spaces] = /^[ \t]*/.exec(text.slice(start))!;
    const depth = open.length - (text[start + spaces.length] === '}' ? 1 : 0);
    const indent = ' '.repeat(4 * Math.max(0, depth));
    return spaces === indent ? [] : [{ start, end: start + spaces.length, text: indent }];
}

/** @param changes  in order, none overlapping another */
export function applyChanges(text: string, changes: readonly Change[]): string {
    const parts: string[] = [];
    let done = 0;
    for (const change of changes) {
        parts.push(text.slice(done, change.start), change.text);
        done = change.end;
    }
    parts.push(text.slice(done));
    return parts.join('');
}

function changesFor(text: string, pieces: readonly IToken[], spacing: Spacing, eol: string): Change[] {
    const changes: Change[] = [];
    const change = (start: number, end: number, wanted: string) => {
        if (text.slice(start, end) !== wanted) changes.push({ start, end, text: wanted });
    };
    const respace = (start: number, end: number, wanted: string) => {
        // Characters that mean nothing are no piece, and must stay too.
        if (!/\S/.test(text.slice(start, end))) change(start, end, wanted);
    };
    let done = 0;
    pieces.forEach((piece, index) => {
        const space = spacing[index];
        if (space !== undefined) respace(done, piece.startOffset, space);
        done = piece.endOffset! + 1;
        if (space !== undefined && isComment(piece)) {
            change(piece.startOffset, done, tidyComment(piece.image, space, index === 0, eol));
        }
    });
    const space = spacing[pieces.length];
    if (space !== undefined) respace(done, text.length, space);
    return changes;
}

/** A comment without trailing white space; the stars of one that has its own lines stand below each other. */
function tidyComment(image: string, space: string, opensFile: boolean, eol: string): string {
    const [head, ...rest] = image.split(/\r\n|\r|\n/).map((line) => line.trimEnd());
    const ownLine = opensFile || space.includes('\n');
    const starred = ownLine && rest.every((line) => /^\s*\*/.test(line));
    const indent = `${space.slice(space.lastIndexOf('\n') + 1).replace('\uFEFF', '')} `;
    return [head, ...rest.map((line) => (starred ? indent + line.trimStart() : line))].join(eol);
}

function linesAround(text: string, from: number, to: number): [start: number, end: number] {
    let [start, end] = [from, to];
    while (start > 0 && !/[\r\n]/.test(text[start - 1]!)) start--;
    while (end < text.length && !/[\r\n]/.test(text[end]!)) end++;
    return [start, end];
}

function inOrder(tokens: readonly IToken[], comments: readonly IToken[]): IToken[] {
    const pieces: IToken[] = [];
    let next = 0;
    for (const token of tokens) {
        while (next < comments.length && comments[next]!.startOffset < token.startOffset)
            pieces.push(comments[next++]!);
        pieces.push(token);
    }
    for (; next < comments.length; next++) pieces.push(comments[next]!);
    return pieces;
}
