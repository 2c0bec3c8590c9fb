import { describe, expect, test } from 'vitest';
import type { Measure } from '../plan/measure.ts';
import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { asForce, si } from '../units/quantity.ts';
import { capital, counted, listed, say, sayApart } from './say.ts';

const place = {
    uri: '',
    start: 0,
    end: 0,
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
};

function written(text: string, value?: number): Measure {
    const quantity = parseQuantity(text);
    if (isQuantityError(quantity)) throw new Error(quantity.message);
    return {
        si: value ?? si(quantity),
        quantity,
        origin: { place, property: place, voice: 'position' },
        standing: 'measured',
    };
}

describe('a number in a message', () => {
    test('is repeated in the words of its author', () => {
        expect(say.length(written('6 ft 4 in'))).toBe('6 ft 4 in');
        expect(say.load(written('9.5 kg', 9.5 * 9.80665))).toBe('9.5 kg');
        expect(say.load(written('21 lb', asForce(written('21 lb').quantity!)))).toBe('21 lb');
    });

    test('that was computed is told like another, or in the usual unit', () => {
        expect(say.length(33.62, written('110 ft'))).toBe('110 ft');
        expect(say.length(33.62)).toBe('33.6 m');
        expect(say.speed(4.1156)).toBe('8 kn');
    });

    test('of drag that was written as a share is told as a load', () => {
        expect(say.load(written('40 %', 9.6 * 9.80665))).toBe('9.6 kg');
    });

    test('of a line class is never converted', () => {
        expect(say.lineClass(written('50 lb', 24))).toBe('50 lb');
        expect(say.lineClass(written('24 kg', 24))).toBe('24 kg');
    });
});

describe('two numbers set against each other', () => {
    test('a limit stays as it was published', () => {
        expect(sayApart.length(written('9.3 m'), written('9.14 m'))).toEqual(['9.3 m', '9.14 m']);
        expect(sayApart.length(written('0.75 m'), written('68.58 cm'))).toEqual(['0.75 m', '68.58 cm']);
    });

    test('of two systems, the first is said in both', () => {
        expect(sayApart.length(written('31 ft'), written('9.14 m'))).toEqual(['31 ft (9.45 m)', '9.14 m']);
    });

    test('are never told alike where they differ', () => {
        expect(sayApart.length(12.194, 12.19)).toEqual(['12.194 m', '12.19 m']);
        expect(sayApart.speed(4.11, 4.14)).toEqual(['7.99 kn', '8.05 kn']);
    });
});

test('words around numbers', () => {
    expect([counted(1, 'line'), counted(3, 'line')]).toEqual(['1 line', '3 lines']);
    expect([listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'], 'or')]).toEqual([
        'a',
        'a and b',
        'a, b or c',
    ]);
    expect(capital('port long rigger')).toBe('Port long rigger');
});

describe('every dimension', () => {
    test('is told in the usual unit where nobody wrote a number', () => {
        expect(say.load(9.80665 * 3)).toBe('3 kg');
        expect(say.mass(0.25)).toBe('0.25 kg');
        expect(say.angle(Math.PI / 6)).toBe('30 deg');
        expect(say.share(0.4)).toBe('40 %');
        expect(say.time(90)).toMatch(/^(90 s|1\.5 min)$/);
        expect(say.count(3)).toBe('3');
    });

    test('of a class is told as it was written, or else in kilograms', () => {
        expect(say.lineClass(written('50 lb'))).toBe('50 lb');
        const { quantity, ...computed } = written('24 kg');
        expect(say.lineClass(computed)).toBe('24 kg');
    });

    test('is told apart: what was written stays, beside what was computed', () => {
        const twelve = written('12 kg', 12 * 9.80665);
        expect(sayApart.load(12.04 * 9.80665, twelve)).toEqual([
            expect.stringMatching(/^12\.04? kg$/),
            '12 kg',
        ]);
        expect(sayApart.load(twelve, 12.5 * 9.80665)).toEqual(['12 kg', '12.5 kg']);
        expect(sayApart.angle(Math.PI / 6, Math.PI / 6 + 0.001)).toEqual([
            '30 deg',
            expect.stringMatching(/^30\.\d+ deg$/),
        ]);
        expect(sayApart.speed(4.1156, written('9 kn'))).toEqual(['8 kn', '9 kn']);
    });
});
