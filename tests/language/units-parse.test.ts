import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isQuantityError, parseQuantity } from '../../language/src/units/parse.ts';
import { si } from '../../language/src/units/quantity.ts';
import type { QuantityFault } from '../../language/src/units/quantity-error.ts';
import { type Dimension, type UnitSymbol, units } from '../../language/src/units/unit.ts';

function read(text: string, dimension?: Dimension) {
    const result = parseQuantity(text, dimension);
    if (isQuantityError(result)) throw new Error(`${text}: ${result.kind}: ${result.message}`);
    return result;
}

function refuse(text: string, dimension?: Dimension) {
    const result = parseQuantity(text, dimension);
    if (!isQuantityError(result))
        throw new Error(`${text} was read as ${result.number} ${result.unit.symbol}`);
    return result;
}

describe('a quantity is read from', () => {
    test.each([
        ['8 kn', 8, 'kn'],
        ['8kn', 8, 'kn'],
        ['  8.5  knots ', 8.5, 'kn'],
        ['30%', 30, '%'],
        ['30 %', 30, '%'],
        ['-2 °C', -2, '°C'],
        ['−2 C', -2, '°C'],
        ['+2 C', 2, '°C'],
        ['5 km/h', 5, 'km/h'],
        ['45°', 45, 'deg'],
        ['0.71 mm', 0.71, 'mm'],
        ['007 m', 7, 'm'],
        ['4', 4, 'count'],
        ['12\u00a0m', 12, 'm'],
    ] as const)('"%s"', (text, number, symbol: UnitSymbol) => {
        expect(read(text)).toEqual({ number, unit: units[symbol], text: text.trim() });
    });

    test.each(['6 ft 4 in', '6ft4in', '6 feet 4 inches', '6 ft  4in'])('feet and inches: "%s"', (text) => {
        expect(read(text)).toEqual({ number: 6, inches: 4, unit: units.ft, text });
        expect(si(read(text))).toBe(1.9304);
    });

    test('feet and inches below zero', () => {
        expect(si(read('-0 ft 6 in'))).toBe(-0.1524);
        expect(si(read('-1 ft 6 in'))).toBe(-0.4572);
    });
});

describe('what is no quantity is refused by name, with what to write instead', () => {
    const cases: readonly [string, Dimension | undefined, QuantityFault, string, readonly string[]][] = [
        ['', undefined, 'no-number', '', []],
        ['fast', undefined, 'no-number', 'fast', []],
        ['kn 8', undefined, 'no-number', 'kn 8', []],
        ['--8 kn', undefined, 'no-number', '-8 kn', []],
        ['8,5 kn', undefined, 'decimal-comma', '8,5', ['8.5 kn']],
        ['-8,5 C', undefined, 'decimal-comma', '8,5', ['-8.5 C']],
        ['1,500 m', undefined, 'decimal-comma', '1,500', ['1500 m', '1.500 m']],
        ['1,500.5 m', undefined, 'decimal-comma', '1,500.5', ['1500.5 m']],
        ['1,000,000 m', undefined, 'decimal-comma', '1,000,000', ['1000000 m']],
        ['.5 m', undefined, 'bare-point', '.5', ['0.5 m']],
        ['5. m', undefined, 'bare-point', '5.', ['5 m']],
        ['1/2 oz', undefined, 'fraction', '1/2', ['0.5 oz']],
        ['5 1/4 in', undefined, 'fraction', '5 1/4', ['5.25 in']],
        ['1/0 m', undefined, 'fraction', '1/0', []],
        [`${'9'.repeat(400)} m`, undefined, 'too-large', '9'.repeat(400), []],
        [`6 ft ${'9'.repeat(400)} in`, undefined, 'too-large', `${'9'.repeat(400)} in`, []],
        ['8', 'speed', 'no-unit', '8', ['8 kn', '8 km/h', '8 m/s']],
        ['8 konts', undefined, 'unknown-unit', 'konts', ['8 kn']],
        ['8 cubits', 'length', 'unknown-unit', 'cubits', []],
        ['8 wobble', 'count', 'unknown-unit', 'wobble', []],
        ['1e3 m', undefined, 'unknown-unit', 'e', []],
        ['3 nm', 'length', 'unclear-unit', 'nm', ['3 nmi']],
        ["6'", undefined, 'unclear-unit', "'", ['6 ft']],
        ['1 kN', 'load', 'unclear-unit', 'kN', ['1 N']],
        ['8 kg', 'speed', 'wrong-dimension', 'kg', ['8 kn']],
        ['30 m', 'time', 'wrong-dimension', 'm', ['30 min']],
        ['30 %', 'length', 'wrong-dimension', '%', []],
        ['4 kg', 'count', 'wrong-dimension', 'kg', []],
        ['6 ft 14 in', undefined, 'unsound-inches', '14 in', ['7.167 ft']],
        ['6.5 ft 4 in', undefined, 'unsound-inches', '4 in', ['6.833 ft']],
        ['6 m 4 in', undefined, 'left-over', '4 in', []],
        ['6 ft 4 cm', undefined, 'left-over', '4 cm', []],
        ['6 ft 4', undefined, 'left-over', '4', []],
        ['1 000 m', undefined, 'left-over', '000 m', []],
        ['8 kn 8 kn', undefined, 'left-over', '8 kn', []],
        ['8 kn about', undefined, 'left-over', 'about', []],
    ];

    test.each(cases)('"%s" as %s: %s', (text, dimension, kind, found, instead) => {
        const error = refuse(text, dimension);
        expect(error).toMatchObject({ kind, found, instead });
        expect(text.slice(error.at, error.at + found.length)).toBe(found);
    });

    test('the place of the fault counts from the start of the text, blanks included', () => {
        expect(refuse('   8 konts').at).toBe(5);
        expect(refuse('  -8,5 C').at).toBe(3);
        expect(refuse(' 8 kn 8 kn ').at).toBe(6);
    });

    test('what it proposes is itself accepted', () => {
        const mendable = cases.filter(([, , , , instead]) => instead.length > 0);
        expect(mendable.length).toBeGreaterThan(15);
        for (const [, dimension, , , instead] of mendable) {
            for (const text of instead) expect(read(text, dimension).text).toBe(text);
        }
    });
});

test.each([
    ['8,5 kn', undefined, 'Decimals take a point, thousands nothing. Write 8.5 kn.'],
    ['8 konts', undefined, '“konts” is not a unit. Write 8 kn.'],
    ['8 cubits', 'speed', '“cubits” is not a unit. Known here: kn, km/h, m/s, mph.'],
    ['3 nm', undefined, '“nm” could be nautical miles, nanometres or newton metres. Write 3 nmi.'],
    ['8 m', 'load', '“m” is a unit of length, not of load. Wanted: kg, g, N, lb, oz.'],
    ['8', 'angle', '8 has no unit. Write 8 deg.'],
] as const)('"%s" gets a sentence that can be read aloud', (text, dimension, message) => {
    expect(refuse(text, dimension).message).toBe(message);
});

test('no text whatever makes it fail, and what it accepts is a finite number', () => {
    const pieces = fc.constantFrom('6', '4', '.', ',', '-', ' ', 'ft', 'in', 'kn', '%', '°', 'x', '/', "'");
    const scraps = fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join(''));
    fc.assert(
        fc.property(fc.oneof(fc.string(), scraps), (text) => {
            const result = parseQuantity(text);
            if (!isQuantityError(result)) {
                expect(Number.isFinite(si(result))).toBe(true);
                return;
            }
            expect(text.slice(result.at, result.at + result.found.length)).toBe(result.found);
            expect(result.message).toMatch(/\.$/);
        }),
        { numRuns: 5000 },
    );
});
