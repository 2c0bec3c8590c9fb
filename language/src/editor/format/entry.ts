import type { IToken } from 'chevrotain';
import type { AstNode, ParseResult } from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import { positionOpeners } from '../../plan/syntax/depth.ts';

/**
 * A definition, property or statement as the formatter sees it: the stretch of pieces (tokens and comments)
 * from its first word to its last, and the entries between its braces if it has any.
 */
export interface Entry {
    readonly first: number;
    readonly last: number;
    /** Its `{`, or -1. A `}` is then its last piece. */
    readonly open: number;
    readonly entries: readonly Entry[];
    /** False for a word that the language does not know: it stays as its author put it. */
    readonly known: boolean;
    /** Pieces that may begin a line of their own where the entry is too wide for one. */
    readonly breaks: ReadonlySet<number>;
    /** Pieces that open a line and would change what the lexer makes of the lines below if they did not. */
    readonly held: ReadonlySet<number>;
}

/** A stretch of a file: one sound definition, or text that did not parse and must not be touched. */
export interface Stretch {
    readonly first: number;
    readonly last: number;
    readonly sound?: Entry;
}

/** A file cut into definitions that can be formatted and stretches that cannot. */
export function stretchesOf(parsed: ParseResult<Sheet>, pieces: readonly IToken[]): Stretch[] {
    const { version, uses, definitions, strays } = parsed.value;
    const nodes = [version, ...uses, ...definitions, ...strays]
        .filter((node): node is NonNullable<typeof node> => Number.isFinite(node?.$cstNode?.offset))
        .sort((a, b) => a.$cstNode!.offset - b.$cstNode!.offset);
    const broken = brokenAmong(nodes, parsed, pieces);
    const reader = new EntryReader(pieces);
    const stretches: Stretch[] = [];
    const leave = (first: number, end: number) => {
        const [from, to] = [reader.wordFrom(first), reader.wordBefore(end)];
        if (from <= to) stretches.push({ first: from, last: to });
    };
    let done = 0;
    nodes.forEach((node, index) => {
        const first = reader.seek(node.$cstNode!.offset);
        leave(done, first);
        if (broken.has(node) || node.$type === 'Unknown') {
            const next = nodes[index + 1];
            done = next ? reader.seek(next.$cstNode!.offset) : pieces.length;
            leave(first, done);
        } else {
            const sound = reader.read(node);
            stretches.push({ first, last: sound.last, sound });
            done = sound.last + 1;
        }
    });
    leave(done, pieces.length);
    return stretches;
}

/** Every node that an error stands in, right before or right behind. */
function brokenAmong(
    nodes: readonly AstNode[],
    parsed: ParseResult<Sheet>,
    pieces: readonly IToken[],
): Set<AstNode> {
    const offsets = [
        ...pieces.filter(isOpenText).map((piece) => piece.startOffset),
        ...parsed.lexerErrors.map((error) => error.offset),
        ...parsed.parserErrors.flatMap((error) => {
            const behind = (error as { previousToken?: IToken }).previousToken;
            return [error.token, behind, ...error.resyncedTokens].map((token) =>
                token ? (Number.isFinite(token.startOffset) ? token.startOffset : Infinity) : 0,
            );
        }),
    ];
    const broken = new Set<AstNode>();
    for (const offset of offsets) {
        let low = 0;
        let high = nodes.length;
        while (low < high) {
            const middle = (low + high) >> 1;
            if (nodes[middle]!.$cstNode!.offset <= offset) low = middle + 1;
            else high = middle;
        }
        if (low > 0) broken.add(nodes[low - 1]!);
    }
    return broken;
}

/** A text without its closing quote: whatever follows on its line would become part of it. */
function isOpenText({ image }: IToken): boolean {
    return image.startsWith('"') && (image.length === 1 || !image.endsWith('"'));
}

export function isComment(piece: IToken): boolean {
    return piece.tokenType.name.endsWith('_COMMENT');
}

/** Reads entries out of the syntax tree in the order of the text, so that one cursor serves them all. */
class EntryReader {
    private readonly pieces: readonly IToken[];
    private cursor = 0;

    constructor(pieces: readonly IToken[]) {
        this.pieces = pieces;
    }

    /** The first token at or behind an offset, which never lies before the one asked for last. */
    seek(offset: number): number {
        while (this.cursor < this.pieces.length && this.pieces[this.cursor]!.startOffset < offset)
            this.cursor++;
        this.cursor = this.wordFrom(this.cursor);
        return this.cursor;
    }

    wordFrom(index: number): number {
        let at = index;
        while (at < this.pieces.length && isComment(this.pieces[at]!)) at++;
        return at;
    }

    wordBefore(index: number): number {
        let at = index - 1;
        while (at >= 0 && isComment(this.pieces[at]!)) at--;
        return at;
    }

    read(node: AstNode): Entry {
        const cst = node.$cstNode!;
        const first = this.seek(cst.offset);
        const known = node.$type !== 'Unknown';
        const breaks = new Set<number>();
        const inner = known ? (node as Braced) : {};
        const details = (inner.details ?? []).slice(1);
        for (const detail of details) {
            // A fish without `species` is a bare name, which must not open a line; its weight stays with it.
            if (opensWithWord(detail)) breaks.add(this.seek(detail.$cstNode!.offset));
        }
        const entries = (inner.entries ?? inner.settings ?? []).map((entry) => this.read(entry));
        this.seek(cst.end);
        const last = this.wordBefore(this.cursor);
        const open = known && this.pieces[last]!.image === '}' ? this.brace(first) : -1;
        const held = new Set<number>();
        for (let index = first + 1; known && index <= (open < 0 ? last : open - 1); index++) {
            const { image } = this.pieces[index]!;
            if (image === ',') breaks.add(this.wordFrom(index + 1));
            if (REASONED.has(node.$type) && this.givesReason(index)) breaks.add(index);
            // The lexer takes a second line in front of the brace for the first one behind a forgotten one.
            if (open >= 0 || this.mayOpenPosition(index, node)) held.add(index);
        }
        return { first, last, open, entries, known, breaks, held };
    }

    private brace(from: number): number {
        let at = from;
        while (this.pieces[at]!.image !== '{') at++;
        return at;
    }

    private mayOpenPosition(index: number, { $container }: AstNode): boolean {
        const afterComma = this.pieces[this.wordBefore(index)]!.image === ',';
        return (
            $container?.$type === 'Spread' && !afterComma && positionOpeners.has(this.pieces[index]!.image)
        );
    }

    /** Whether `because` or `until` stands here as itself and not as the name of a rule. */
    private givesReason(index: number): boolean {
        const { image } = this.pieces[index]!;
        const next = this.pieces[index + 1]?.tokenType.name;
        return (image === 'because' && next === 'STRING') || (image === 'until' && next === 'DATE');
    }
}

function opensWithWord(detail: AstNode): boolean {
    return detail.$type === 'EventPosition' || (detail as { word?: string }).word !== undefined;
}

const REASONED = new Set(['Waive', 'Order']);

/** Whatever node has properties between braces, or details behind its first words. */
interface Braced {
    readonly entries?: readonly AstNode[];
    readonly settings?: readonly AstNode[];
    readonly details?: readonly AstNode[];
}
