import { describe, expect, test } from 'vitest';
import {
    classOf,
    lineClasses,
    lineClassSource,
    nearestClasses,
    printClass,
} from '../../language/src/units/line-class.ts';
import { quantity } from '../../language/src/units/quantity.ts';
import { units } from '../../language/src/units/unit.ts';

/** IGFA International Angling Rules, updated 27 October 2021: kilograms, test pounds, customary pounds. */
const published = `
     1    2.20    2
     2    4.40    4
     3    6.61    6
     4    8.81    8
     6   13.22   12
     8   17.63   16
    10   22.04   20
    15   33.06   30
    24   52.91   50
    37   81.57   80
    60  132.27  130
`
    .trim()
    .split('\n')
    .map((row) => row.trim().split(/\s+/).map(Number) as [number, number, number]);

test('the table is the published one', () => {
    expect(lineClasses.map(({ kg, testLb, customaryLb }) => [kg, testLb, customaryLb])).toEqual(published);
    expect(lineClassSource).toContain('27 October 2021');
});

test('the published test pounds are the kilograms in pounds with the third decimal cut off', () => {
    for (const [kg, testLb] of published) expect(testLb).toBe(Math.floor((kg / 0.45359237) * 100) / 100);
});

describe('a class is named', () => {
    test.each(published)('by %d kg, by %d lb of test and by %d lb as sold', (kg, testLb, customaryLb) => {
        expect(classOf(quantity(kg, units.kg))?.kg).toBe(kg);
        expect(classOf(quantity(testLb, units.lb))?.kg).toBe(kg);
        expect(classOf(quantity(customaryLb, units.lb))?.kg).toBe(kg);
    });

    test.each([
        [22.6796185, 'kg'], // 50 lb
        [24.5, 'kg'],
        [20, 'kg'],
        [52.9, 'lb'],
        [24, 'lb'],
        [24_000, 'g'],
        [235.4, 'N'],
        [24, 'm'],
        [0, 'kg'],
    ] as const)('and never by a conversion: %d %s names none', (number, symbol) => {
        expect(classOf(quantity(number, units[symbol]))).toBeUndefined();
    });
});

describe('a load that names no class stands between two', () => {
    test.each([
        [20, 'kg', [15, 24]],
        [22.7, 'kg', [15, 24]],
        [0.5, 'kg', [1]],
        [100, 'kg', [60]],
        [60, 'lb', [24, 37]],
        [25, 'lb', [10, 15]],
        [1, 'lb', [1]],
        [200, 'lb', [60]],
        [196.133, 'N', [15, 24]], // 20 kg
        [24, 'kg', [24]],
        [50, 'lb', [24]],
    ] as const)('%d %s: %o', (number, symbol, kilograms) => {
        expect(nearestClasses(quantity(number, units[symbol])).map(({ kg }) => kg)).toEqual(kilograms);
    });
});

test('a class is printed as it is spoken of, not as it converts', () => {
    const fifty = classOf(quantity(50, units.lb))!;
    expect(printClass(fifty)).toBe('24 kg (50 lb)');
    expect(printClass(fifty, 'lb')).toBe('50 lb (24 kg)');
});
