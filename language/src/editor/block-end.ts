import { type AstNode, GrammarUtils, type TextDocument } from 'langium';
import type { Position, TextEdit } from 'vscode-languageserver';

/** Where a property goes that is added at the end of a block, and the white space around it there. */
export interface BlockEnd {
    readonly at: Position;
    readonly before: string;
    readonly after: string;
}

/** The end of a block, for a line of its own; undefined for a block that is not closed. */
export function blockEnd(block: AstNode, document: TextDocument): BlockEnd | undefined {
    const brace = GrammarUtils.findNodesForKeyword(block.$cstNode, '}').at(-1);
    if (!brace) return undefined;
    const text = document.getText();
    const eol = text.includes('\r\n') ? '\r\n' : '\n';
    const lineStart = startOfLine(text, brace.offset);
    const outer = text.slice(lineStart, brace.offset);
    if (outer.trim() === '')
        return { at: document.positionAt(lineStart), before: `${outer}    `, after: eol };
    // All in one line: the brace goes to a line of its own.
    const indent = indentAt(text, block.$cstNode?.offset ?? brace.offset);
    return {
        at: document.positionAt(brace.offset),
        before: `${eol}${indent}    `,
        after: `${eol}${indent}`,
    };
}

/** The edit that puts a line of its own at the end of a block; undefined for a block that is not closed. */
export function addedAtEnd(block: AstNode, text: string, document: TextDocument): TextEdit | undefined {
    const end = blockEnd(block, document);
    return end && { range: { start: end.at, end: end.at }, newText: `${end.before}${text}${end.after}` };
}

/** The blanks that the line of an offset begins with. */
function indentAt(text: string, offset: number): string {
    return /^[ \t]*/.exec(text.slice(startOfLine(text, offset)))![0];
}

function startOfLine(text: string, offset: number): number {
    let start = offset;
    while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start--;
    return start;
}
