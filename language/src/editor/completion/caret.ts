import type { IToken } from 'chevrotain';
import { type AstNode, CstUtils, type LangiumDocument } from 'langium';
import type { Position } from 'vscode-languageserver';
import { contextIn } from '../../plan/checks/context.ts';
import type { Context } from '../../plan/vocabulary.ts';
import type { EditorServices } from '../services.ts';

/** Where something is being typed. */
export interface Caret {
    readonly document: LangiumDocument;
    readonly offset: number;
    /** The word that is being typed, up to its end behind the caret; empty where none has begun. */
    readonly start: number;
    readonly end: number;
    /** The open blocks around it, the outermost first; none outside of any. */
    readonly blocks: readonly Block[];
    /** What was said of the property that it belongs to, before the word; empty where one begins. */
    readonly entry: string;
    /** True where nothing stands before it on its line. */
    readonly opensLine: boolean;
}

/** A block that is open at the caret. */
export interface Block {
    /** The syntax that opened it. */
    readonly node: AstNode;
    /** Undefined for a block that nobody knows. */
    readonly context: Context | undefined;
    /** Its words up to and with the brace. */
    readonly header: string;
    /** Where that brace stands. */
    readonly brace: number;
}

/** A text in quotes that the caret is in, and the word that it stands behind. */
export interface Quoted {
    readonly behind: string | undefined;
    /** Between the quotes. */
    readonly start: number;
    readonly end: number;
}

/** @returns undefined inside a comment or a number, where there is nothing to complete */
export function caretAt(
    document: LangiumDocument,
    position: Position,
    services: EditorServices,
): Caret | Quoted | undefined {
    const text = document.textDocument.getText();
    const offset = document.textDocument.offsetAt(position);
    const { tokens, hidden } = services.parser.Lexer.tokenize(text);
    if (hidden.some((comment) => isIn(comment, offset))) return undefined;
    const at = tokens.findIndex((token) => endOf(token) >= offset);
    const touched = at >= 0 && tokens[at]!.startOffset < offset ? tokens[at] : undefined;
    const before = tokens.slice(0, at < 0 ? tokens.length : at);
    if (touched?.image.startsWith('"')) return quotedAt(touched, before.at(-1), offset);
    if (touched && /^[+-]?[\d.]/.test(touched.image)) {
        // Right behind a number the next thing is its unit.
        if (endOf(touched) !== offset) return undefined;
        before.push(touched);
    }
    const isWord = touched !== undefined && /^[^\W\d]|^[\u00AA-\uFFEF%°]/.test(touched.image);
    if (touched && !isWord && before.at(-1) !== touched) before.push(touched);
    const [start, end] = isWord ? [touched.startOffset, endOf(touched)] : [offset, offset];
    const open = openBraces(before);
    const blocks = open.flatMap((brace) => blockAt(brace, document) ?? []);
    if (blocks.length < open.length) return undefined;
    return {
        document,
        offset,
        start,
        end,
        blocks,
        entry: entryBefore(start, before, open.at(-1), blocks.at(-1), text),
        opensLine: text.slice(startOfLine(text, start), start).trim() === '',
    };
}

export function isQuoted(caret: Caret | Quoted): caret is Quoted {
    return 'behind' in caret;
}

function quotedAt(token: IToken, previous: IToken | undefined, offset: number): Quoted | undefined {
    const closed = token.image.length > 1 && token.image.endsWith('"');
    const end = endOf(token) - (closed ? 1 : 0);
    return offset > end ? undefined : { behind: previous?.image, start: token.startOffset + 1, end };
}

function openBraces(tokens: readonly IToken[]): IToken[] {
    const open: IToken[] = [];
    for (const token of tokens) {
        if (token.image === '{') open.push(token);
        else if (token.image === '}') open.pop();
    }
    return open;
}

function blockAt(brace: IToken, document: LangiumDocument): Block | undefined {
    const root = document.parseResult.value.$cstNode;
    const leaf = root && CstUtils.findLeafNodeAtOffset(root, brace.startOffset);
    const node = leaf?.text === '{' ? leaf.astNode : undefined;
    if (!node?.$cstNode) return undefined;
    const header = document.textDocument.getText().slice(node.$cstNode.offset, brace.startOffset + 1);
    return { node, context: contextIn(node), header, brace: brace.startOffset };
}

/**
 * The beginning of the property that a word belongs to. The syntax tree knows it, unless the property is too
 * unfinished to be in it; then it begins where its line does.
 */
function entryBefore(
    start: number,
    before: readonly IToken[],
    brace: IToken | undefined,
    block: Block | undefined,
    text: string,
): string {
    const inside = before.filter((token) => token.startOffset > (brace?.startOffset ?? -1));
    const last = inside.at(-1);
    if (!last) return '';
    const known = block ? lastEntryBefore(start, block.node) : undefined;
    let first = last;
    for (const token of [...inside].reverse()) {
        // A list goes on behind its comma, also on the next line.
        if (token.endLine !== first.startLine && token.image !== ',') break;
        first = token;
    }
    const closed = inside.findLast((token) => token.image === '}');
    const lineStart = Math.max(first.startOffset, closed ? endOf(closed) : 0);
    const isStillIn = known && known.end > lineStart;
    const from = isStillIn ? known.start : Math.max(lineStart, known?.end ?? 0);
    return text.slice(from, start).trimStart();
}

function lastEntryBefore(start: number, node: AstNode): { start: number; end: number } | undefined {
    const { entries = [], settings = [] } = node as {
        entries?: readonly AstNode[];
        settings?: readonly AstNode[];
    };
    const cst = [...entries, ...settings].findLast(
        ({ $cstNode }) => $cstNode && $cstNode.offset < start,
    )?.$cstNode;
    return cst && { start: cst.offset, end: cst.end };
}

function isIn(comment: IToken, offset: number): boolean {
    const isLine = comment.image.startsWith('//');
    return comment.startOffset < offset && (isLine ? offset <= endOf(comment) : offset < endOf(comment));
}

function startOfLine(text: string, offset: number): number {
    return Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
}

function endOf(token: IToken): number {
    return token.endOffset! + 1;
}
