import type {
    Crests,
    Definition,
    ExtraPosition,
    Holder as HolderNode,
    Listed,
    NamedPoint,
} from '../../../grammar/generated/ast.ts';
import type { Measure } from '../measure.ts';
import type { Boat, BoatPoint, Holder, Outriggers } from '../model.ts';
import { definedBy } from './defined.ts';
import { type Gathered, gather } from './gather.ts';
import { readPosition } from './position.ts';
import type { Slot, Table } from './table.ts';
import { measure, measureOf, one, originOf, refusedIn, span } from './values.ts';

const NOTHING: Table = new Map();

export function readBoat(definition: Definition, gathered: Gathered): Boat {
    const table = gather(definition, gathered);
    const speed = span(table, 'speed', 'speed');
    const crests = readCrests(one(table, 'crests'));
    const wavesUpTo = measure(table, 'waves', 'length');
    const wash = one(table, 'wash')?.table;
    const outriggers = readOutriggers(one(table, 'outriggers'));
    const centreRigger = readOutriggers(one(table, 'centre'));
    const flatClip = one(table, 'flat');
    const sizes = lengths(table, ['length', 'waterline', 'beam']);
    const refused = refusedIn(table, ['length', 'waterline', 'beam'], sizes);
    return {
        ...definedBy(definition),
        ...sizes,
        ...(refused && { refused }),
        ...(speed && { speed }),
        ...(crests && { crests }),
        ...(wavesUpTo && { wavesUpTo }),
        ...(wash && { wash: lengths(wash, ['near', 'far', 'length']) }),
        ...(outriggers && { outriggers }),
        ...(centreRigger && { centreRigger }),
        ...(flatClip && { flatClip: readPoint(flatClip) }),
        holders: [...startingWith(table, 'holder ')].flatMap(readHolder),
        points: new Map(
            [...startingWith(table, 'point ')].map((slot) => [
                (slot.node as NamedPoint).name,
                readPoint(slot),
            ]),
        ),
        positions: new Map([...startingWith(table, 'place ')].map(readExtraPosition)),
    };
}

/** Every slot whose key begins so: holders, points and the like have one key each. */
export function* startingWith(table: Table, prefix: string): Generator<Slot> {
    for (const [key, slots] of table) if (key.startsWith(prefix)) yield* slots;
}

function lengths<K extends string>(table: Table, keys: readonly K[]): { [P in K]?: Boat['beam'] } {
    const found: { [P in K]?: Boat['beam'] } = {};
    for (const key of keys) {
        const value = measure(table, key, 'length');
        if (value) found[key] = value;
    }
    return found;
}

function readPoint(slot: Slot): BoatPoint {
    return { ...lengths(slot.table ?? NOTHING, ['ahead', 'out', 'up']), origin: originOf(slot) };
}

function readOutriggers(slot: Slot | undefined): Outriggers | undefined {
    if (!slot) return undefined;
    const table = slot.table ?? NOTHING;
    const foot = one(table, 'foot');
    const rise = measure(table, 'rise', 'angle');
    const sweep = measure(table, 'sweep', 'angle');
    const halyards = readHalyards(one(table, 'halyards'));
    const refused = refusedIn(table, ['halyards'], { ...(halyards && { halyards }) });
    return {
        ...lengths(table, ['length']),
        ...(foot && { foot: readPoint(foot) }),
        ...(rise && { rise }),
        ...(sweep && { sweep }),
        halyards: halyards ?? [],
        ...(refused && { refused }),
        origin: originOf(slot),
    };
}

/** They are known by their numbers: with one of them refused, nobody knows the number of the next. */
function readHalyards(slot: Slot | undefined): Measure[] | undefined {
    const amounts = slot && (slot.node as Listed).amounts;
    const found = amounts?.flatMap((each) => measureOf(each, 'length', slot!) ?? []);
    return found && found.length === amounts!.length ? found : undefined;
}

function readHolder(slot: Slot): Holder[] {
    const position = readPosition((slot.node as HolderNode).position);
    if (!position) return [];
    const table = slot.table ?? NOTHING;
    const lean = measure(table, 'lean', 'angle');
    const splay = measure(table, 'splay', 'angle');
    return [{ ...readPoint(slot), position, ...(lean && { lean }), ...(splay && { splay }) }];
}

function readExtraPosition(slot: Slot): [string, BoatPoint & { title: string }] {
    const { name, title } = slot.node as ExtraPosition;
    return [name, { ...readPoint(slot), title: title ?? name }];
}

function readCrests(slot: Slot | undefined): Boat['crests'] {
    if (!slot) return undefined;
    const node = slot.node as Crests;
    const speed = measureOf(node.speed, 'speed', slot);
    const distances = node.distances.flatMap((each) => measureOf(each, 'length', slot) ?? []);
    if (!speed || distances.length < node.distances.length) return undefined;
    return { distances, speed, origin: originOf(slot) };
}
