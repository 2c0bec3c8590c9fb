import { type AstNode, CstUtils } from 'langium';

/** The text of the documentation comment (two stars) right above a node, without its stars. */
export function documentationOf(node: AstNode): string | undefined {
    const comment = CstUtils.findCommentNode(node.$cstNode, ['ML_COMMENT']);
    if (!comment?.text.startsWith('/**') || comment.text.length < 5) return undefined;
    const lines = comment.text
        .slice(3, -2)
        .split(/\r?\n/)
        .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd());
    return lines.join('\n').trim() || undefined;
}
