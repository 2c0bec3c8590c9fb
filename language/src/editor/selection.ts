import {
    type AstNode,
    type CstNode,
    CstUtils,
    DocumentState,
    GrammarUtils,
    type LangiumDocument,
} from 'langium';
import { createRequestHandler } from 'langium/lsp';
import type { Connection, Position, Range, SelectionRange } from 'vscode-languageserver';
import type { EditorSharedServices } from './services.ts';

/** Grows a selection by what belongs together: a word, its value, the property, the block, the definition. */
export function answerSelections(connection: Connection, services: EditorSharedServices): void {
    connection.onSelectionRanges(
        createRequestHandler(
            (_, document, { positions }) => positions.map((position) => selectionAt(document, position)),
            services,
            DocumentState.Parsed,
        ),
    );
}

function selectionAt(document: LangiumDocument, position: Position): SelectionRange {
    const { textDocument, parseResult } = document;
    const offset = textDocument.offsetAt(position);
    const root = parseResult.value.$cstNode;
    const leaf =
        root &&
        (CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeBeforeOffset(root, offset));
    const end = textDocument.positionAt(textDocument.getText().length);
    const stretches: (readonly [start: number, end: number])[] = [[0, textDocument.offsetAt(end)]];
    for (const node of leaf && !leaf.hidden ? ancestors(leaf.astNode).reverse() : []) {
        const cst = node.$cstNode;
        if (!cst) continue;
        stretches.push([cst.offset, cst.end]);
        stretches.push(...insideBraces(cst, offset));
    }
    if (leaf && leaf.offset <= offset && offset <= leaf.end) {
        stretches.push([leaf.offset, leaf.end]);
        if (leaf.text.startsWith('"')) {
            const closed = leaf.text.length > 1 && leaf.text.endsWith('"') ? 1 : 0;
            stretches.push([leaf.offset + 1, leaf.end - closed]);
        }
    }
    const growing = stretches.filter(([from, to]) => from <= offset && offset <= to);
    return chain(growing, (at) => textDocument.positionAt(at));
}

/** What a block holds, between its braces. */
function insideBraces(cst: CstNode, offset: number): (readonly [number, number])[] {
    const open = GrammarUtils.findNodeForKeyword(cst, '{');
    const close = GrammarUtils.findNodesForKeyword(cst, '}').at(-1);
    return open && close && offset >= open.end && offset <= close.offset ? [[open.end, close.offset]] : [];
}

function ancestors(node: AstNode): AstNode[] {
    const found: AstNode[] = [];
    for (let each: AstNode | undefined = node; each; each = each.$container) found.push(each);
    return found;
}

/** Each inside the one before; what is no smaller than that is left out. */
function chain(
    stretches: readonly (readonly [start: number, end: number])[],
    positionAt: (offset: number) => Position,
): SelectionRange {
    let last: readonly [number, number] | undefined;
    let selection: SelectionRange | undefined;
    for (const [start, end] of stretches) {
        if (last && (start < last[0] || end > last[1] || (start === last[0] && end === last[1]))) continue;
        last = [start, end];
        const range: Range = { start: positionAt(start), end: positionAt(end) };
        selection = selection ? { range, parent: selection } : { range };
    }
    return selection!;
}
