import Qty from 'js-quantities';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { asForce, convert, quantity } from '../../language/src/units/quantity.ts';
import { type UnitSymbol, units } from '../../language/src/units/unit.ts';

/*
 * Every pair of units of a dimension, against two general-purpose libraries that know nothing of fishing:
 * mathjs 15.2.0 and js-quantities 1.8.0. Where a library lacks a unit, the pair is left to the other one and to
 * the definitions worked by hand.
 */

/** What mathjs calls a unit. It has neither knots nor fathoms, and its `C` and `F` are coulomb and farad. */
const inMathjs: Partial<Record<UnitSymbol, string>> = {
    m: 'm',
    cm: 'cm',
    mm: 'mm',
    km: 'km',
    ft: 'ft',
    in: 'in',
    yd: 'yd',
    kg: 'kg',
    g: 'g',
    lb: 'lbm',
    oz: 'oz',
    'km/h': 'km/h',
    'm/s': 'm/s',
    mph: 'mi/h',
    s: 's',
    min: 'min',
    h: 'h',
    d: 'day',
    '°C': 'degC',
    '°F': 'degF',
    cc: 'cc',
    ml: 'ml',
    l: 'l',
};

/** What js-quantities calls a unit. */
const inJsQuantities: Partial<Record<UnitSymbol, string>> = {
    m: 'm',
    cm: 'cm',
    mm: 'mm',
    km: 'km',
    ft: 'ft',
    in: 'in',
    yd: 'yd',
    nmi: 'nmi',
    fathom: 'fathom',
    kg: 'kg',
    g: 'g',
    lb: 'lb',
    oz: 'oz',
    kn: 'kn',
    'km/h': 'km/h',
    'm/s': 'm/s',
    mph: 'mph',
    s: 's',
    min: 'min',
    h: 'h',
    d: 'd',
    '%': '%',
    '°C': 'tempC',
    '°F': 'tempF',
    ml: 'ml',
    l: 'l',
};

/** How far js-quantities itself is from the definition: it keeps 1.829 m for a fathom, nine figures elsewhere. */
const coarse: Partial<Record<UnitSymbol, number>> = { fathom: 1.2e-4, kn: 1e-9, oz: 1e-9 };

const numbers = [0.071, 1, 6, 8, 13.5, 24, 132.27, 5000];

function pairs(names: Partial<Record<UnitSymbol, string>>) {
    const known = Object.keys(names) as UnitSymbol[];
    return known.flatMap((from) =>
        known
            .filter((to) => to !== from && units[to].dimension === units[from].dimension)
            .map((to) => [from, to] as const),
    );
}

function off(ours: number, theirs: number): number {
    return Math.abs(ours - theirs) / Math.max(Math.abs(theirs), 1e-9);
}

describe('mathjs agrees to 12 figures', () => {
    test.each(pairs(inMathjs))('%s in %s', (from, to) => {
        for (const number of numbers) {
            const ours = convert(quantity(number, units[from]), units[to]).number;
            const theirs = mathUnit(number, inMathjs[from]!).toNumber(inMathjs[to]!);
            expect(off(ours, theirs)).toBeLessThan(1e-12);
        }
    });

    test.each([
        ['kg', 'kgf'],
        ['lb', 'lbf'],
        ['N', 'N'],
    ] as const)('%s as a force is its %s', (symbol, theirs) => {
        for (const number of numbers) {
            const ours = asForce(quantity(number, units[symbol]));
            expect(off(ours, mathUnit(number, theirs).toNumber('N'))).toBeLessThan(1e-12);
        }
    });

    test('degrees in radians', () => {
        for (const number of numbers) {
            expect(off(number * units.deg.toSI, mathUnit(number, 'deg').toNumber('rad'))).toBeLessThan(1e-12);
        }
    });
});

describe('js-quantities agrees as far as its own constants go', () => {
    test.each(pairs(inJsQuantities))('%s in %s', (from, to) => {
        const slack = 1e-12 + (coarse[from] ?? 0) + (coarse[to] ?? 0);
        for (const number of numbers) {
            const ours = convert(quantity(number, units[from]), units[to]).number;
            const theirs = Qty(number, inJsQuantities[from]!).to(inJsQuantities[to]!).scalar;
            // Its temperatures go through kelvins rounded in binary: 273.15 costs three of the figures.
            const extra = units[from].dimension === 'temperature' ? 1e-11 : 0;
            expect(off(ours, theirs)).toBeLessThan(slack + extra);
        }
    });

    test('pounds as a force', () => {
        const theirs = Qty(50, 'lbf').to('N').scalar;
        expect(off(asForce(quantity(50, units.lb)), theirs)).toBeLessThan(1e-7);
    });
});
