import type { AstNode, CstNode } from 'langium';
import { AstUtils, GrammarUtils } from 'langium';
import type { Place } from './origin.ts';

/** The place of a piece of syntax. */
export function placeOfCst(uri: string, cst: CstNode): Place {
    return new CstPlace(uri, cst);
}

/** The place of a node; of the file's beginning where recovery made it up. */
export function placeOf(node: AstNode): Place {
    const uri = uriOf(node);
    return node.$cstNode ? new CstPlace(uri, node.$cstNode) : startOf(uri);
}

/** The place of one property of a node (`amount` of `speed 8 kn`), else of the node. */
export function placeOfProperty(node: AstNode, property: string, index?: number): Place {
    const cst = GrammarUtils.findNodeForProperty(node.$cstNode, property, index);
    return cst ? new CstPlace(uriOf(node), cst) : placeOf(node);
}

export function startOf(uri: string): Place {
    const zero = { line: 0, character: 0 };
    return { uri, start: 0, end: 0, range: { start: zero, end: zero } };
}

export function uriOf(node: AstNode): string {
    return AstUtils.findRootNode(node).$document!.uri.toString();
}

/** Reads positions from the syntax only when somebody asks: most values never show theirs. */
class CstPlace implements Place {
    readonly uri: string;
    /** Hidden, so that a finding can be printed or compared without dragging a syntax tree along. */
    readonly #cst: CstNode;

    constructor(uri: string, cst: CstNode) {
        this.uri = uri;
        this.#cst = cst;
    }

    get start(): number {
        return this.#cst.offset;
    }

    get end(): number {
        return this.#cst.end;
    }

    get range(): Place['range'] {
        return this.#cst.range;
    }
}
