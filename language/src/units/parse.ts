import { misspeltNumber } from './number-spelling.ts';
import { printNumber } from './print.ts';
import { areSoundInches, feetAndInches, type Quantity, quantity } from './quantity.ts';
import { fault, noUnit, type QuantityError, unknownUnit, wrongDimension } from './quantity-error.ts';
import { type Dimension, units } from './unit.ts';
import { unitOf } from './unit-words.ts';

/**
 * A quantity from a command line or a setting: `8 kn`, `6 ft 4 in`, `30%`, `-2 °C`, `4`.
 *
 * @param dimension  what is wanted; without it anything goes, and a bare number is a count
 * @param within     SI, what makes sense for it: decides which units are offered to a number without one
 */
export function parseQuantity(
    text: string,
    dimension?: Dimension,
    within?: readonly [least: number, most: number],
): Quantity | QuantityError {
    const written = text.trim();
    const start = text.indexOf(written);
    const [, sign = '', unsigned = ''] = /^([+\-−]?)(.*)$/s.exec(written)!;
    const misspelt = misspeltNumber(unsigned, sign, start + sign.length);
    if (misspelt) return misspelt;

    const [, digits = '', word = '', rest = ''] = /^(\d+(?:\.\d+)?)\s*([^\s\d]*)\s*(.*)$/s.exec(unsigned)!;
    const size = Number(digits);
    if (size > Number.MAX_SAFE_INTEGER) return fault('too-large', digits, start, 'The number is too large.');
    const number = sign === '-' || sign === '−' ? -size : size;
    const told = sign === '+' ? digits : `${sign}${digits}`;
    const wordAt = start + sign.length + unsigned.indexOf(word, digits.length);
    const restAt = start + written.length - rest.length;

    if (word === '' && rest === '') {
        if (dimension && dimension !== 'count') return noUnit(told, start, dimension, within);
        return quantity(number, units.count, written);
    }
    if (word === '') return leftOver(rest, restAt);
    const unit = unitOf(word);
    if (!unit) return unknownUnit(told, word, wordAt, dimension);
    if (dimension && unit.dimension !== dimension) return wrongDimension(told, word, wordAt, unit, dimension);
    if (rest === '') return quantity(number, unit, written);

    const [, inches, inchWord = ''] = /^(\d+(?:\.\d+)?)\s*([^\s\d]+)$/.exec(rest) ?? [];
    if (unit !== units.ft || unitOf(inchWord) !== units.in) return leftOver(rest, restAt);
    if (areSoundInches(size, Number(inches))) return feetAndInches(number, Number(inches), written);
    if (!Number.isSafeInteger(Math.floor(Number(inches))))
        return fault('too-large', rest, restAt, 'The number is too large.');
    const feet = printNumber(size + Number(inches) / 12, 3);
    const what = 'Beside whole feet stand inches from 0 to less than 12.';
    return fault('unsound-inches', rest, restAt, what, [`${sign}${feet} ft`]);
}

/** Tells the two results of `parseQuantity` apart. */
export function isQuantityError(result: Quantity | QuantityError): result is QuantityError {
    return 'kind' in result;
}

function leftOver(rest: string, at: number): QuantityError {
    return fault('left-over', rest, at, `“${rest}” stands after the quantity and means nothing there.`);
}
