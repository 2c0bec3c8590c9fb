import type { AstNode } from 'langium';
import type { Definition } from '../../../grammar/generated/ast.ts';
import type { Context } from '../vocabulary.ts';

const KINDS: ReadonlySet<string> = new Set<Definition['kind']>([
    'boat',
    'rod',
    'reel',
    'line',
    'leader',
    'hooks',
    'outfit',
    'lure',
    'teaser',
    'bait',
    'method',
    'species',
    'spread',
    'day',
    'rules',
    'log',
]);

/** The block that an entry stands in; undefined for what stands in none. */
export function contextOf(entry: AstNode): Context | undefined {
    return entry.$container && contextIn(entry.$container);
}

/** The block that a node opens. */
export function contextIn(node: AstNode): Context | undefined {
    const { kind, word } = node as { kind?: string; word?: string };
    if (kind && KINDS.has(kind)) return kind as Context;
    switch (node.$type) {
        case 'PositionBlock':
            return 'position';
        case 'ExtraPosition':
            return 'extra position';
        case 'NamedPoint':
            return 'point';
        case 'Block':
            if (word === 'centre' || word === 'center') return 'centre rigger';
            return word === 'rod' ? 'rod limits' : (word as Context);
        case 'Event':
            return 'event';
        case 'Holder':
        case 'Limits':
        case 'Roles':
        case 'Fallback':
        case 'Part':
            return word as Context;
        default:
            return undefined;
    }
}
