import { type AstNode, GrammarUtils } from 'langium';
import type { Definition, Lure, Part } from '../../../grammar/generated/ast.ts';
import { referencesIn } from '../../plan/names/link.ts';
import { baseOf, Gathered, gather, likeChain } from '../../plan/resolve/gather.ts';
import { isRearrangement, keyOf, type Slot, type Table } from '../../plan/resolve/table.ts';
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
    const lines = [...printed(table), ...piecesOf(definition).below];
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

function printed(table: Table): string[] {
    return [...table].flatMap(([key, slots]) => slots.flatMap((slot) => printedSlot(key, slot)));
}

function printedSlot(key: string, slot: Slot): string[] {
    const { node } = slot;
    const container = node.$container as AstNode;
    const piece = piecesOf(container).entries.find((each) => each.node === node);
    const [above, behind] = [piece?.above ?? [], piece?.behind ?? ''];
    const head = headOfSlot(key, slot);
    if (!slot.table || (isAsWritten(slot, node) && node.$cstNode!.text.startsWith(head)))
        return linesOf({ above, text: node.$cstNode!.text, behind });
    const inner = [...printed(slot.table), ...piecesOf(node).below];
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
function isAsWritten({ table }: Slot, block: AstNode): boolean {
    const { entries = [] } = block as { entries?: readonly AstNode[] };
    if (entries.some(isRearrangement)) return false;
    return [...(table ?? [])].every(([, slots]) =>
        slots.every((slot) => entries.includes(slot.node) && isAsWritten(slot, slot.node)),
    );
}
