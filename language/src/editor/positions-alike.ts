import { type AstNode, AstUtils } from 'langium';
import type { Position } from '../../grammar/generated/ast.ts';
import { readPosition } from '../plan/resolve/position.ts';
import { around, definitionAround } from './spot.ts';

export interface PositionNamed {
    readonly node: Position;
    /** The position's own block, and not only a word about it. */
    readonly isBlock: boolean;
}

/** Wherever a plan names the position that a node is part of: its block, orders, roles, waivers. */
export function positionsAlike(node: AstNode): PositionNamed[] {
    const position = around<Position>(node, 'Position');
    const name = position && readPosition(position)?.name;
    const definition = position && definitionAround(position);
    if (!name || !definition) return [];
    return AstUtils.streamAllContents(definition)
        .filter((each): each is Position => each.$type === 'Position')
        .filter((each) => readPosition(each)?.name === name)
        .map((each) => ({ node: each, isBlock: each.$container.$type === 'PositionBlock' }))
        .toArray();
}
