import { type AstNode, GrammarUtils } from 'langium';
import type {
    Definition,
    Lure,
    Order,
    Part,
    Position as PositionNode,
} from '../../../grammar/generated/ast.ts';
import { referencesIn } from '../../plan/names/link.ts';
import { baseOf, Gathered, gather, likeChain } from '../../plan/resolve/gather.ts';
import { readPosition } from '../../plan/resolve/position.ts';
import { isRearrangement, keyOf, positionKey, type Slot, type Table } from '../../plan/resolve/table.ts';
import { linesOf, piecesOf } from './pieces.ts';
import { type Refactoring, rewritten, type Workplace } from './refactoring.ts';

/** Says everything that a definition takes from what it is like, so that it is like nothing any more. */
export function flatten(place: Workplace): Refactoring[] {
    const { definition, document } = place;
    const base = baseOf(definition);
    if (!base) return [];
    const title =
        definition.kind === 'spread' ? 'Flatten this plan' : `Write this ${definition.kind} out in full`;
    const refused = whyNot(place);
    if (refused) return [{ title, kind: 'refactor.inline', changes: [], disabled: refused }];
    const table = gather(definition, new Gathered());
    const cst = definition.$cstNode!;
    const lines = [...printed(table, there(definition, table)), ...piecesOf(definition).below];
    const text = `${headOf(definition)} {\n${lines.join('\n')}\n}`;
    const changes = rewritten(place, [{ start: cst.offset, end: cst.end, text }]);
    return document ? [{ title, kind: 'refactor.inline', changes }] : [];
}

/** Why it would not be the same, if so. */
function whyNot({ definition, document, finds }: Workplace): string | undefined {
    for (const each of [definition, ...likeChain(definition)]) {
        if (hasUnread(each)) return `Something in ${nameOf(each)} cannot be read: mend that first.`;
        for (const { reference, container, property } of referencesIn(each)) {
            if (property === 'base') continue;
            const name = reference.$refText;
            if (!('ref' in reference) || finds(document, container, property, name) !== reference.ref)
                return `${name} is another one in this file than where ${nameOf(each)} says it.`;
        }
    }
    return undefined;
}

/** Whether any word or brace of a definition was not understood, or anything in it is said twice. */
function hasUnread(node: AstNode): boolean {
    const { entries } = node as { entries?: readonly AstNode[] };
    if (node.$type === 'Unknown') return true;
    const keys = (entries ?? []).flatMap((entry) => keyOf(entry) ?? []).filter((key) => !MANY.has(key));
    return new Set(keys).size < keys.length || (entries ?? []).some(hasUnread);
}

const MANY = new Set(['note', 'step', 'waive', 'spare', 'written', 'using', 'at event', 'drop', 'say']);

function nameOf(definition: Definition): string {
    return ('name' in definition && definition.name) || `this ${definition.kind}`;
}

/** The definition up to its brace, without its `like`; a lure keeps the kind of head that it took over. */
function headOf(definition: Definition): string {
    const { kind, name, title, head } = definition as Definition & {
        name?: string;
        title?: string;
        head?: string;
    };
    const taken = [definition, ...likeChain(definition)].map((each) => (each as Lure).head).find(Boolean);
    return [kind, name, title && quoted(definition), head ?? (kind === 'lure' ? taken : undefined)]
        .filter(Boolean)
        .join(' ');
}

/** As its author quoted it. */
function quoted(definition: Definition): string {
    return GrammarUtils.findNodeForProperty(definition.$cstNode, 'title')?.text ?? '';
}

/** Whether a plan has a position; what else is written out names none. */
type Has = (position: PositionNode | undefined) => boolean;

function there({ kind }: Definition, table: Table): Has {
    if (kind !== 'spread') return () => true;
    return (position) => {
        const key = positionKey(readPosition(position)?.name);
        return key === undefined || table.has(key);
    };
}

function printed(table: Table, has: Has): string[] {
    return [...table].flatMap(([key, slots]) =>
        slots.flatMap((slot) => (isOfNothing(slot, has) ? [] : printedSlot(key, slot, has))),
    );
}

/** What a preset says of lines that this plan does not have was harmless there, and would be a slip here. */
function isOfNothing({ node, table }: Slot, has: Has): boolean {
    const { position, positions } = node as { position?: PositionNode; positions?: readonly PositionNode[] };
    switch (node.$type) {
        case 'Drop':
        case 'Role':
            return !has(position);
        case 'Order':
            return !positions?.some(has);
        case 'Fallback':
            return [...(table ?? [])].every(([, slots]) => slots.every((slot) => isOfNothing(slot, has)));
        default:
            return false;
    }
}

/** An order without the lines that are not there; undefined for what needs no change. */
function orderOfThose(node: AstNode, has: Has): string | undefined {
    const { what, positions = [] } = node as Partial<Order>;
    if (node.$type !== 'Order' || positions.every(has)) return undefined;
    const names = positions.filter(has).map(({ $cstNode }) => $cstNode!.text);
    const because = GrammarUtils.findNodeForProperty(node.$cstNode, 'because')?.text;
    return [`order ${what} ${names.join(', ')}`, ...(because ? [`because ${because}`] : [])].join(' ');
}

function printedSlot(key: string, slot: Slot, has: Has): string[] {
    const { node } = slot;
    const container = node.$container as AstNode;
    const piece = piecesOf(container).entries.find((each) => each.node === node);
    const [above, behind] = [piece?.above ?? [], piece?.behind ?? ''];
    const head = headOfSlot(key, slot);
    if (!slot.table || (isAsWritten(slot, node, has) && node.$cstNode!.text.startsWith(head)))
        return linesOf({ above, text: orderOfThose(node, has) ?? node.$cstNode!.text, behind });
    const inner = [...printed(slot.table, has), ...piecesOf(node).below];
    // A part that only names what it is has no block.
    if (inner.length === 0 && node.$type === 'Part') return linesOf({ above, text: head, behind });
    return [...above, `${head} {${behind}`, ...inner, '}'];
}

/** The words of a block up to its brace: a position may stand elsewhere by now, a part be of what a preset names. */
function headOfSlot(key: string, { node, of }: Slot): string {
    if (node.$type === 'PositionBlock') return key.slice('position '.length);
    const { word } = node as { word?: string };
    if (node.$type === 'Part')
        return [word, (of as Part | undefined)?.of?.$refText].filter(Boolean).join(' ');
    const text = node.$cstNode!.text;
    const open = GrammarUtils.findNodesForKeyword(node.$cstNode, '{')[0];
    return (open ? text.slice(0, open.offset - node.$cstNode!.offset) : text).trim();
}

/** Whether a block holds what stands in it and nothing else. */
function isAsWritten({ table }: Slot, block: AstNode, has: Has): boolean {
    const { entries = [] } = block as { entries?: readonly AstNode[] };
    if (entries.some(isRearrangement)) return false;
    return [...(table ?? [])].every(([, slots]) =>
        slots.every(
            (slot) =>
                entries.includes(slot.node) && !isOfNothing(slot, has) && isAsWritten(slot, slot.node, has),
        ),
    );
}
