import type {
    Definition,
    Fallback as FallbackNode,
    Order,
    Referred,
    Role as RoleNode,
    Waive,
    Wind,
} from '../../../grammar/generated/ast.ts';
import type {
    Boat,
    Fallback,
    Lure,
    Outfit,
    Position,
    Role,
    Spread,
    StatedOrder,
    Teaser,
    Waiver,
} from '../model.ts';
import type { Said } from '../origin.ts';
import { placeOf } from '../place.ts';
import { readBoat, startingWith } from './boat.ts';
import { definedBy } from './defined.ts';
import { type Gathered, gather, likeChain } from './gather.ts';
import { readSpreadLine } from './line.ts';
import { readMethod, readSpecies } from './method.ts';
import { readPosition } from './position.ts';
import { versionsOf } from './presets.ts';
import { readRules, readSettings } from './rules.ts';
import { definitionName, type Slot, type Table } from './table.ts';
import { outfitOf } from './tackle.ts';
import { readLure, readTeaser } from './towed.ts';
import {
    date,
    dateSaid,
    flag,
    measure,
    measureOf,
    one,
    originOf,
    referred,
    refusedIn,
    said,
    span,
    text,
    texts,
} from './values.ts';

/** A spread as a plan: presets applied, every value with the voice that had the last word on it. A log asks for it too. */
export function readSpread(definition: Definition, gathered: Gathered): Spread {
    const known = gathered.readings.get(definition);
    if (known) return known as Spread;
    const plan = readPlan(definition, gathered);
    gathered.readings.set(definition, plan);
    return plan;
}

function readPlan(definition: Definition, gathered: Gathered): Spread {
    const table = gather(definition, gathered);
    const boat = reference(table, 'boat', 'boat', gathered, boatOf);
    const target = reference(table, 'target', 'species', gathered, readSpecies);
    const method = reference(table, 'method', 'method', gathered, readMethod);
    const event = reference(table, 'event', 'rules', gathered, readRules);
    const wind = readWind(one(table, 'wind'));
    const speeds = span(table, 'speeds', 'speed');
    const day = date(table, 'date');
    const author = text(table, 'author');
    const edition = text(table, 'edition');
    const weatherLimit = text(table, 'weather');
    const hold = flag(table, 'hold');
    const roles = one(table, 'roles')?.table;
    const lines = [...table]
        .filter(([key]) => key.startsWith('position '))
        .flatMap(([key, [slot]]) => readSpreadLine(slot!, boat?.value, method, gathered, key) ?? []);
    const used = { lines, ...(boat && { boat }), ...(target && { target }), ...(event && { event }) };
    return {
        ...definedBy(definition),
        kind: 'spread',
        like: likeChain(definition).map(definitionName),
        ...versionsOf(definition, { ...used, ...(method && { method }) }, gathered),
        ...(boat && { boat }),
        ...(target && { target }),
        ...(method && { method }),
        ...(event && { event }),
        ...(day && { date: day }),
        ...(author && { author }),
        ...(edition && { edition }),
        ...(weatherLimit && { weatherLimit }),
        ...(hold && { hold }),
        ...conditions(table),
        ...(wind && { wind }),
        ...(speeds && { speeds }),
        lines,
        waivers: (table.get('waive') ?? []).flatMap(readWaiver),
        orders: [...startingWith(table, 'order ')].map(readOrder),
        roles: roles ? [...startingWith(roles, 'role ')].flatMap(readRole) : [],
        fallbacks: [...startingWith(table, 'fallback ')].flatMap(readFallback),
        spares: (table.get('spare') ?? []).flatMap((slot) => readSpare(slot, gathered)),
        steps: texts(table, 'step'),
        notes: texts(table, 'note'),
        settings: [...readSettings(table), ...(event?.value.settings ?? [])],
    };
}

/** The numbers of the day: speed, sea and so on, each where it was said. */
function conditions(table: Table): Partial<Spread> {
    const written = {
        speed: measure(table, 'speed', 'speed'),
        sea: measure(table, 'sea', 'length'),
        depth: measure(table, 'depth', 'length'),
        heading: measure(table, 'heading', 'angle'),
        crew: measure(table, 'crew', 'count'),
        turn: measure(table, 'turn', 'length'),
        sway: measure(table, 'sway', 'angle'),
    };
    const found = Object.fromEntries(Object.entries(written).filter(([, value]) => value !== undefined));
    const refused = refusedIn(table, Object.keys(written), found);
    return { ...found, ...(refused && { refused }) };
}

/** A boat as every plan that names it reads it. */
export function boatOf(definition: Definition, gathered: Gathered): Boat {
    const known = gathered.readings.get(definition);
    if (known) return known as Boat;
    const boat = readBoat(definition, gathered);
    gathered.readings.set(definition, boat);
    return boat;
}

function reference<T>(
    table: Table,
    key: string,
    kind: Definition['kind'],
    gathered: Gathered,
    reader: (definition: Definition, gathered: Gathered) => T,
): Said<T> | undefined {
    const slot = one(table, key);
    const definition = slot && (slot.node as Referred).of?.ref;
    if (definition?.kind !== kind) return undefined;
    return referred(slot!, slot!.node, reader(definition, gathered));
}

function readWind(slot: Slot | undefined): Spread['wind'] {
    const node = slot?.node as Wind | undefined;
    const speed = slot && measureOf(node?.speed, 'speed', slot);
    const from = slot && measureOf(node?.from, 'angle', slot);
    return speed && { speed, ...(from && { from }) };
}

function readWaiver(slot: Slot): Waiver[] {
    const node = slot.node as Waive;
    const rule = said(slot, node.rule, 'rule');
    if (!rule) return [];
    const because = said(slot, node.because, 'because');
    const until = dateSaid(slot, node.until, 'until');
    return [
        {
            rule,
            positions: positionsOf(slot, node.positions),
            ...(because && { because }),
            ...(until && { until }),
            inherited: slot.inherited,
            origin: originOf(slot),
        },
    ];
}

function readOrder(slot: Slot): StatedOrder {
    const node = slot.node as Order;
    const because = said(slot, node.because, 'because');
    return {
        what: node.what,
        positions: positionsOf(slot, node.positions),
        ...(because && { because }),
        origin: originOf(slot),
    };
}

function readRole(slot: Slot): Role[] {
    const node = slot.node as RoleNode;
    const name = said(slot, node.name, 'name');
    const position = readPosition(node.position);
    if (!name) return [];
    const at = position && said(slot, position, 'position');
    return [{ role: position ? position.name : node.role!, ...(at && { position: at }), name }];
}

function readFallback(slot: Slot): Fallback[] {
    const node = slot.node as FallbackNode;
    const when = said(slot, node.when, 'when');
    if (!when) return [];
    const drops = node.entries.flatMap((entry) => (entry.$type === 'Drop' ? [entry.position] : []));
    const say = node.entries.find((entry) => entry.$type === 'Stated');
    const spoken = say && said({ ...slot, node: say }, say.text, 'text');
    return [{ when, drop: positionsOf(slot, drops), ...(spoken && { say: spoken }), origin: originOf(slot) }];
}

function readSpare(slot: Slot, gathered: Gathered): Spread['spares'][number][] {
    const definition = (slot.node as Referred).of?.ref;
    if (!definition) return [];
    const part = { slot, definition, plain: true, table: gather(definition, gathered) };
    const spare: Outfit | Lure | Teaser | undefined =
        definition.kind === 'outfit'
            ? outfitOf(definition, gathered)
            : definition.kind === 'lure'
              ? readLure(part, gathered)
              : definition.kind === 'teaser'
                ? readTeaser(part, gathered)
                : undefined;
    const of = referred(slot, slot.node, spare);
    return of ? [{ of, origin: originOf(slot) }] : [];
}

/** Positions named in a property, each with the place of its own words. */
export function positionsOf(
    slot: Slot,
    nodes: readonly Parameters<typeof readPosition>[0][],
): Said<Position>[] {
    return nodes.flatMap((node) => {
        const value = readPosition(node);
        return value ? [{ value, origin: { ...originOf(slot), place: placeOf(node!) } }] : [];
    });
}
