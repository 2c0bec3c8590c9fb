import { exceeds } from '../units/compare.ts';
import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { printQuantity } from '../units/print.ts';
import { type Quantity, si } from '../units/quantity.ts';
import type { Dimension } from '../units/unit.ts';

/** A number that a team may set, with its unit. */
export interface Setting<V extends number | undefined = number | undefined> {
    readonly dimension: Dimension;
    readonly doc: string;
    /** A rule cannot go by less, nor by more: nobody means that. */
    readonly least: Quantity;
    readonly greatest: Quantity;
    readonly fallback?: Quantity;
    /** What applies where there is no number of its own: `the plan's sway`. */
    readonly otherwise?: string;
    /** Carries the type of the value alone. */
    readonly value?: V;
}

export type Settings = Readonly<Record<string, Setting>>;

/** What a check receives: numbers in SI, a share as a fraction. */
export type Values<S extends Settings> = { readonly [K in keyof S]: Value<S[K]> };

type Value<T> = T extends Setting<infer V> ? V : never;

/** Whether a rule can go by that number, in SI. */
export function isUsable(value: number, { least, greatest }: Setting): boolean {
    return !exceeds(si(least), value) && !exceeds(value, si(greatest));
}

export const length = declaring('length');
export const angle = declaring('angle');
export const share = declaring('share');
export const time = declaring('time');
export const speed = declaring('speed');
export const count = declaring('count');

/** The values that apply where nobody set any. */
export function fallbacks(settings: Settings): Record<string, number | undefined> {
    return Object.fromEntries(
        Object.entries(settings).map(([name, { fallback }]) => [name, fallback && si(fallback)] as const),
    );
}

/** The value that applies where nobody set one, as a team would write it. */
export function fallbackText({ fallback, otherwise = '' }: Setting): string {
    return fallback ? printQuantity(fallback) : otherwise;
}

/** What a team may write: `0.5 deg to 30 deg`. */
export function boundsText({ least, greatest }: Setting): string {
    return `${printQuantity(least)} to ${printQuantity(greatest)}`;
}

function declaring(dimension: Dimension) {
    const read = (text: string): Quantity => {
        const quantity = parseQuantity(text, dimension);
        if (isQuantityError(quantity)) throw new RangeError(`${text} is no ${dimension}.`);
        return quantity;
    };
    function declare(fallback: string, bounds: Bounds, doc: string): Setting<number>;
    function declare(otherwise: Otherwise, bounds: Bounds, doc: string): Setting<number | undefined>;
    function declare(fallback: string | Otherwise, [from, to]: Bounds, doc: string): Setting {
        const bounds = { least: read(from), greatest: read(to) };
        if (typeof fallback !== 'string') return { dimension, doc, ...bounds, ...fallback };
        return { dimension, doc, ...bounds, fallback: read(fallback) };
    }
    return declare;
}

/** The least and the greatest number, as a team would write them. */
type Bounds = readonly [least: string, greatest: string];

interface Otherwise {
    readonly otherwise: string;
}
