import { type AstNode, isAstNode } from 'langium';

/** Everything in a node, in the order of the text. Without recursion: a text nests as deep as it likes. */
export function contentsOf(node: AstNode): AstNode[] {
    const found: AstNode[] = [];
    const waiting = [node];
    for (let each = waiting.pop(); each; each = waiting.pop()) {
        if (each !== node) found.push(each);
        const before = waiting.length;
        for (const property of Object.keys(each)) {
            if (property.startsWith('$')) continue;
            const value: unknown = each[property as keyof AstNode];
            for (const one of Array.isArray(value) ? value : [value]) if (isAstNode(one)) waiting.push(one);
        }
        // The last one in is the first one out.
        for (let low = before, high = waiting.length - 1; low < high; low++, high--)
            [waiting[low], waiting[high]] = [waiting[high]!, waiting[low]!];
    }
    return found;
}
