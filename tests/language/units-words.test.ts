import { describe, expect, test } from 'vitest';
import { editDistance, nearest } from '../../language/src/units/nearest.ts';
import { units } from '../../language/src/units/unit.ts';
import {
    isUnitWord,
    nearestUnit,
    unclearUnit,
    unitOf,
    unitWords,
} from '../../language/src/units/unit-words.ts';

describe('a unit is known by', () => {
    test('its symbol', () => {
        for (const unit of Object.values(units)) {
            if (unit.symbol) expect(unitOf(unit.symbol)).toBe(unit);
        }
    });

    test.each([
        ['knots', 'kn'],
        ['kts', 'kn'],
        ['metres', 'm'],
        ['meters', 'm'],
        ['lbs', 'lb'],
        ['pounds', 'lb'],
        ['feet', 'ft'],
        ['inches', 'in'],
        ['fathoms', 'fathom'],
        ['kilos', 'kg'],
        ['kph', 'km/h'],
        ['°', 'deg'],
        ['degrees', 'deg'],
        ['C', '°C'],
        ['°C', '°C'],
        ['F', '°F'],
        ['L', 'l'],
        ['hrs', 'h'],
        ['percent', '%'],
    ] as const)('the word %s: %s', (word, symbol) => {
        expect(unitOf(word)).toBe(units[symbol]);
    });

    test.each([
        ['KN', 'kn'],
        ['Kg', 'kg'],
        ['MM', 'mm'],
        ['Knots', 'kn'],
        ['KM/H', 'km/h'],
        ['n', 'N'],
    ] as const)('a word in any case: %s is %s', (word, symbol) => {
        expect(unitOf(word)).toBe(units[symbol]);
    });
});

test('no two units share a word', () => {
    const words = Object.values(units).flatMap(({ symbol, aliases }) => [symbol.toLowerCase(), ...aliases]);
    expect(words.length).toBe(new Set(words).size);
    expect(unitWords.length).toBe(words.length - 1); // a count has no word
});

test.each(['', 'wave', 'from', 'constructor', 'knotsknotsknotsknots', 'm2', 'lb.', 'clip'])(
    '"%s" is no unit word',
    (word) => {
        expect(isUnitWord(word)).toBe(false);
    },
);

describe('a word that two people may read differently is refused', () => {
    test.each([
        ['nm', 'nmi'],
        ['NM', 'nmi'],
        ['M', 'm'],
        ['miles', 'nmi'],
        ['Miles', 'nmi'],
        ['kN', 'N'],
        ["'", 'ft'],
        ['"', 'in'],
    ] as const)('%s: rather %s', (word, symbol) => {
        expect(isUnitWord(word)).toBe(false);
        expect(unclearUnit(word)?.instead[0]).toBe(units[symbol]);
        expect(nearestUnit(word)).toBe(units[symbol]);
    });

    test('what is plain is not called unclear', () => {
        expect(unclearUnit('m')).toBeUndefined();
        expect(unclearUnit('KN')).toBeUndefined();
    });
});

describe('a slip of the pen finds its unit', () => {
    test.each([
        ['konts', 'kn'],
        ['knt', 'kn'],
        ['metrs', 'm'],
        ['fathem', 'fathom'],
        ['degress', 'deg'],
        ['kgg', 'kg'],
        ['poudns', 'lb'],
        ['km/hr', 'km/h'],
    ] as const)('%s: %s', (word, symbol) => {
        expect(nearestUnit(word)).toBe(units[symbol]);
    });

    test('of the dimension that is wanted', () => {
        expect(nearestUnit('k', 'load')).toBe(units.kg);
        expect(nearestUnit('k', 'speed')).toBe(units.kn);
        expect(nearestUnit('m', 'time')).toBe(units.min);
        expect(nearestUnit('miles', 'speed')).toBeUndefined();
    });

    test('or none, where none is near', () => {
        expect(nearestUnit('furlongs')).toBeUndefined();
        expect(nearestUnit('x')).toBeUndefined();
    });
});

describe('the distance between two words', () => {
    // Worked by hand; the first is the textbook pair.
    test.each([
        ['kitten', 'sitting', 3],
        ['', 'lure', 4],
        ['lure', 'lure', 0],
        ['sped', 'speed', 1],
        ['lenght', 'length', 1],
        ['clpi', 'clip', 1],
        ['ca', 'abc', 3],
        ['rigger', 'riger', 1],
    ])('%s to %s is %d', (a, b, slips) => {
        expect(editDistance(a, b)).toBe(slips);
        expect(editDistance(b, a)).toBe(slips);
    });
});

describe('the nearest candidate', () => {
    test('is the one with fewest slips, whatever the case', () => {
        expect(nearest('Sped', ['sea', 'speed', 'spread'])).toBe('speed');
        expect(nearest('lenght', ['length', 'leader'])).toBe('length');
    });

    test('shares its first letter where two are as near, or else comes first', () => {
        expect(nearest('kb', ['lb', 'kg'])).toBe('kg');
        expect(nearest('bat', ['cat', 'rat'])).toBe('cat');
    });

    test('is within the limit', () => {
        expect(nearest('sped', ['spelled'])).toBeUndefined();
        expect(nearest('sped', ['spelled'], 3)).toBe('spelled');
        expect(nearest('sped', ['speed'], 0)).toBeUndefined();
    });

    test('keeps at least one letter of the word', () => {
        expect(nearest('x', ['m', 's'])).toBeUndefined();
        expect(nearest('', ['m'])).toBeUndefined();
    });

    test('is not sought in a word too long to be a slip', () => {
        expect(nearest('m'.repeat(200_000), ['metres'], 3)).toBeUndefined();
    });
});
