import type { AstNode, CompositeCstNode, CstNode, LeafCstNode } from 'langium';

/** The text of the documentation comment (two stars) right above a node, without its stars. */
export function documentationOf(node: AstNode): string | undefined {
    const comment = commentAbove(node.$cstNode)?.text;
    if (!comment?.startsWith('/**') || comment.length < 5) return undefined;
    const lines = comment
        .slice(3, -2)
        .split(/\r?\n/)
        .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd());
    return lines.join('\n').trim() || undefined;
}

/** Looked for by where it stands: a search from the front for each of very many definitions would take the longer. */
function commentAbove(node: CstNode | undefined): CstNode | undefined {
    for (let below = node; below?.container; below = below.container) {
        const at = indexIn(below.container, below);
        if (at === 0) continue;
        const above = below.container.content[at - 1];
        return (above as Partial<LeafCstNode>).tokenType?.name === 'ML_COMMENT' ? above : undefined;
    }
    return undefined;
}

function indexIn({ content }: CompositeCstNode, node: CstNode): number {
    let [first, last] = [0, content.length - 1];
    while (first < last) {
        const middle = (first + last) >> 1;
        if (content[middle]!.offset < node.offset) first = middle + 1;
        else last = middle;
    }
    return first;
}
