import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exceeds, isSame } from '../../language/src/units/compare.ts';
import {
    asForce,
    asMass,
    convert,
    feetAndInches,
    massOf,
    quantity,
    si,
    standardGravity,
} from '../../language/src/units/quantity.ts';
import { type Dimension, type UnitSymbol, units, unitsOf } from '../../language/src/units/unit.ts';

/** SI value of one unit, worked by hand from its definition. */
const definitions: readonly [UnitSymbol, number, string][] = [
    ['m', 1, 'SI'],
    ['cm', 0.01, 'SI'],
    ['mm', 0.001, 'SI'],
    ['km', 1000, 'SI'],
    ['yd', 0.9144, 'International Yard and Pound agreement, 1959'],
    ['ft', 0.3048, '0.9144 / 3'],
    ['in', 0.0254, '0.9144 / 36'],
    ['fathom', 1.8288, '6 × 0.3048'],
    ['nmi', 1852, 'Monaco, 1929'],
    ['kg', 1, 'SI'],
    ['g', 0.001, 'SI'],
    ['lb', 0.45359237, 'International Yard and Pound agreement, 1959'],
    ['oz', 0.028349523125, '0.45359237 / 16'],
    ['N', 0.10197162129779283, '1 / 9.80665'],
    ['kn', 0.5144444444444445, '1852 / 3600'],
    ['km/h', 0.2777777777777778, '1 / 3.6'],
    ['m/s', 1, 'SI'],
    ['mph', 0.44704, '1609.344 / 3600'],
    ['deg', 0.017453292519943295, 'π / 180'],
    ['s', 1, 'SI'],
    ['min', 60, 'SI Brochure, table 6'],
    ['h', 3600, 'SI Brochure, table 6'],
    ['d', 86_400, 'SI Brochure, table 6'],
    ['%', 0.01, 'a hundredth'],
    ['ml', 1e-6, 'SI Brochure, table 6: 1 l = 10⁻³ m³'],
    ['cc', 1e-6, '(0.01 m)³'],
    ['l', 1e-3, 'SI Brochure, table 6'],
    ['count', 1, 'itself'],
];

describe('one unit in SI is what its definition says, to the last binary digit', () => {
    test.each(definitions)('1 %s is %d: %s', (symbol, value) => {
        expect(si(quantity(1, units[symbol]))).toBe(value);
        expect(units[symbol].toSI).toBe(value);
    });
});

test('no unit is left without a definition to check', () => {
    const checked = new Set<string>([...definitions.map(([symbol]) => symbol), '°C', '°F']);
    expect(Object.keys(units).filter((symbol) => !checked.has(symbol))).toEqual([]);
});

test.each([
    ['°C', 0, 273.15],
    ['°C', -273.15, 0],
    ['°F', 32, 273.15],
    ['°F', 212, 373.15],
    ['°F', -40, 233.15],
] as const)('temperatures count from their own zero: %s %d is %d K', (symbol, number, kelvin) => {
    expect(si(quantity(number, units[symbol]))).toBeCloseTo(kelvin, 10);
});

test('forty below is the same in Celsius and Fahrenheit', () => {
    expect(convert(quantity(-40, units['°C']), units['°F']).number).toBeCloseTo(-40, 10);
});

describe('a load has two readings', () => {
    test('a drag of 1 kg pulls 9.80665 N and weighs 1 kg', () => {
        const drag = quantity(1, units.kg);
        expect(asForce(drag)).toBe(9.80665);
        expect(asMass(drag)).toBe(1);
        expect(standardGravity).toBe(9.80665);
    });

    test('a pound pulls 4.4482216152605 N: 0.45359237 × 9.80665, exactly', () => {
        expect(asForce(quantity(1, units.lb))).toBeCloseTo(4.4482216152605, 13);
    });

    test('newtons come back as the newtons that were written', () => {
        fc.assert(
            fc.property(fc.integer({ min: 1, max: 100_000 }), (tenths) => {
                const force = asForce(quantity(tenths / 10, units.N));
                expect(Math.abs(force - tenths / 10)).toBeLessThan(1e-12 * tenths);
            }),
        );
    });

    test('the mass of a force is the mass that would hang as heavy', () => {
        expect(massOf(asForce(quantity(24, units.kg)))).toBeCloseTo(24, 12);
    });

    test('a length has neither reading', () => {
        expect(() => asForce(quantity(3, units.m))).toThrow('Wanted load, was given length.');
        expect(() => asMass(quantity(3, units.m))).toThrow(RangeError);
    });
});

describe('two ways to write one length are one number', () => {
    test('6 ft 4 in and 76 in are 1.9304 m', () => {
        expect(si(feetAndInches(6, 4))).toBe(1.9304);
        expect(si(quantity(76, units.in))).toBe(1.9304);
    });

    test('whole feet are twelve times as many inches, yards three feet and fathoms six', () => {
        fc.assert(
            fc.property(fc.integer({ min: 0, max: 10_000 }), (feet) => {
                expect(si(quantity(feet * 12, units.in))).toBe(si(quantity(feet, units.ft)));
                expect(si(feetAndInches(feet, 0))).toBe(si(quantity(feet, units.ft)));
                expect(si(quantity(feet * 3, units.ft))).toBe(si(quantity(feet, units.yd)));
                expect(si(quantity(feet * 6, units.ft))).toBe(si(quantity(feet, units.fathom)));
            }),
        );
    });

    test('whole centimetres are ten times as many millimetres, ounces a sixteenth as many pounds', () => {
        fc.assert(
            fc.property(fc.integer({ min: 0, max: 100_000 }), (n) => {
                expect(si(quantity(n * 10, units.mm))).toBe(si(quantity(n, units.cm)));
                expect(si(quantity(n * 16, units.oz))).toBe(si(quantity(n, units.lb)));
                expect(si(quantity(n * 1000, units.g))).toBe(si(quantity(n, units.kg)));
            }),
        );
    });

    test('the sign of the feet is the sign of the whole', () => {
        expect(si(feetAndInches(-6, 4))).toBe(-1.9304);
        expect(si(feetAndInches(-0, 4))).toBe(-0.1016);
    });
});

describe('a limit is exceeded', () => {
    test('by what could be measured, not by the last binary digit of a sum or a conversion', () => {
        expect(9.14 + 3.05 > 12.19).toBe(true);
        expect(exceeds(9.14 + 3.05, 12.19)).toBe(false);
        expect(exceeds(12.190_001, 12.19)).toBe(true);
        expect(exceeds(12.18, 12.19)).toBe(false);
        expect(exceeds(0.001, 0)).toBe(true);
        expect(exceeds(Number.POSITIVE_INFINITY, 12.19)).toBe(true);
        expect(exceeds(12.19, Number.POSITIVE_INFINITY)).toBe(false);
    });

    test('whatever unit either was written in', () => {
        const tenths = fc.integer({ min: 1, max: 200_000 });
        fc.assert(
            fc.property(tenths, (n) => {
                const inMillimetres = si(quantity(n / 10, units.mm));
                const inCentimetres = si(quantity(n / 100, units.cm));
                expect(isSame(inMillimetres, inCentimetres)).toBe(true);
                expect(exceeds(inMillimetres, inCentimetres)).toBe(false);
                expect(exceeds(si(quantity((n + 1) / 10, units.mm)), inCentimetres)).toBe(true);
            }),
        );
    });
});

test('there and back again changes nothing that a crew could read', () => {
    const pair = fc.constantFrom(...Object.values(units)).chain((from) =>
        fc.record({
            from: fc.constant(from),
            to: fc.constantFrom(...unitsOf(from.dimension)),
            number: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        }),
    );
    fc.assert(
        fc.property(pair, ({ from, to, number }) => {
            const back = convert(convert(quantity(number, from), to), from).number;
            // An absolute part for temperatures, which pass through a zero 273 or 460 degrees away.
            expect(Math.abs(back - number)).toBeLessThanOrEqual(1e-12 * Math.abs(number) + 1e-12);
        }),
    );
});

test('to the unit that it is in, a quantity converts to itself', () => {
    expect(convert(quantity(0.1, units.lb), units.lb).number).toBe(0.1);
    expect(convert(feetAndInches(6, 6), units.ft)).toMatchObject({ number: 6.5, unit: units.ft });
    expect(convert(feetAndInches(6, 6), units.ft).inches).toBeUndefined();
});

test('a speed does not convert to a length', () => {
    expect(() => convert(quantity(8, units.kn), units.m)).toThrow('Wanted length, was given speed.');
});

test('a quantity and the units cannot be changed by whoever holds them', () => {
    expect(Object.isFrozen(quantity(8, units.kn, '8 kn'))).toBe(true);
    expect(Object.isFrozen(feetAndInches(6, 4))).toBe(true);
    expect(Object.values(units).every(Object.isFrozen)).toBe(true);
});

test('the unit beside a unit is of the same dimension and the other system', () => {
    const paired = Object.values(units).filter(({ beside }) => beside);
    expect(paired.length).toBeGreaterThan(10);
    for (const unit of paired) {
        const other = units[unit.beside!];
        expect([unit.symbol, other.dimension]).toEqual([unit.symbol, unit.dimension]);
        expect([unit.system, other.system].sort()).toEqual(['imperial', 'metric']);
    }
});

test('the units of a dimension are those of the design', () => {
    const symbols = (dimension: Dimension) => unitsOf(dimension).map(({ symbol }) => symbol);
    expect(symbols('length')).toEqual(['m', 'cm', 'mm', 'km', 'ft', 'in', 'yd', 'fathom', 'nmi']);
    expect(symbols('load')).toEqual(['kg', 'g', 'N', 'lb', 'oz']);
    expect(symbols('speed')).toEqual(['kn', 'km/h', 'm/s', 'mph']);
    expect(symbols('time')).toEqual(['s', 'min', 'h', 'd']);
    expect(symbols('temperature')).toEqual(['°C', '°F']);
    expect(symbols('volume')).toEqual(['ml', 'cc', 'l']);
    expect([symbols('angle'), symbols('share'), symbols('count')]).toEqual([['deg'], ['%'], ['']]);
});
