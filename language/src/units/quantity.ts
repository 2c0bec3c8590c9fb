import { type Unit, units } from './unit.ts';

/** A number with its unit, as an author wrote it. */
export interface Quantity {
    readonly number: number;
    readonly unit: Unit;
    /** The inches of `6 ft 4 in`; then the number counts the feet. */
    readonly inches?: number;
    /** The author's own spelling. */
    readonly text?: string;
}

/** m/s². Defined by the 3rd General Conference on Weights and Measures, 1901. */
export const standardGravity = 9.80665;

export function quantity(number: number, unit: Unit, text?: string): Quantity {
    return Object.freeze(text === undefined ? { number, unit } : { number, unit, text });
}

/** A length of feet and inches. The sign of the feet is the sign of the whole, also that of -0. */
export function feetAndInches(feet: number, inches: number, text?: string): Quantity {
    return Object.freeze({ number: feet, unit: units.ft, inches, ...(text !== undefined && { text }) });
}

/** Whether feet and inches are what a tape shows: whole feet, and from none to less than twelve inches. */
export function areSoundInches(feet: number, inches: number): boolean {
    return Number.isInteger(feet) && inches >= 0 && inches < 12;
}

/**
 * The value in SI: m, m/s, rad, s, K, m³; a share as a fraction of 1, a count as itself. A load gives its
 * mass in kg: `asForce` is the other reading.
 */
export function si({ number, unit, inches }: Quantity): number {
    if (inches === undefined) return toSI(number, unit);
    const sign = number < 0 || Object.is(number, -0) ? -1 : 1;
    return sign * toSI(Math.abs(number) * 12 + inches, units.in);
}

export function toSI(number: number, { ratio, offset }: Unit): number {
    return ((number + offset) * ratio[0]) / ratio[1];
}

export function fromSI(value: number, { ratio, offset }: Unit): number {
    return (value * ratio[1]) / ratio[0] - offset;
}

/** Kilograms of a load. */
export function asMass(load: Quantity): number {
    mustBe(load, 'load');
    return si(load);
}

/** Newtons that a load pulls: its mass under standard gravity. */
export function asForce(load: Quantity): number {
    return asMass(load) * standardGravity;
}

/** The mass in kg that hangs as heavy as a force in newtons. */
export function massOf(force: number): number {
    return force / standardGravity;
}

/** The same quantity told in another unit of its dimension; anything else is a fault of the caller's. */
export function convert(from: Quantity, unit: Unit): Quantity {
    mustBe(from, unit.dimension);
    if (from.unit === unit && from.inches === undefined) return quantity(from.number, unit);
    return quantity(fromSI(si(from), unit), unit);
}

function mustBe({ unit }: Quantity, dimension: Unit['dimension']): void {
    if (unit.dimension !== dimension)
        throw new RangeError(`Wanted ${dimension}, was given ${unit.dimension}.`);
}
