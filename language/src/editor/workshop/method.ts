import type { AstNode } from 'langium';
import type { PositionBlock, Referred } from '../../../grammar/generated/ast.ts';
import { Gathered, gather, likeChain } from '../../plan/resolve/gather.ts';
import { readPosition } from '../../plan/resolve/position.ts';
import { positionKey, type Table } from '../../plan/resolve/table.ts';
import { linesOf, type Piece, piecesOf, startWithComments } from './pieces.ts';
import { freeName, type Refactoring, rewritten, type TextChange, type Workplace } from './refactoring.ts';

/** What a position and a method both say, in the same words. */
const shared: ReadonlySet<string> = new Set(['clip', 'loop', 'wait', 'wraps']);

/** Gives what a position says of its strike a name, so that another position can say the same by it. */
export function extractMethod(place: Workplace): Refactoring[] {
    const { definition, node, document, finds } = place;
    const block = blockAround(node);
    if (definition.kind !== 'spread' || !block) return [];
    const { entries } = piecesOf(block);
    const said = entries.filter(({ node: entry }) => isStrike(entry));
    if (said.length < 2) return [];
    const key = positionKey(readPosition(block.position)?.name)!;
    const plan = gather(definition, new Gathered());
    const slot = plan.get(key)?.[0]?.table?.get('method')?.[0] ?? plan.get('method')?.[0];
    const before = slot && (slot.node as Referred).of;
    const title = 'Extract a method';
    const refused = (why: string): Refactoring[] => [
        { title, kind: 'refactor.extract', changes: [], disabled: why },
    ];
    if (before && finds(document, slot.node, 'of', before.$refText) !== before.ref)
        return refused(`The method ${before.$refText} cannot be named from this file.`);
    if (entries.some(({ node: entry }) => isMethod(entry)))
        return refused('This position names a method already: change that one, or take it out.');
    const name = freeName(`${key.slice('position '.length).replaceAll(' ', '-')}-strike`, {
        ...place,
        definition: { $type: 'Method', kind: 'method' } as never,
    });
    const lines = said.flatMap((piece) => (isDrag(piece.node) ? dragLines(piece) : linesOf(piece)));
    const method = `method ${name}${before ? ` like ${before.$refText}` : ''} {\n${lines.join('\n')}\n}\n\n`;
    const [first, ...rest] = said;
    const start = startWithComments(definition);
    return [
        {
            title,
            kind: 'refactor.extract',
            changes: rewritten(place, [
                { start, end: start, text: method },
                { ...stretchOf(first!, block), text: `method ${name}` },
                ...rest.map((piece) => ({ ...stretchOf(piece, block), text: '' })),
            ]),
        },
    ];
}

/** Says at the positions what a plan's method says, and takes the method out of the plan. */
export function inlineMethod(place: Workplace): Refactoring[] {
    const { definition, node, documents } = place;
    const line = isMethod(node) ? (node as Referred) : undefined;
    const method = line?.of.ref;
    if (definition.kind !== 'spread' || !line || method?.kind !== 'method') return [];
    const title = 'Inline the method';
    const refused = (why: string): Refactoring[] => [
        { title, kind: 'refactor.inline', changes: [], disabled: why },
    ];
    const says = gather(method, new Gathered());
    const beyond = [...says.keys()].filter((key) => !shared.has(key) && !drags.has(key) && key !== 'note');
    if (beyond.length > 0)
        return refused(`A position has no place for what ${line.of.$refText} says: ${beyond.join(', ')}.`);
    if (
        documents.some((each) =>
            each.parseResult.value.definitions.some((other) => likeChain(other).includes(definition)),
        )
    )
        return refused('Another plan is like this one, and would no longer take a method of its own.');
    const plan = gather(definition, new Gathered());
    const block = blockAround(line);
    if (block && (likeChain(definition).length > 0 || plan.has('method')))
        return refused('Without a method of its own this position would take that of the plan.');
    if (!block && likeChain(definition).length > 0)
        return refused('Without a method of its own this plan would take that of the one it is like.');
    const blocks = block
        ? [block]
        : (definition.entries as readonly AstNode[]).filter(
              (entry): entry is PositionBlock => entry.$type === 'PositionBlock',
          );
    const changes = blocks.flatMap((each): Omit<TextChange, 'uri'>[] => {
        const position = plan.get(positionKey(readPosition(each.position)?.name)!)?.[0]?.table;
        if (!position?.has('outfit') || (!block && position.has('method'))) return [];
        if (readPosition(each.position)?.place === 'standby') return [];
        return strikeChanges(says, position, each);
    });
    const own = piecesOf(line.$container as AstNode).entries.find((piece) => piece.node === line)!;
    return [
        {
            title,
            kind: 'refactor.inline',
            changes: rewritten(place, [
                ...changes,
                { ...stretchOf(own, line.$container as AstNode), text: '' },
            ]),
        },
    ];
}

const drags: ReadonlySet<string> = new Set(['set', 'hooked', 'full']);

/** Has a position say what a method says and the position does not; what is above it was looked at before. */
function strikeChanges(method: Table, position: Table, block: PositionBlock): Omit<TextChange, 'uri'>[] {
    const drag = position.get('drag')?.[0];
    const textOf = (key: string) => method.get(key)?.[0]?.node.$cstNode?.text;
    const own = [...shared].flatMap((key) => (position.has(key) ? [] : (textOf(key) ?? [])));
    const levels = [...drags].flatMap((key) => (drag?.table?.has(key) ? [] : (textOf(key) ?? [])));
    const atEnd = ({ $cstNode }: AstNode, lines: readonly string[]) => {
        const end = $cstNode!.end - 1;
        return lines.length === 0 ? [] : [{ start: end, end, text: `\n${lines.join('\n')}\n` }];
    };
    if (drag) return [...atEnd(drag.node, levels), ...atEnd(block, own)];
    return atEnd(block, levels.length > 0 ? [...own, `drag {\n${levels.join('\n')}\n}`] : own);
}

function dragLines({ above, node, behind }: Piece): string[] {
    const { entries, below } = piecesOf(node);
    return [...above, ...entries.flatMap(linesOf), ...below, ...(behind ? [behind.trim()] : [])];
}

function isStrike(entry: AstNode): boolean {
    return (
        isDrag(entry) || (entry.$type === 'Measured' && shared.has((entry as { word?: string }).word ?? ''))
    );
}

function isDrag(entry: AstNode): boolean {
    return entry.$type === 'Block' && (entry as { word?: string }).word === 'drag';
}

function isMethod(entry: AstNode): boolean {
    return entry.$type === 'Referred' && (entry as Referred).word === 'method';
}

function blockAround(node: AstNode): PositionBlock | undefined {
    for (let found: AstNode | undefined = node; found; found = found.$container)
        if (found.$type === 'PositionBlock') return found as PositionBlock;
    return undefined;
}

/** A piece with the comments that go with it, for its place in the text. */
function stretchOf({ node, above, behind }: Piece, block: AstNode): { start: number; end: number } {
    const cst = node.$cstNode!;
    const text = cst.root.fullText;
    const first = above[0];
    const from = first === undefined ? cst.offset : text.lastIndexOf(first, cst.offset);
    const to = behind === '' ? cst.end : text.indexOf(behind.trim(), cst.end) + behind.trim().length;
    return { start: Math.max(from, block.$cstNode!.offset), end: to };
}
