import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { printQuantity } from '../units/print.ts';
import { type Quantity, si } from '../units/quantity.ts';
import type { Dimension } from '../units/unit.ts';

/** A number that a team may set, with its unit. */
export interface QuantitySetting<V extends number | undefined = number | undefined> {
    readonly kind: 'quantity';
    readonly dimension: Dimension;
    readonly doc: string;
    readonly fallback?: Quantity;
    /** What applies where there is no number of its own: `the plan's sway`. */
    readonly otherwise?: string;
    /** Carries the type of the value alone. */
    readonly value?: V;
}

/** One of a few words. */
export interface ChoiceSetting<C extends string = string> {
    readonly kind: 'choice';
    readonly doc: string;
    readonly options: readonly C[];
    readonly fallback: C;
}

export type Setting = QuantitySetting | ChoiceSetting;
export type Settings = Readonly<Record<string, Setting>>;

/** What a check receives: numbers in SI, a share as a fraction; words as they are. */
export type Values<S extends Settings> = { readonly [K in keyof S]: Value<S[K]> };

type Value<T> = T extends ChoiceSetting<infer C> ? C : T extends QuantitySetting<infer V> ? V : never;

/** Whether a rule can go by that number: how much, how many or how old is never less than nothing. */
export function isUsable(value: number): boolean {
    return value >= 0;
}

export const length = quantitySetting('length');
export const angle = quantitySetting('angle');
export const share = quantitySetting('share');
export const time = quantitySetting('time');
export const speed = quantitySetting('speed');
export const count = quantitySetting('count');

export function choice<const C extends string>(options: readonly C[], fallback: NoInfer<C>, doc: string) {
    return { kind: 'choice', options, fallback, doc } satisfies ChoiceSetting<C>;
}

/** The values that apply where nobody set any. */
export function fallbacks(settings: Settings): Record<string, number | string | undefined> {
    return Object.fromEntries(
        Object.entries(settings).map(([name, setting]) => [name, fallbackOf(setting)] as const),
    );
}

/** The value that applies where nobody set one, as a team would write it. */
export function fallbackText(setting: Setting): string {
    if (setting.kind === 'choice') return setting.fallback;
    return setting.fallback ? printQuantity(setting.fallback) : (setting.otherwise ?? '');
}

function fallbackOf(setting: Setting): number | string | undefined {
    if (setting.kind === 'choice') return setting.fallback;
    return setting.fallback && si(setting.fallback);
}

function quantitySetting(dimension: Dimension) {
    function declare(fallback: string, doc: string): QuantitySetting<number>;
    function declare(otherwise: Otherwise, doc: string): QuantitySetting<number | undefined>;
    function declare(fallback: string | Otherwise, doc: string): QuantitySetting {
        if (typeof fallback !== 'string') return { kind: 'quantity', dimension, doc, ...fallback };
        const quantity = parseQuantity(fallback, dimension);
        if (isQuantityError(quantity)) throw new RangeError(`${fallback} is no ${dimension}.`);
        return { kind: 'quantity', dimension, doc, fallback: quantity };
    }
    return declare;
}

interface Otherwise {
    readonly otherwise: string;
}
