import { toSI } from './quantity.ts';
import { type Dimension, type Unit, unitsOf } from './unit.ts';
import { nearestUnit, unclearUnit } from './unit-words.ts';

export type QuantityFault =
    | 'no-number'
    | 'decimal-comma'
    | 'bare-point'
    | 'fraction'
    | 'too-large'
    | 'no-unit'
    | 'unknown-unit'
    | 'unclear-unit'
    | 'wrong-dimension'
    | 'unsound-inches'
    | 'left-over';

/** Why a text is no quantity. */
export interface QuantityError {
    readonly kind: QuantityFault;
    /** The part at fault, and where it starts in the text. */
    readonly found: string;
    readonly at: number;
    /** Texts that would be accepted, the likeliest first; may be empty. */
    readonly instead: readonly string[];
    /** What is wrong and what to write, for the person who wrote it. */
    readonly message: string;
}

/** An error whose message ends in what to write instead, where that is known. */
export function fault(
    kind: QuantityFault,
    found: string,
    at: number,
    what: string,
    instead: readonly string[] = [],
): QuantityError {
    const message = instead.length > 0 ? `${what} Write ${instead.join(' or ')}.` : what;
    return { kind, found, at, instead, message };
}

/** A word after a number that is no unit, or is one that two people may read differently. */
export function unknownUnit(number: string, word: string, at: number, wanted?: Dimension): QuantityError {
    const unclear = unclearUnit(word);
    if (unclear) {
        const fitting = unclear.instead.filter((unit) => !wanted || unit.dimension === wanted);
        const what = `“${word}” could be ${unclear.readings}.`;
        return fault('unclear-unit', word, at, what, fitting.map(spoken(number)));
    }
    const near = nearestUnit(word, wanted);
    if (near) return fault('unknown-unit', word, at, `“${word}” is not a unit.`, [spoken(number)(near)]);
    const known = wanted && wanted !== 'count' ? ` Known here: ${symbols(wanted)}.` : '';
    return fault('unknown-unit', word, at, `“${word}” is not a unit.${known}`);
}

/** A unit of one dimension where another is wanted. */
export function wrongDimension(number: string, word: string, at: number, unit: Unit, wanted: Dimension) {
    const here = wanted === 'count' ? 'A bare number is wanted.' : `Wanted: ${symbols(wanted)}.`;
    const near = nearestUnit(word, wanted);
    const what = `“${word}” is a unit of ${unit.dimension}, not of ${wanted}. ${here}`;
    return fault('wrong-dimension', word, at, what, near && [spoken(number)(near)]);
}

/** Of many units that a number could be in, so many are worth offering. */
const CHOICES = 3;

/**
 * A bare number where a unit is wanted.
 *
 * @param within  SI, what makes sense here: units that would take the number elsewhere are not offered
 */
export function noUnit(
    number: string,
    at: number,
    wanted: Dimension,
    within: readonly [least: number, most: number] = [-Infinity, Infinity],
): QuantityError {
    const sensible = unitsOf(wanted).filter((unit) => {
        const value = toSI(Number(number), unit);
        return value >= within[0] && value <= within[1];
    });
    const offered = (sensible.length > 0 ? sensible : unitsOf(wanted)).slice(0, CHOICES);
    return fault('no-unit', number, at, `${number} has no unit.`, offered.map(spoken(number)));
}

function spoken(number: string) {
    return (unit: Unit) => `${number} ${unit.symbol}`;
}

function symbols(dimension: Dimension): string {
    return unitsOf(dimension)
        .map(({ symbol }) => symbol)
        .join(', ');
}
