import type { AstNode, CstNode } from 'langium';
import { entriesOf, keyOf } from './keys.ts';

/** A stretch of a text that is about one thing. The chunks of a text, put together, are that text. */
export interface Chunk {
    /** Unlike that of any other chunk of its block. */
    readonly key: string;
    /** With the white space and comments above it, and what stands behind it on its last line. */
    readonly text: string;
    /** Whether it begins where a line does. */
    readonly opensLine: boolean;
    /** What is in it, where it is a block. */
    readonly block?: Block;
}

export interface Block {
    /** Up to and with the brace. */
    readonly head: string;
    readonly chunks: readonly Chunk[];
}

/** The last chunk of a text or block: what follows the last entry. */
const TAIL = 'what follows';

/** A parsed text as chunks: its definitions, or the entries of one of them. */
export function chunksOf(text: string, node: AstNode): Chunk[] {
    return cut(text, entriesOf(node), [0, text.length, text.length]);
}

/** From the start to the end; the entries lie before the limit, behind which a brace may close them. */
function cut(
    text: string,
    entries: readonly AstNode[],
    [start, limit, end]: readonly [number, number, number],
): Chunk[] {
    const chunks: Chunk[] = [];
    const times = new Map<string, number>();
    let from = start;
    entries.forEach((entry, index) => {
        const next = entries[index + 1]?.$cstNode?.offset ?? limit;
        const to = endOfLine(text, entry.$cstNode!.end, next);
        const key = keyOf(entry);
        const time = (times.get(key) ?? 0) + 1;
        times.set(key, time);
        const block = blockOf(text, entry, from, to);
        chunks.push({
            key: time === 1 ? key : `${key} ${time}`,
            text: text.slice(from, to),
            opensLine: isLineStart(text, from),
            ...(block && { block }),
        });
        from = to;
    });
    if (from < end)
        chunks.push({ key: TAIL, text: text.slice(from, end), opensLine: isLineStart(text, from) });
    return chunks;
}

function isLineStart(text: string, offset: number): boolean {
    return offset === 0 || /[\r\n]/.test(text[offset - 1]!);
}

/** Behind the line break after this, where one comes before the next entry; else right here. */
function endOfLine(text: string, offset: number, limit: number): number {
    const found = /[^\r\n]*(?:\r\n|\r|\n)/y;
    found.lastIndex = offset;
    const line = found.exec(text)?.[0];
    return line !== undefined && offset + line.length <= limit ? offset + line.length : offset;
}

function blockOf(text: string, node: AstNode, from: number, to: number): Block | undefined {
    const brace = braceOf(node);
    if (brace === undefined) return undefined;
    const entries = entriesOf(node);
    const closing = node.$cstNode!.end - 1;
    const start = endOfLine(text, brace, entries[0]?.$cstNode?.offset ?? closing);
    return { head: text.slice(from, start), chunks: cut(text, entries, [start, closing, to]) };
}

/** The end of the brace that opens its block. */
function braceOf(node: AstNode): number | undefined {
    return node.$cstNode && firstBrace(node.$cstNode)?.end;
}

/** What an entry says ahead of its block holds no brace. */
function firstBrace(node: CstNode): CstNode | undefined {
    if (!('content' in node)) return node.text === '{' ? node : undefined;
    for (const part of node.content as readonly CstNode[]) {
        const found = firstBrace(part);
        if (found) return found;
    }
    return undefined;
}
