import type { AstNode, Reference } from 'langium';
import type {
    Chosen,
    Definition,
    Measured,
    Quantity as QuantityNode,
    Ranged,
    Stated,
} from '../../../grammar/generated/ast.ts';
import { parseDate } from '../../units/date.ts';
import { areSoundInches, asForce, feetAndInches, type Quantity, quantity, si } from '../../units/quantity.ts';
import { type Dimension, units } from '../../units/unit.ts';
import { unitOf } from '../../units/unit-words.ts';
import { contextOf } from '../checks/context.ts';
import { senseless } from '../checks/sense.ts';
import type { Measure, Span } from '../measure.ts';
import type { Refused } from '../model/defined.ts';
import type { Origin, Said } from '../origin.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { propertyOf } from '../vocabulary.ts';
import type { Slot, Table } from './table.ts';

/** How a number is to be read: a load as the force that it pulls or as the mass that it weighs. */
export type Reading = Exclude<Dimension, 'load'> | 'force' | 'mass';

/** The quantity of a piece of syntax; undefined where any of it is missing or makes no sense. */
export function readQuantity(node: QuantityNode | undefined): Quantity | undefined {
    if (!node || !Number.isFinite(node.number)) return undefined;
    const text = node.$cstNode?.text;
    if (node.unit === undefined) return quantity(node.number, units.count, text);
    const unit = unitOf(node.unit);
    if (!unit) return undefined;
    if (node.inches === undefined) return quantity(node.number, unit, text);
    const inches = Number(node.inches);
    if (!areSoundInches(node.number, inches)) return undefined;
    return feetAndInches(node.number, inches, text);
}

/** The value of a quantity read in one way, or undefined where its unit does not fit. */
export function read(found: Quantity | undefined, reading: Reading): number | undefined {
    if (!found) return undefined;
    const wanted: Dimension = reading === 'force' || reading === 'mass' ? 'load' : reading;
    if (found.unit.dimension !== wanted) return undefined;
    const value = reading === 'force' ? asForce(found) : si(found);
    return Number.isFinite(value) ? value : undefined;
}

export function measureOf(node: QuantityNode | undefined, reading: Reading, slot: Slot): Measure | undefined {
    const found = readQuantity(node);
    const value = read(found, reading);
    if (value === undefined || senseless(node!, found!)) return undefined;
    return { si: value, quantity: found!, origin: originOf(slot, node), standing: 'measured' };
}

/** The number of a property such as `beam 3.6 m`. */
export function measure(table: Table, key: string, reading: Reading): Measure | undefined {
    const slot = one(table, key);
    return slot && measureOf((slot.node as Measured).amount, reading, slot);
}

/** A load that may also be a share (`hooked 30 %`): whichever it is. */
export function forceOrShare(table: Table, key: string): { force?: Measure; share?: Measure } {
    const force = measure(table, key, 'force');
    const share = force ? undefined : measure(table, key, 'share');
    return { ...(force && { force }), ...(share && { share }) };
}

/** The two numbers of a property such as `runs 6 kn to 9 kn`, the smaller one first. */
export function span(table: Table, key: string, reading: Reading): Span | undefined {
    const slot = one(table, key);
    const node = slot?.node as Ranged | undefined;
    const from = slot && measureOf(node?.from, reading, slot);
    const to = slot && measureOf(node?.to, reading, slot);
    if (!from || !to) return undefined;
    return from.si <= to.si ? { from, to } : { from: to, to: from };
}

export function text(table: Table, key: string): Said<string> | undefined {
    const slot = one(table, key);
    return slot && said(slot, (slot.node as Stated).text, 'text');
}

export function texts(table: Table, key: string): Said<string>[] {
    return (table.get(key) ?? []).flatMap((slot) => said(slot, (slot.node as Stated).text, 'text') ?? []);
}

/** A word that fits there: one that does not is told of, and counts as not written. */
export function choice<T extends string = string>(table: Table, key: string): Said<T> | undefined {
    const slot = one(table, key);
    const node = slot?.node as Chosen | undefined;
    const context = node && contextOf(node);
    const choices = context && propertyOf(context, node.word)?.choices;
    if (choices && node.choice !== undefined && !choices.includes(node.choice)) return undefined;
    return slot && said(slot, node?.choice as T | undefined, 'choice');
}

export function flag(table: Table, key: string): Said<boolean> | undefined {
    const slot = one(table, key);
    return slot && said(slot, true, 'word');
}

export function date(table: Table, key: string): Said<string> | undefined {
    const slot = one(table, key);
    return slot && dateSaid(slot, (slot.node as AstNode & { date?: string }).date, 'date');
}

/** A day that the calendar has; what only looks like one is nothing to reckon with. */
export function dateSaid(
    slot: Slot,
    written: string | undefined,
    property: string,
): Said<string> | undefined {
    const isDay = written !== undefined && typeof parseDate(written) === 'string';
    return isDay ? said(slot, written, property) : undefined;
}

/** A value said by one property of a slot's syntax. */
export function said<T>(slot: Slot, value: T | undefined, property: string): Said<T> | undefined {
    if (value === undefined) return undefined;
    return { value, origin: { ...originOf(slot), place: placeOfProperty(slot.node, property) } };
}

/** A value that a reference leads to, said where the reference stands. */
export function referred<T>(slot: Slot, node: AstNode, value: T | undefined): Said<T> | undefined {
    if (value === undefined) return undefined;
    return { value, origin: { ...originOf(slot), place: placeOfProperty(node, 'of') } };
}

export function target(reference: Reference<Definition> | undefined): Definition | undefined {
    return reference?.ref;
}

export function one(table: Table, key: string): Slot | undefined {
    return table.get(key)?.[0];
}

/** Which of these properties are written and gave nothing, as written. */
export function refusedIn(table: Table, keys: readonly string[], found: object): Refused | undefined {
    const refused = keys.flatMap((key): [string, string][] => {
        const node = key in found ? undefined : one(table, key)?.node;
        return node ? [[key, (node.$cstNode?.text ?? key).replace(/\s+/g, ' ')]] : [];
    });
    return refused.length > 0 ? Object.fromEntries(refused) : undefined;
}

/** Where a slot's value stands; the whole property where no part of it is meant. */
export function originOf(slot: Slot, value?: AstNode): Origin {
    const property = placeOf(slot.node);
    return {
        place: value ? placeOf(value) : property,
        property,
        voice: slot.voice,
        definition: slot.definition,
        inherited: slot.inherited,
    };
}
