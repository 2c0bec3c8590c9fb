import type { Fix } from '../plan/finding.ts';
import type { Measure, Span } from '../plan/measure.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import type { Origin, Place, Said } from '../plan/origin.ts';
import { print, printNumber, usableDecimals } from '../units/print.ts';
import { massOf, type Quantity, si } from '../units/quantity.ts';
import { units, usualUnit } from '../units/unit.ts';

/*
 * Fixes as a crew would make them with a pencil. Each is `undefined` where the text does not allow it: nothing
 * was written there, or what was written belongs to another plan that this one is like.
 */

/** Which way a new number may be rounded, so that it still keeps the limit that it was computed from. */
export type Rounding = 'down' | 'up' | 'nearest';

/**
 * Writes another number in a value's place, in its author's unit and form.
 *
 * @param newSI  SI, as the measure's own `si`
 */
export function replaceValue(
    title: (text: string) => string,
    measure: Measure,
    newSI: number,
    rounding: Rounding = 'nearest',
): Fix | undefined {
    if (!isOwn(measure.origin)) return undefined;
    const text = inItsForm(measure, newSI, rounding);
    if (text === undefined) return undefined;
    const told = `${text}${isOfClass(measure) ? ' of class' : ''}`;
    return { title: titleIn(title(told), measure.origin), edits: [{ at: measure.origin.place, text }] };
}

/** A load that was written as a share, which is one of the line class. */
function isOfClass({ quantity, si: load }: Measure): boolean {
    return quantity?.unit.dimension === 'share' && Math.abs(si(quantity) - load) > 1e-9;
}

/** What others may use as well is named: a number of a method is one for every line. */
function titleIn(title: string, { voice, definition }: Origin): string {
    if (voice === 'spread' || voice === 'position' || !definition) return title;
    return `${title} in ${definition}${voice === 'method' ? ', for every line' : ''}`;
}

/** Another load for a message to say, N: `7.2 % of class (1.1 kg)`, `1.1 kg`. */
export function toldAs(measure: Measure, newSI: number, rounding: Rounding): string {
    const next = asWritten(measure, newSI, rounding);
    if (!next) return print(massOf(newSI), usualUnit.load);
    return isOfClass(measure)
        ? `${next.text} of class (${print(massOf(next.si), usualUnit.load)})`
        : next.text;
}

/**
 * Another number as a value's author would write it; `undefined` where nobody wrote one. Also right for a drag in
 * newtons that its author wrote as a share of the class.
 */
export function inItsForm(measure: Measure, newSI: number, rounding: Rounding): string | undefined {
    return asWritten(measure, newSI, rounding)?.text;
}

/** The same, and what it means in SI once it is rounded as it is written. */
export function asWritten(
    { quantity, si: old }: Measure,
    newSI: number,
    rounding: Rounding,
): { readonly text: string; readonly si: number } | undefined {
    const next = quantity && old !== 0 ? rewritten(quantity, newSI / old, rounding) : undefined;
    return next && { text: next.text, si: next.ratio * old };
}

/** Draws a range in: `7.5 kn to 8.5 kn` becomes `7.7 kn to 8.1 kn`; `undefined` where rounding leaves nothing of it. */
export function replaceSpan(
    title: (from: string, to: string) => string,
    span: Span,
    within: { readonly from: number; readonly to: number },
): Fix | undefined {
    const from = replaceValue((text) => text, span.from, within.from);
    const to = replaceValue((text) => text, span.to, within.to);
    const [low, high] = [
        asWritten(span.from, within.from, 'nearest'),
        asWritten(span.to, within.to, 'nearest'),
    ];
    if (!from || !to || !low || !high || !(low.si < high.si)) return undefined;
    return { title: title(from.title, to.title), edits: [...from.edits, ...to.edits] };
}

/** Writes a property anew, its word included: `back wave 4` in the place of `back 34 m`. */
export function replaceProperty(title: string, origin: Origin, text: string): Fix | undefined {
    return isOwn(origin) ? { title, edits: [{ at: origin.property, text }] } : undefined;
}

/** Writes another word in a word's place. */
export function replaceWord(title: string, { value, origin }: Said<string>, word: string): Fix | undefined {
    const isWritten = isOwn(origin) && lengthOf(origin.place) === value.length;
    return isWritten ? { title, edits: [{ at: origin.place, text: word }] } : undefined;
}

/** Takes a property out. */
export function removeProperty(title: string, origin: Origin): Fix | undefined {
    return replaceProperty(title, origin, '');
}

/** Lets two names change places. */
export function swap(title: string, a: Named, b: Named): Fix | undefined {
    if (!isName(a) || !isName(b)) return undefined;
    const edits = [
        { at: a.origin.place, text: b.value.name },
        { at: b.origin.place, text: a.value.name },
    ];
    return { title, edits };
}

type Named = Said<{ readonly name: string }>;

function isName({ value, origin }: Named): boolean {
    return isOwn(origin) && lengthOf(origin.place) === value.name.length;
}

function isOwn({ voice, inherited, place }: Origin): boolean {
    const isWritten = voice !== 'default' && lengthOf(place) > 0;
    // What the library says is for reading.
    return isWritten && !inherited && !place.uri.startsWith(`${LIBRARY_SCHEME}:`);
}

function lengthOf({ start, end }: Place): number {
    return end - start;
}

/** The text, and its number over the one that was there. */
function rewritten(
    quantity: Quantity,
    ratio: number,
    rounding: Rounding,
): { readonly text: string; readonly ratio: number } | undefined {
    const { number, unit, inches, text } = quantity;
    if (!Number.isFinite(ratio) || unit.offset !== 0) return undefined;
    if (inches !== undefined) {
        const before = si(quantity) / units.in.toSI;
        const total = rounded(before * ratio, 0, rounding);
        const feet = Math.trunc(total / 12);
        const rest = Math.abs(total - feet * 12);
        const text = rest === 0 ? `${feet} ft` : `${feet} ft ${printNumber(rest, 0)} in`;
        return { text, ratio: total / before };
    }
    const next = number * ratio;
    const decimals = Math.max(usableDecimals(next, unit), Math.min(2, decimalsOf(number)));
    const told = printNumber(rounded(next, decimals, rounding), decimals);
    const rest = text?.replace(/^[+-]?\d+([.,]\d+)?/, '');
    return {
        text: `${told}${rest ?? (unit.symbol && ` ${unit.symbol}`)}`,
        ratio: Number.parseFloat(told) / number,
    };
}

function rounded(number: number, decimals: number, rounding: Rounding): number {
    const shifted = number * 10 ** decimals;
    // A hair of slack, or 8.000000001 would be rounded up to 8.1.
    const whole = {
        down: () => Math.floor(shifted + 1e-6),
        up: () => Math.ceil(shifted - 1e-6),
        nearest: () => Math.round(shifted),
    }[rounding]();
    return whole / 10 ** decimals;
}

function decimalsOf(number: number): number {
    return printNumber(number, 12).split('.')[1]?.length ?? 0;
}
