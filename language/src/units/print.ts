import { isSame } from './compare.ts';
import { fromSI, type Quantity, si } from './quantity.ts';
import { type Dimension, type Unit, units, usualUnit } from './unit.ts';

export interface PrintOptions {
    /** Most decimals after the point; of the inches where feet and inches are printed. */
    readonly digits?: number;
}

/**
 * A value with its unit: `11.9 m`, `39 ft`, `6 ft 4 in`, `40 %`; a count as a bare number.
 *
 * What was written is repeated as it was written. Anything else gets the decimals that a crew can use, and
 * one more at most where the author of `like` went finer. Always a decimal point, no trailing zeros, no
 * exponent; the text reads back as a quantity.
 *
 * @param value  SI, a load in kg (`massOf(newtons)` for a force)
 * @param like   the unit to speak in, or the quantity whose author's form is kept
 * @throws RangeError for NaN and the infinities: there is no such number on a boat
 */
export function print(value: number, like: Unit | Quantity, { digits }: PrintOptions = {}): string {
    if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be printed as a quantity.`);
    if (!isQuantity(like)) return printIn(value, like, digits);
    if (digits === undefined && isSame(value, si(like))) return printQuantity(like);
    if (like.inches !== undefined) {
        return printFeetAndInches(fromSI(value, units.in), digits ?? Math.min(decimalsOf(like.inches), 1));
    }
    if (digits !== undefined) return printIn(value, like.unit, digits);
    const usable = usableDecimals(fromSI(value, like.unit), like.unit);
    return printIn(value, like.unit, Math.max(usable, Math.min(decimalsOf(like.number), usable + 1)));
}

/** The quantity as its author wrote it, in the unit's printed form: up to twelve figures, none of them ours. */
export function printQuantity({ number, unit, inches }: Quantity): string {
    if (inches === undefined) return withSymbol(printNumber(number, 12), unit);
    const sign = number < 0 || Object.is(number, -0) ? '-' : '';
    const feet = number === 0 ? '' : `${printNumber(Math.abs(number), 12)} ft `;
    return `${sign}${feet}${printNumber(inches, 12)} in`;
}

/**
 * A value in its unit with the other system's in parentheses, where there is one: `12 m (39 ft)`,
 * `6 ft 4 in (1.9 m)`, `8 kn`. A dimension stands for its usual unit.
 */
export function printBoth(value: number, like: Unit | Quantity | Dimension, options?: PrintOptions): string {
    const form = typeof like === 'string' ? usualUnit[like] : like;
    const first = print(value, form, options);
    const { beside } = isQuantity(form) ? form.unit : form;
    return beside ? `${first} (${printIn(value, units[beside])})` : first;
}

/**
 * Two values that a sentence sets against each other, with as many decimals as tell them apart, up to three
 * more than usual: never "4.6 m is longer than 4.6 m".
 */
export function printApart(a: number, b: number, like: Unit | Quantity): [string, string] {
    let texts: [string, string] = [print(a, like), print(b, like)];
    const unit = isQuantity(like) ? like.unit : like;
    const inches = isQuantity(like) && like.inches !== undefined;
    const usual = inches ? 0 : usableDecimals(fromSI(Math.max(Math.abs(a), Math.abs(b)), unit), unit);
    for (let more = 1; more <= 3 && texts[0] === texts[1]; more++) {
        texts = [print(a, like, { digits: usual + more }), print(b, like, { digits: usual + more })];
    }
    return texts;
}

/** A number in plain decimals: rounded half away from zero, no trailing zeros, no exponent, never `-0`. */
export function printNumber(number: number, digits: number): string {
    // Twelve figures drop what binary arithmetic adds: 2.25 that came out as 2.2499999999999996.
    const [mantissa = '', power = ''] = Math.abs(number).toExponential(11).split('e');
    const exponent = Number(power);
    const decimals = Math.max(0, Math.min(digits, 11 - exponent));
    const figures =
        exponent > 11
            ? mantissa.replace('.', '') + '0'.repeat(exponent - 11)
            : String(Math.round(Number(`${mantissa}e${exponent + decimals}`))).padStart(decimals + 1, '0');
    const whole = figures.slice(0, figures.length - decimals);
    const part = figures.slice(figures.length - decimals).replace(/0+$/, '');
    const sign = number < 0 && /[1-9]/.test(figures) ? '-' : '';
    return `${sign}${whole}${part && `.${part}`}`;
}

/** Decimals that a crew can use of a number in this unit: two figures below one, none from a hundred. */
export function usableDecimals(number: number, { decimals: [below10, below100] }: Unit): number {
    const size = Math.abs(number);
    if (size >= 100) return 0;
    if (size >= 10) return below100;
    if (size >= 1) return below10;
    return size === 0 ? 0 : Math.min(4, 1 - Math.floor(Math.log10(size)));
}

function printIn(value: number, unit: Unit, digits?: number): string {
    const number = fromSI(value, unit);
    return withSymbol(printNumber(number, digits ?? usableDecimals(number, unit)), unit);
}

function printFeetAndInches(inches: number, digits: number): string {
    // Rounded as a whole first, so that 5 ft 11.96 in becomes 6 ft and not 5 ft 12 in.
    const total = Number(printNumber(Math.abs(inches), digits));
    const feet = Math.floor(total / 12);
    const rest = printNumber(total - feet * 12, digits);
    const sign = inches < 0 && total > 0 ? '-' : '';
    if (feet === 0) return `${sign}${rest} in`;
    return rest === '0' ? `${sign}${feet} ft` : `${sign}${feet} ft ${rest} in`;
}

function withSymbol(number: string, { symbol }: Unit): string {
    return symbol ? `${number} ${symbol}` : number;
}

function decimalsOf(number: number): number {
    return printNumber(number, 12).split('.')[1]?.length ?? 0;
}

function isQuantity(like: Unit | Quantity): like is Quantity {
    return 'number' in like;
}
