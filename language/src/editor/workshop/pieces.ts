import { type AstNode, GrammarUtils } from 'langium';

/** One entry of a block as it is written, with the comments that belong to it. */
export interface Piece {
    readonly node: AstNode;
    /** Comments on lines of their own above it. */
    readonly above: readonly string[];
    readonly text: string;
    /** The comment behind it in its line, with a blank before it. */
    readonly behind: string;
}

/** The entries of a block and the comments below the last one, in the order of the text. */
export interface Pieces {
    readonly entries: readonly Piece[];
    readonly below: readonly string[];
}

const COMMENT = /\/\/[^\n\r]*|\/\*[\s\S]*?\*\//g;

/** Nothing that stands in the block is left out but white space. */
export function piecesOf(block: AstNode): Pieces {
    const cst = block.$cstNode!;
    const text = cst.root.fullText;
    const open = GrammarUtils.findNodesForKeyword(cst, '{')[0];
    const nodes = ((block as { entries?: readonly AstNode[] }).entries ?? []).filter(
        ({ $cstNode }) => $cstNode,
    );
    if (!open) return { entries: [], below: [] };
    let from = open.end;
    let above: string[] = [];
    const entries: { node: AstNode; above: string[]; text: string; behind: string }[] = [];
    const between = (to: number) => {
        for (const found of text.slice(from, to).matchAll(COMMENT)) {
            const isSameLine = !text.slice(from, from + found.index).includes('\n');
            const last = entries.at(-1);
            if (isSameLine && last) last.behind += ` ${found[0]}`;
            else above.push(found[0]);
        }
    };
    for (const node of nodes) {
        between(node.$cstNode!.offset);
        entries.push({ node, above, text: node.$cstNode!.text, behind: '' });
        above = [];
        from = node.$cstNode!.end;
    }
    between(cst.end - 1);
    return { entries, below: above };
}

/** A piece as lines. */
export function linesOf({ above, text, behind }: Omit<Piece, 'node'>): string[] {
    return [...above, `${text}${behind}`];
}

/** What stands above a definition and belongs to it: comments without an empty line between. */
export function startWithComments(node: AstNode): number {
    const cst = node.$cstNode!;
    const before = cst.root.fullText.slice(0, cst.offset);
    const [comments = ''] =
        /(?:(?:\/\/[^\n\r]*|\/\*(?:(?!\*\/)[\s\S])*\*\/)[ \t]*\r?\n[ \t]*)*$/.exec(before) ?? [];
    // A comment behind something else in its line is about that.
    const start = cst.offset - comments.length;
    const lineStart = before.lastIndexOf('\n', start - 1) + 1;
    return before.slice(lineStart, start).trim() === '' ? start : cst.offset;
}
