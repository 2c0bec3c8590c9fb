import { fromSI, type Quantity, si } from './quantity.ts';
import { units } from './unit.ts';

/** A line class, and the pounds that stand for it. */
export interface LineClass {
    /** Kilograms: the class itself. */
    readonly kg: number;
    /** Pounds at which a sample of the class is tested; published truncated, so not a conversion of `kg`. */
    readonly testLb: number;
    /** Pounds by which tackle of the class is sold and spoken of. */
    readonly customaryLb: number;
}

export const lineClassSource = 'IGFA International Angling Rules, updated 27 October 2021';

/** The line classes of `lineClassSource`, lightest first. */
export const lineClasses: readonly LineClass[] = [
    { kg: 1, testLb: 2.2, customaryLb: 2 },
    { kg: 2, testLb: 4.4, customaryLb: 4 },
    { kg: 3, testLb: 6.61, customaryLb: 6 },
    { kg: 4, testLb: 8.81, customaryLb: 8 },
    { kg: 6, testLb: 13.22, customaryLb: 12 },
    { kg: 8, testLb: 17.63, customaryLb: 16 },
    { kg: 10, testLb: 22.04, customaryLb: 20 },
    { kg: 15, testLb: 33.06, customaryLb: 30 },
    { kg: 24, testLb: 52.91, customaryLb: 50 },
    { kg: 37, testLb: 81.57, customaryLb: 80 },
    { kg: 60, testLb: 132.27, customaryLb: 130 },
];

/**
 * The class that a written load names: kilograms of a class, its customary pounds or its test pounds.
 *
 * Read from the table and never converted: 50 lb line is 24 kg class, though 50 lb is 22.7 kg.
 */
export function classOf({ number, unit }: Quantity): LineClass | undefined {
    if (unit.symbol === 'kg') return lineClasses.find(({ kg }) => kg === number);
    if (unit.symbol !== 'lb') return undefined;
    return lineClasses.find(({ customaryLb, testLb }) => customaryLb === number || testLb === number);
}

/** The next class below and the next above a load that names none; one of them at the ends of the table. */
export function nearestClasses(load: Quantity): readonly LineClass[] {
    const named = classOf(load);
    if (named) return [named];
    const pounds = load.unit.system === 'imperial';
    const size = pounds ? fromSI(si(load), units.lb) : si(load);
    const of = ({ kg, customaryLb }: LineClass) => (pounds ? customaryLb : kg);
    const below = lineClasses.findLast((lineClass) => of(lineClass) < size);
    const above = lineClasses.find((lineClass) => of(lineClass) > size);
    return [below, above].filter((lineClass) => lineClass !== undefined);
}

/** A class in both systems, as it is spoken of: `24 kg (50 lb)`, or pounds first. */
export function printClass({ kg, customaryLb }: LineClass, first: 'kg' | 'lb' = 'kg'): string {
    return first === 'kg' ? `${kg} kg (${customaryLb} lb)` : `${customaryLb} lb (${kg} kg)`;
}
