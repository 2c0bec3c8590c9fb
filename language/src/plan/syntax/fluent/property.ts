import { type CstNode, GrammarUtils } from 'langium';
import { Branch, type Leaf } from './tree.ts';

/** The piece of a node's text that one of its properties was read from; by its number among several, else the first. */
export function pieceOf(whole: CstNode, property: string, index = 0): CstNode | undefined {
    // The toolkit asks the grammar, which a check of sound plans need not load.
    if (!(whole instanceof Branch)) return GrammarUtils.findNodeForProperty(whole, property, index);
    const pieces = [...piecesOf(whole, property)];
    return pieces[Math.max(0, Math.min(index, pieces.length - 1))];
}

function* piecesOf(branch: Branch, property: string): Generator<Leaf | Branch> {
    for (const piece of branch.content) {
        if (piece.step?.into?.feature === property) yield piece;
        else if (piece instanceof Branch && !piece.made) yield* piecesOf(piece, property);
    }
}
