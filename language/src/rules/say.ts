import type { Measure } from '../plan/measure.ts';
import { print, printApart, printQuantity } from '../units/print.ts';
import { massOf, type Quantity } from '../units/quantity.ts';
import { type Dimension, usualUnit } from '../units/unit.ts';

export { capital, listed } from '../plan/wording.ts';

/** A number in SI, or one of the plan's, which also knows how its author writes it. */
export type Sayable = number | Measure;

/**
 * Numbers as a message says them: in the unit of their author, or else of `like`, or else the usual one.
 * A load is in newtons and is said as its weight; a mass is in kilograms.
 */
export const say = {
    length: (value: Sayable, like?: Measure) => inWords(value, 'length', like),
    load: (value: Sayable, like?: Measure) => inWords(value, 'load', like, massOf),
    mass: (value: Sayable, like?: Measure) => inWords(value, 'load', like),
    speed: (value: Sayable, like?: Measure) => inWords(value, 'speed', like),
    angle: (value: Sayable, like?: Measure) => inWords(value, 'angle', like),
    share: (value: Sayable, like?: Measure) => inWords(value, 'share', like),
    time: (value: Sayable, like?: Measure) => inWords(value, 'time', like),
    count: (value: Sayable, like?: Measure) => inWords(value, 'count', like),
    /** Never converted: 50 lb line is 24 kg class, though 50 lb is 22.7 kg. */
    lineClass: ({ si, quantity }: Measure) => (quantity ? printQuantity(quantity) : `${si} kg`),
};

/**
 * Two numbers that a sentence sets against each other, the second often a limit. What was written is repeated as
 * written, a limit above all: 68.58 cm never becomes 0.69 m. Where that leaves two systems, the first is said in
 * both. Numbers that were computed get as many decimals as tell the two apart.
 */
export const sayApart = {
    length: (a: Sayable, b: Sayable) => apart(a, b, 'length'),
    speed: (a: Sayable, b: Sayable) => apart(a, b, 'speed'),
    load: (a: Sayable, b: Sayable, like?: Measure) => apart(a, b, 'load', massOf, like),
    angle: (a: Sayable, b: Sayable) => apart(a, b, 'angle'),
};

/** A noun that goes with a number: `1 line`, `6 lines`. */
export function counted(number: number, one: string, many = `${one}s`): string {
    return `${number} ${number === 1 ? one : many}`;
}

const asItIs = (si: number) => si;

function inWords(value: Sayable, dimension: Dimension, like: Measure | undefined, told = asItIs): string {
    const form = writtenAs(value, dimension) ?? writtenAs(like, dimension) ?? usualUnit[dimension];
    return print(told(siOf(value)), form);
}

function apart(
    a: Sayable,
    b: Sayable,
    dimension: Dimension,
    told = asItIs,
    like?: Measure,
): [string, string] {
    const [ours, theirs] = [writtenAs(a, dimension), writtenAs(b, dimension)];
    const form = theirs ?? ours ?? writtenAs(like, dimension) ?? usualUnit[dimension];
    const [first, second] = printApart(told(siOf(a)), told(siOf(b)), form);
    if (!ours || !theirs)
        return [ours ? printQuantity(ours) : first, theirs ? printQuantity(theirs) : second];
    const both = ours.unit.system !== theirs.unit.system;
    return [both ? `${printQuantity(ours)} (${first})` : printQuantity(ours), printQuantity(theirs)];
}

export function siOf(value: Sayable): number {
    return typeof value === 'number' ? value : value.si;
}

/** The author's form, unless the number was written as something else: a drag as a share of its class. */
function writtenAs(value: Sayable | undefined, dimension: Dimension): Quantity | undefined {
    const quantity = typeof value === 'object' ? value.quantity : undefined;
    return quantity?.unit.dimension === dimension ? quantity : undefined;
}
