import { isSame } from '../../units/compare.ts';
import { printQuantity } from '../../units/print.ts';
import { type Quantity, si } from '../../units/quantity.ts';

/** A value as its author wrote it. */
export type Told = string;

/** One property that differs; absent on the side that does not have it. */
export interface Difference {
    /** The words that lead to it: `drag`, `set`. */
    readonly path: readonly string[];
    readonly before?: Told;
    readonly after?: Told;
}

/**
 * What differs between two parts of a resolved plan, by their meaning: places in the text, how a number was written and
 * who said it are no difference. Walks whatever the model holds, so that a new property is compared without being
 * named here. What has a name of its own (a lure, an outfit) is compared by that name.
 */
export function differences(
    before: unknown,
    after: unknown,
    path: readonly string[] = [],
    isToldElsewhere: (before: unknown, after: unknown) => boolean = () => false,
): Difference[] {
    if (isToldElsewhere(before, after)) return [];
    const [old, now] = [meant(before), meant(after)];
    if (old === undefined && now === undefined) return [];
    if (isParts(old) && isParts(now)) return inParts(old, now, path, isToldElsewhere);
    if (isList(old ?? []) && isList(now ?? [])) {
        return inLists((old ?? []) as readonly unknown[], (now ?? []) as readonly unknown[], path);
    }
    if (isParts(old) && now === undefined) return inParts(old, {}, path, isToldElsewhere);
    if (old === undefined && isParts(now)) return inParts({}, now, path, isToldElsewhere);
    if (same(old, now)) return [];
    return [
        {
            path,
            ...(old !== undefined && { before: tell(old) }),
            ...(now !== undefined && { after: tell(now) }),
        },
    ];
}

/** A number of a plan: what it measures, and as what it was written. */
interface Measured {
    readonly si: number;
    readonly quantity?: Quantity;
}

type Parts = Readonly<Record<string, unknown>>;

/** Keys that say where something was said, or how surely. */
const aside = new Set(['origin', 'standing', 'doc', 'kind', 'inherited']);

/** A value without where it was said: what is named stands for its name. */
function meant(value: unknown): unknown {
    if (value instanceof Map) return Object.fromEntries(value);
    if (!isParts(value)) return value;
    if ('value' in value && 'origin' in value) {
        const { value: said } = value;
        return isParts(said) && 'name' in said && 'origin' in said
            ? { named: said.name, title: said.title }
            : meant(said);
    }
    return value;
}

/** What is defined elsewhere and used here by its name. */
interface Named {
    readonly named: string;
    readonly title: string;
}

function isNamed(value: unknown): value is Named {
    return typeof value === 'object' && value !== null && 'named' in value;
}

function inParts(
    before: Parts,
    after: Parts,
    path: readonly string[],
    isToldElsewhere: (before: unknown, after: unknown) => boolean,
): Difference[] {
    if (isBack(before) || isBack(after)) {
        const [old, now] = [tellBack(before), tellBack(after)];
        const [a, b] = [backOf(before), backOf(after)];
        const equal = before.kind === after.kind && a && b && isSame(a.si, b.si);
        return equal ? [] : [{ path, ...(old && { before: old }), ...(now && { after: now }) }];
    }
    // `kind` tells apart the forms of one thing; where the forms differ, nothing within them is alike.
    if (isForm(before) || isForm(after)) {
        const [old, now] = [tellForm(before), tellForm(after)];
        return old === now ? [] : [{ path, ...(old && { before: old }), ...(now && { after: now }) }];
    }
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
        (key) => !aside.has(key) || isWord(before[key] ?? after[key], key),
    );
    return keys
        .sort()
        .flatMap((key) => differences(before[key], after[key], [...path, wordsOf(key)], isToldElsewhere));
}

/** `kind` is a property where a crew says it (`kind "squid chain"`), and a mark of the model where it does not. */
function isWord(value: unknown, key: string): boolean {
    return key === 'kind' && isParts(value) && 'value' in value;
}

function isBack({ kind, distance, wave }: Parts): boolean {
    return (kind === 'distance' && distance !== undefined) || (kind === 'wave' && wave !== undefined);
}

function backOf({ distance, wave }: Parts): Measured | undefined {
    return (distance ?? wave) as Measured | undefined;
}

function tellBack(back: Parts): Told | undefined {
    const measured = backOf(back);
    if (!measured) return undefined;
    return back.kind === 'wave' ? `wave ${measured.si}` : tell(measured);
}

/** The forms of `from`: a halyard by its number, a point by its name, a rod's tip. */
function isForm({ kind, origin }: Parts): boolean {
    return typeof kind === 'string' && origin !== undefined;
}

function tellForm(form: Parts): Told | undefined {
    const { kind, number, name } = form;
    if (kind === undefined) return undefined;
    return [kind === 'point' ? undefined : kind, number ?? name]
        .filter((word) => word !== undefined)
        .join(' ');
}

/** Entries that only one of two lists has; the same entries in another order are told as one change. */
function inLists(
    before: readonly unknown[],
    after: readonly unknown[],
    path: readonly string[],
): Difference[] {
    const rest = after.map((entry) => ({ entry, key: keyOf(entry) }));
    const gone: unknown[] = [];
    for (const entry of before) {
        const at = rest.findIndex(({ key }) => key === keyOf(entry));
        if (at < 0) gone.push(entry);
        else rest.splice(at, 1);
    }
    if (gone.length > 0 || rest.length > 0) {
        const told = [
            ...gone.map((entry): Difference => ({ path, before: tell(meant(entry)) })),
            ...rest.map(({ entry }): Difference => ({ path, after: tell(meant(entry)) })),
        ];
        // The same list on the way back.
        return told.sort((a, b) => compareWords(a.before ?? a.after, b.before ?? b.after));
    }
    const isMoved = before.some((entry, index) => keyOf(entry) !== keyOf(after[index]));
    if (!isMoved) return [];
    return [{ path: [...path, 'order'], before: tell(before), after: tell(after) }];
}

function compareWords(a: Told | undefined, b: Told | undefined): number {
    return (a ?? '') < (b ?? '') ? -1 : (a ?? '') > (b ?? '') ? 1 : 0;
}

/** Two entries of one key mean the same. */
export function keyOf(entry: unknown): string {
    return JSON.stringify(bare(entry));
}

function bare(entry: unknown): unknown {
    const value = meant(entry);
    if (isNamed(value)) return { named: value.named };
    if (isMeasured(value)) return Number(meaningOf(value).toPrecision(9));
    if (isList(value)) return value.map(bare);
    if (!isParts(value)) return value;
    const keys = Object.keys(value)
        .filter((key) => !aside.has(key) || key === 'kind')
        .sort();
    return keys.map((key) => [key, bare(value[key])]);
}

function same(a: unknown, b: unknown): boolean {
    if (isNamed(a) && isNamed(b)) return a.named === b.named;
    if (isMeasured(a) && isMeasured(b)) return isSame(meaningOf(a), meaningOf(b));
    return keyOf(a) === keyOf(b);
}

/** A value in its author's words. */
export function tell(value: unknown): Told {
    if (isNamed(value)) return value.title;
    if (isMeasured(value)) return tellMeasure(value);
    if (isList(value)) return value.map((entry) => tell(meant(entry))).join(', ');
    if (typeof value === 'boolean') return value ? 'yes' : 'no';
    if (!isParts(value)) return String(value);
    if (typeof value.name === 'string' && 'side' in value && 'place' in value) return value.name;
    const words = Object.entries(value)
        .filter(([key, part]) => (!aside.has(key) || key === 'kind') && part !== undefined && part !== false)
        .map(([, part]) => tell(meant(part)))
        .filter(Boolean);
    return [...new Set(words)].join(', ');
}

/** 30 % of class is 30 % of class, whichever class that is: the line that it is of is told on its own. */
function meaningOf({ si: value, quantity }: Measured): number {
    return quantity?.unit.dimension === 'share' ? si(quantity) : value;
}

/** As it was written; what nobody wrote as a bare number. */
function tellMeasure({ si: value, quantity }: Measured): Told {
    return quantity ? printQuantity(quantity) : String(Number(value.toPrecision(4)));
}

function isMeasured(value: unknown): value is Measured {
    return typeof value === 'object' && value !== null && 'si' in value;
}

function isList(value: unknown): value is readonly unknown[] {
    return Array.isArray(value);
}

/** Of parts that are compared one by one: neither a number nor a name. */
function isParts(value: unknown): value is Parts {
    return (
        typeof value === 'object' && value !== null && !isList(value) && !isNamed(value) && !isMeasured(value)
    );
}

/** `fullRadius` as it would be said: `full radius`. */
function wordsOf(key: string): string {
    return key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}
