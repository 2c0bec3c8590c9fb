import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isQuantityError, parseQuantity } from '../../language/src/units/parse.ts';
import { print, printApart, printBoth, printNumber, printQuantity } from '../../language/src/units/print.ts';
import { feetAndInches, massOf, quantity, si, toSI } from '../../language/src/units/quantity.ts';
import { type Unit, type UnitSymbol, units } from '../../language/src/units/unit.ts';

describe('a number is printed', () => {
    test.each([
        [11.94, 1, '11.9'],
        [2.25, 1, '2.3'],
        [2.2499999999999996, 1, '2.3'],
        [1.005, 2, '1.01'],
        [-2.25, 1, '-2.3'],
        [8, 3, '8'],
        [0.5, 0, '1'],
        [9.96, 1, '10'],
        [0, 2, '0'],
        [-0, 2, '0'],
        [-0.004, 2, '0'],
        [1e-9, 4, '0'],
        [5e-324, 12, '0'],
        [1e21, 2, `1${'0'.repeat(21)}`],
        [1.5e300, 2, `15${'0'.repeat(299)}`],
        [123456.789, 2, '123456.79'],
        [999999999999.9, 0, '1000000000000'],
    ])('%d with at most %d decimals: %s', (number, digits, text) => {
        expect(printNumber(number, digits)).toBe(text);
    });

    test('as plain decimals, whatever it is', () => {
        fc.assert(
            fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(12), (number, digits) => {
                const text = printNumber(number, digits);
                expect(text).toMatch(/^-?(0|[1-9]\d*)(\.\d*[1-9])?$/);
                expect(text).not.toBe('-0');
                const slack = 0.5 * 10 ** -digits + 1e-11 * Math.abs(number);
                expect(Math.abs(Number(text) - number)).toBeLessThanOrEqual(slack);
            }),
        );
    });
});

describe('a computed value has the digits that a cockpit can use', () => {
    test.each([
        [11.9374, 'm', '11.9 m'],
        [12, 'm', '12 m'],
        [113.4, 'm', '113 m'],
        [0.3519, 'm', '0.35 m'],
        [12, 'ft', '39 ft'],
        [1.5, 'ft', '4.9 ft'],
        [2.4, 'kg', '2.4 kg'],
        [2.4, 'lb', '5.3 lb'],
        [24, 'lb', '53 lb'],
        [0.29, 'oz', '10.2 oz'],
        [0.2904, 'g', '290 g'],
        [0.00071, 'mm', '0.71 mm'],
        [0.00071, 'in', '0.028 in'],
        [0.046, 'mm', '46 mm'],
        [0.33, 'in', '13 in'],
        [4.1155555555555, 'kn', '8 kn'],
        [4.1155555555555, 'km/h', '14.8 km/h'],
        [Math.PI / 4, 'deg', '45 deg'],
        [0.0925, 'deg', '5.3 deg'],
        [0.4, '%', '40 %'],
        [0.0625, '%', '6.3 %'],
        [300.15, '°C', '27 °C'],
        [300.15, '°F', '80.6 °F'],
        [273.15, '°F', '32 °F'],
        [273.15, '°C', '0 °C'],
        [90, 'min', '1.5 min'],
        [6, 'count', '6'],
        [1e-9, 'm', '0 m'],
        [-1e-9, 'm', '0 m'],
        [-3.04, 'm', '-3 m'],
    ] as const)('%d in %s: %s', (value, symbol, text) => {
        expect(print(value, units[symbol])).toBe(text);
    });

    test('or as many as were asked for', () => {
        expect(print(11.9374, units.m, { digits: 3 })).toBe('11.937 m');
        expect(print(11.9374, units.m, { digits: 0 })).toBe('12 m');
        expect(print(11.9374, quantity(1, units.m), { digits: 2 })).toBe('11.94 m');
    });

    test('a force is told by the mass that hangs as heavy', () => {
        expect(print(massOf(23.53596), units.kg)).toBe('2.4 kg');
        expect(print(massOf(23.53596), units.N)).toBe('24 N');
    });

    test('and what is no number is not printed', () => {
        expect(() => print(Number.NaN, units.m)).toThrow(RangeError);
        expect(() => print(Number.POSITIVE_INFINITY, quantity(1, units.m))).toThrow(RangeError);
    });
});

describe('what an author wrote is repeated', () => {
    test.each([
        [quantity(9.14, units.m), '9.14 m'],
        [quantity(113, units.kg), '113 kg'],
        [quantity(132.27, units.lb), '132.27 lb'],
        [quantity(0.1 + 0.2, units.m), '0.3 m'],
        [quantity(-2, units['°C']), '-2 °C'],
        [quantity(-0, units.m), '0 m'],
        [feetAndInches(6, 4), '6 ft 4 in'],
        [feetAndInches(-6, 4.5), '-6 ft 4.5 in'],
        [feetAndInches(0, 4), '4 in'],
        [feetAndInches(-0, 4), '-4 in'],
    ])('%#: %s', (written, text) => {
        expect(printQuantity(written)).toBe(text);
        expect(print(si(written), written)).toBe(text);
    });

    test('and a computed value beside it goes one digit finer at most', () => {
        expect(print(4.6219, quantity(4.57, units.m))).toBe('4.62 m');
        expect(print(4.6219, quantity(4.5718, units.m))).toBe('4.62 m');
        expect(print(4.6219, quantity(5, units.m))).toBe('4.6 m');
    });

    test('in feet and inches where that was the form', () => {
        const tape = feetAndInches(6, 4);
        expect(print(2, tape)).toBe('6 ft 7 in');
        expect(print(1.8288, tape)).toBe('6 ft');
        expect(print(1.825, tape)).toBe('6 ft');
        expect(print(0.1, tape)).toBe('4 in');
        expect(print(0, tape)).toBe('0 in');
        expect(print(-2, tape)).toBe('-6 ft 7 in');
        expect(print(2, tape, { digits: 2 })).toBe('6 ft 6.74 in');
        expect(print(2, feetAndInches(6, 4.25))).toBe('6 ft 6.7 in');
    });
});

describe('both systems stand side by side', () => {
    test.each([
        [12, units.m, '12 m (39 ft)'],
        [2.4, units.kg, '2.4 kg (5.3 lb)'],
        [si(feetAndInches(6, 4)), feetAndInches(6, 4), '6 ft 4 in (1.9 m)'],
        [si(quantity(39, units.ft)), quantity(39, units.ft), '39 ft (11.9 m)'],
        [0.046, units.mm, '46 mm (1.8 in)'],
        [0.3302, units.in, '13 in (330 mm)'],
        [0.29, units.g, '290 g (10.2 oz)'],
        [300.15, units['°C'], '27 °C (80.6 °F)'],
        [toSI(8, units.kn), units.kn, '8 kn'],
        [0.4, units['%'], '40 %'],
        [12, 'length', '12 m (39 ft)'],
        [6, 'count', '6'],
    ] as const)('%#: %d, %o: %s', (value, like, text) => {
        expect(printBoth(value, like)).toBe(text);
    });
});

describe('two values set against each other can be told apart', () => {
    test('with no more digits than that takes', () => {
        expect(printApart(4.6, 4.57, units.m)).toEqual(['4.6 m', '4.57 m']);
        expect(printApart(4.62, 4.31, units.m)).toEqual(['4.6 m', '4.3 m']);
        expect(printApart(113.2, 113.4, units.m)).toEqual(['113.2 m', '113.4 m']);
        expect(printApart(1.9304, 1.9314, feetAndInches(6, 4))).toEqual(['6 ft 4 in', '6 ft 4.04 in']);
    });

    test('unless they are equal for all that a crew could measure', () => {
        expect(printApart(4.6, 4.6, units.m)).toEqual(['4.6 m', '4.6 m']);
        expect(printApart(4.6, 4.600001, units.m)).toEqual(['4.6 m', '4.6 m']);
    });
});

describe('what is printed reads back', () => {
    const anyUnit = fc.constantFrom(...Object.values(units));
    const anyNumber = fc.oneof(
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.integer({ min: -50_000, max: 50_000 }).map((tenths) => tenths / 10),
    );

    function readBack(text: string): number {
        const read = parseQuantity(text);
        if (isQuantityError(read)) throw new Error(`${text}: ${read.message}`);
        return si(read);
    }

    /** Half of the last decimal printed, in SI; a whole half where no decimal was printed. */
    function precision(unit: Unit, digits: number, value: number): number {
        return 0.5 * 10 ** -digits * unit.toSI + 1e-11 * Math.abs(value) + 1e-11;
    }

    test('within the precision asked for, in every unit', () => {
        fc.assert(
            fc.property(anyUnit, anyNumber, fc.nat(6), (unit, number, digits) => {
                const value = toSI(number, unit);
                const back = readBack(print(value, unit, { digits }));
                expect(Math.abs(back - value)).toBeLessThanOrEqual(precision(unit, digits, value));
            }),
            { numRuns: 2000 },
        );
    });

    test('within half of the last usable digit, in every unit', () => {
        fc.assert(
            fc.property(anyUnit, anyNumber, (unit, number) => {
                const size = Math.abs(number);
                const value = toSI(number, unit);
                const [below10, below100] = unit.decimals;
                const digits = size >= 100 ? 0 : size >= 10 ? below100 : size >= 1 ? below10 : 1;
                const back = readBack(print(value, unit));
                expect(Math.abs(back - value)).toBeLessThanOrEqual(precision(unit, digits, value));
            }),
            { numRuns: 2000 },
        );
    });

    test('exactly, where it is what the author wrote', () => {
        const hundredths = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((n) => n / 100);
        fc.assert(
            fc.property(anyUnit, hundredths, (unit, number) => {
                const written = quantity(number, unit);
                expect(readBack(print(si(written), written))).toBe(si(written) + 0);
            }),
            { numRuns: 2000 },
        );
    });

    test('in feet and inches within half an inch', () => {
        fc.assert(
            fc.property(fc.double({ min: -300, max: 300, noNaN: true }), (value) => {
                const text = print(value, feetAndInches(6, 4));
                expect(text).not.toMatch(/(^|\D)1[2-9](\.\d+)? in|-0/);
                expect(Math.abs(readBack(text) - value)).toBeLessThanOrEqual(0.0127 + 1e-9);
            }),
        );
    });

    test('and printing again says the same', () => {
        fc.assert(
            fc.property(anyUnit, anyNumber, (unit, number) => {
                const once = print(toSI(number, unit), unit);
                expect(print(readBack(once), unit)).toBe(once);
            }),
        );
    });
});

test('no locale has a say', () => {
    const symbols = Object.keys(units) as UnitSymbol[];
    for (const symbol of symbols)
        expect(print(toSI(1234.5, units[symbol]), units[symbol])).toMatch(/^123[45]/);
});
