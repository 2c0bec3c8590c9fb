import type { AstNode, CstNode } from 'langium';
import { AstUtils, type TextDocument } from 'langium';
import type { Place } from './origin.ts';
import { pieceOf } from './syntax/fluent/property.ts';

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
    return node.$cstNode ? new CstPlace(uriOf(node), node.$cstNode, property, index) : placeOf(node);
}

export function startOf(uri: string): Place {
    const zero = { line: 0, character: 0 };
    return { uri, start: 0, end: 0, range: { start: zero, end: zero } };
}

/** The place of a stretch of a text. */
export function placeIn(document: TextDocument, start: number, end: number): Place {
    return {
        uri: document.uri,
        start,
        end,
        range: { start: document.positionAt(start), end: document.positionAt(end) },
    };
}

export function uriOf(node: AstNode): string {
    return AstUtils.findRootNode(node).$document!.uri.toString();
}

/** Looks for a property, and reads positions from the syntax, only when somebody asks: most values never show theirs. */
class CstPlace implements Place {
    readonly uri: string;
    /** Hidden, so that a finding can be printed or compared without dragging a syntax tree along. */
    #cst: CstNode;
    #property: string | undefined;
    readonly #index: number | undefined;

    constructor(uri: string, cst: CstNode, property?: string, index?: number) {
        this.uri = uri;
        this.#cst = cst;
        this.#property = property;
        this.#index = index;
    }

    get #found(): CstNode {
        if (this.#property !== undefined) {
            this.#cst = pieceOf(this.#cst, this.#property, this.#index) ?? this.#cst;
            this.#property = undefined;
        }
        return this.#cst;
    }

    get start(): number {
        return this.#found.offset;
    }

    get end(): number {
        return this.#found.end;
    }

    get range(): Place['range'] {
        return this.#found.range;
    }
}
