import { type AstNode, AstUtils } from 'langium';
import type { Range } from 'vscode-languageserver';
import type {
    Definition,
    From,
    NamedPoint,
    Position,
    PositionBlock,
    Sheet,
} from '../../grammar/generated/ast.ts';
import { baseOf, likeChain } from '../plan/resolve/gather.ts';
import { readPosition } from '../plan/resolve/position.ts';
import type { EditorServices } from './services.ts';
import { around, definitionAround, rangeOf, type Spot } from './spot.ts';

/** What a word names, wherever that stands: its whole text, and the word itself. */
export interface Target {
    readonly uri: string;
    readonly whole: Range;
    readonly name: Range;
}

/** The definition that a word refers to, or introduces. */
export function definitionNamed(
    { leaf, node, property }: Spot,
    services: EditorServices,
): Definition | undefined {
    const [found] = services.references.References.findDeclarations(leaf);
    if (found && 'kind' in found) return found as Definition;
    return property === 'name' && 'kind' in node ? (node as Definition) : undefined;
}

export function targetOf(node: AstNode, property = 'name'): Target | undefined {
    const [whole, name] = [rangeOf(node), rangeOf(node, property)];
    return whole && { uri: AstUtils.getDocument(node).uri.toString(), whole, name: name ?? whole };
}

/** The plan of a name in a file. */
export function spreadNamed(root: AstNode, name: string | undefined): Definition | undefined {
    return definitionsOf(root).find((each) => each.kind === 'spread' && each.name === name);
}

/** The block of a position that a plan itself has, not one that it is like. */
export function ownBlock({ entries }: Definition, position: string): PositionBlock | undefined {
    return (entries as readonly AstNode[]).find(
        (entry): entry is PositionBlock =>
            entry.$type === 'PositionBlock' &&
            readPosition((entry as PositionBlock).position)?.name === position,
    );
}

/** The block of a position in a plan, in the plan itself or in the nearest one that it is like. */
export function positionBlock(position: Position): PositionBlock | undefined {
    const own = around<PositionBlock>(position, 'PositionBlock');
    if (own?.position === position) return own;
    const name = readPosition(position)?.name;
    const definition = definitionAround(position);
    if (!name || definition?.kind !== 'spread') return undefined;
    for (const spread of [definition, ...likeChain(definition)]) {
        const block = ownBlock(spread, name);
        if (block) return block;
    }
    return undefined;
}

/** The named point of the boat that a line is towed from. */
export function namedPoint(from: From): NamedPoint | undefined {
    const spread = definitionAround(from);
    const boat = spread && boatOf(spread);
    for (let found = boat; found; found = baseOf(found)) {
        const point = (found.entries as readonly AstNode[]).find(
            (entry): entry is NamedPoint =>
                (entry.$type === 'NamedPoint' || entry.$type === 'ExtraPosition') &&
                (entry as NamedPoint).name === from.point,
        );
        if (point) return point;
    }
    return undefined;
}

function boatOf(spread: Definition): Definition | undefined {
    for (const each of [spread, ...likeChain(spread)]) {
        for (const entry of each.entries as readonly AstNode[]) {
            const { $type, word, of } = entry as AstNode & { word?: string; of?: { ref?: Definition } };
            if ($type === 'Referred' && word === 'boat') return of?.ref;
        }
    }
    return undefined;
}

/** The definitions of a file in the order of the text; none for one that could not be parsed at all. */
export function definitionsOf(sheet: AstNode): readonly Definition[] {
    return (sheet as Sheet).definitions ?? [];
}
