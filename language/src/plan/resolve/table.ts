import type { AstNode } from 'langium';
import type {
    Condition,
    Definition,
    Part,
    PositionBlock,
    Removal,
    Swap,
    Without,
} from '../../../grammar/generated/ast.ts';
import type { Voice } from '../origin.ts';
import { readPosition } from './position.ts';

/** One property of a table: the syntax that had the last word on it, and who said so. */
export interface Slot {
    readonly node: AstNode;
    readonly voice: Voice;
    /** The definition that the property stands in. */
    readonly definition: string;
    readonly inherited: boolean;
    /** The properties within, for a block, a part or a position. */
    readonly table?: Table;
    /** For a part: the syntax that names the definition it starts from. It may be a preset's. */
    readonly of?: Part;
}

/** The properties of a definition or block by key; several where a word may be said more than once. */
export type Table = ReadonlyMap<string, readonly Slot[]>;

type AnyEntry = AstNode & { word?: string; entries?: readonly AstNode[] };

/** A table with the properties of one block, as written. Later duplicates are left out: a check reports them. */
export function tabulate(entries: readonly AstNode[], voice: Voice, definition: string): Table {
    const table = new Map<string, Slot[]>();
    for (const entry of entries) {
        const key = keyOf(entry);
        if (key === undefined) continue;
        const slots = table.get(key);
        if (slots && !isMany(key)) continue;
        const slot = slotOf(entry as AnyEntry, voice, definition);
        slots?.push(slot) ?? table.set(key, [slot]);
    }
    return table;
}

/**
 * What a block says on top of what it is like: its removals, `without`s and `swap`s take effect on the preset
 * in the order written, then its own properties replace or join the preset's; blocks within merge likewise.
 */
export function overlay(base: Table, own: Table, entries: readonly AstNode[]): Table {
    const merged = new Map<string, readonly Slot[]>(
        [...base].map(([key, slots]) => [key, slots.map(inherit)]),
    );
    for (const entry of entries) rearrange(merged, entry);
    for (const [key, slots] of own) {
        const below = merged.get(key);
        if (!below) merged.set(key, slots);
        else if (isMany(key)) merged.set(key, [...below, ...slots]);
        else merged.set(key, [merge(below[0]!, slots[0]!)]);
    }
    return merged;
}

/** Entries that say something about other entries rather than something of their own. */
export function isRearrangement(entry: AstNode): entry is Removal | Without | Swap {
    return entry.$type === 'Removal' || entry.$type === 'Without' || entry.$type === 'Swap';
}

/** Applies one removal, `without` or `swap`; tells whether there was anything to apply it to. */
export function rearrange(table: Map<string, readonly Slot[]>, entry: AstNode): boolean {
    if (entry.$type === 'Removal') return removeProperty(table, (entry as Removal).property);
    if (entry.$type === 'Without') {
        const key = positionKey(readPosition((entry as Without).position)?.name);
        return key !== undefined && table.delete(key);
    }
    if (entry.$type !== 'Swap') return false;
    const { first, second } = entry as Swap;
    const [a, b] = [readPosition(first), readPosition(second)].map((position) => positionKey(position?.name));
    if (a === undefined || b === undefined) return false;
    const [atA, atB] = [table.get(a), table.get(b)];
    if (!atA && !atB) return false;
    atB ? table.set(a, atB) : table.delete(a);
    atA ? table.set(b, atA) : table.delete(b);
    return true;
}

export function positionKey(name: string | undefined): string | undefined {
    return name === undefined ? undefined : `position ${name}`;
}

function removeProperty(table: Map<string, readonly Slot[]>, property: string | undefined): boolean {
    let found = false;
    for (const key of [...table.keys()]) {
        if (
            key === property ||
            (property && key.startsWith(`${property} `) && !key.startsWith('position '))
        ) {
            table.delete(key);
            found = true;
        }
    }
    return found;
}

function inherit(slot: Slot): Slot {
    if (slot.inherited) return slot;
    const table = slot.table && new Map([...slot.table].map(([key, slots]) => [key, slots.map(inherit)]));
    return { ...slot, inherited: true, ...(table && { table }) };
}

/** One property said twice: what is said on top stands, and a block or an unnamed part leaves the rest as it was below. */
export function merge(below: Slot, above: Slot): Slot {
    if (!above.table) return above;
    if (above.node.$type === 'Part' && above.of) return above;
    const entries = (above.node as AnyEntry).entries ?? [];
    return {
        ...above,
        table: overlay(below.table ?? new Map(), above.table, entries),
        ...(below.of && { of: below.of }),
    };
}

function slotOf(entry: AnyEntry, voice: Voice, definition: string): Slot {
    const within = entry.$type === 'PositionBlock' ? 'position' : voice;
    return {
        node: entry,
        voice: within,
        definition,
        inherited: false,
        ...(entry.entries && { table: tabulate(entry.entries, within, definition) }),
        ...(entry.$type === 'Part' && (entry as Part).of && { of: entry as Part }),
    };
}

const MANY = new Set(['note', 'step', 'waive', 'spare', 'written', 'using', 'at event', 'drop', 'say']);

/** Keys of words that add up instead of replacing each other. */
export function isMany(key: string): boolean {
    return MANY.has(key);
}

/** What makes two entries the same property; undefined for entries that are none. */
export function keyOf(entry: AstNode): string | undefined {
    const { word } = entry as AnyEntry;
    const node = entry as never as Record<string, never> & { name?: string; title?: string };
    switch (entry.$type) {
        case 'Unknown':
        case 'Removal':
        case 'Without':
        case 'Swap':
            return undefined;
        case 'PositionBlock':
            return positionKey(readPosition((entry as PositionBlock).position)?.name);
        case 'Holder':
            return keyWith('holder', readPosition(node.position)?.name);
        case 'NamedPoint':
            return keyWith('point', node.name);
        case 'ExtraPosition':
            return keyWith('place', node.name);
        case 'Joint':
            return `${word} ${node.title ?? ''}`;
        case 'Crests':
            return 'crests';
        case 'AtMost':
            return keyWith('at most', node.what && `${node.what}${node.per ? ' per angler' : ''}`);
        case 'Listed':
            return 'halyards';
        case 'Classes':
            return node.among ? 'class among' : keyWith('class', textOf(node.lineClass));
        case 'Limits':
            return `limits ${textOf(node.upTo) ?? ''}`;
        case 'LinesTime':
            return keyWith('lines', node.direction);
        case 'Order':
            return keyWith('order', node.what);
        case 'RuleSetting':
            return keyWith('rule', node.rule);
        case 'Fallback':
            return keyWith('fallback', node.when);
        case 'Role':
            return keyWith('role', node.position ? readPosition(node.position)?.name : node.role);
        case 'Hour':
            return keyWith('from', node.time);
        case 'Condition':
            return keyWith('when', conditionOf(entry as Condition));
        case 'Event':
            return 'at event';
        default:
            return SPELLINGS[word ?? ''] ?? word;
    }
}

/** The key of a property that is told from others of its word; none while what tells it is missing. */
function keyWith(word: string, which: string | undefined): string | undefined {
    return which === undefined || which === '' ? undefined : `${word} ${which}`;
}

/** Words with two spellings have one key; a day has an event's rules or the team's own. */
const SPELLINGS: Readonly<Record<string, string>> = {
    color: 'colour',
    center: 'centre',
    halyard: 'halyards',
    under: 'event',
};

/** What has to be so, as written: `sea over 1.5 m`. */
function conditionOf({ sea, wind, side, height, strength, choice }: Partial<Condition>): string | undefined {
    const amount = textOf(height ?? strength);
    if (sea || wind) return amount && `${sea ? 'sea' : 'wind'} ${side} ${amount}`;
    return choice && `light ${choice}`;
}

function textOf(node: AstNode | undefined): string | undefined {
    return node?.$cstNode?.text;
}

/** The name of a definition, or the date of a log. */
export function definitionName(definition: Definition): string {
    return ('name' in definition ? definition.name : definition.date) ?? '';
}
