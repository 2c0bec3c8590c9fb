import {
    type AstNode,
    AstUtils,
    type CstNode,
    CstUtils,
    GrammarAST,
    GrammarUtils,
    type LangiumDocument,
    type LeafCstNode,
} from 'langium';
import type { Position } from 'vscode-languageserver';
import type { Definition } from '../../grammar/generated/ast.ts';

/** The word that a caret is in, or right behind. */
export interface Spot {
    readonly offset: number;
    readonly leaf: LeafCstNode;
    readonly node: AstNode;
    /** What the word is to its node: `name`, `of`, `word`, `amount`; undefined for braces and fixed words. */
    readonly property: string | undefined;
}

export function spotAt(document: LangiumDocument, position: Position): Spot | undefined {
    const root = document.parseResult.value.$cstNode;
    if (!root) return undefined;
    const offset = document.textDocument.offsetAt(position);
    const leaf = leafAt(root, offset) ?? (offset > 0 ? leafAt(root, offset - 1) : undefined);
    if (!leaf) return undefined;
    return { offset, leaf, node: leaf.astNode, property: roleOf(leaf) };
}

/** What a word is to the node that it is part of. */
export function roleOf(leaf: CstNode): string | undefined {
    const whole = leaf.astNode.$cstNode;
    // Beyond its own node the question would be what that node is to the one around it.
    for (let cst: CstNode | undefined = leaf; cst && cst !== whole; cst = cst.container) {
        const assignment =
            cst.grammarSource && AstUtils.getContainerOfType(cst.grammarSource, GrammarAST.isAssignment);
        if (assignment) return assignment.feature;
    }
    return undefined;
}

function leafAt(root: CstNode, offset: number): LeafCstNode | undefined {
    const leaf = CstUtils.findLeafNodeAtOffset(root, offset);
    // The end of a word belongs to it only where nothing else begins.
    return leaf && !leaf.hidden && leaf.offset <= offset && offset < leaf.end ? leaf : undefined;
}

/** The definition that a node stands in, itself included. */
export function definitionAround(node: AstNode): Definition | undefined {
    let found: AstNode | undefined = node;
    while (found && found.$container?.$type !== 'Sheet') found = found.$container;
    return found && 'kind' in found ? (found as Definition) : undefined;
}

/** The nearest node of a type around another, itself included. */
export function around<T extends AstNode>(node: AstNode, type: T['$type']): T | undefined {
    return AstUtils.getContainerOfType(node, (each): each is T => each.$type === type);
}

/** The place of one property of a node, as a range. */
export function rangeOf(node: AstNode, property?: string) {
    const cst =
        property === undefined ? node.$cstNode : GrammarUtils.findNodeForProperty(node.$cstNode, property);
    return cst?.range;
}
