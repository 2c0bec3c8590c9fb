import { describe, expect, test } from 'vitest';
import type { Measure } from '../plan/measure.ts';
import type { Origin, Place } from '../plan/origin.ts';
import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { si } from '../units/quantity.ts';
import { type Rounding, removeProperty, replaceProperty, replaceValue, swap } from './fixes.ts';

const place = (start: number, end: number): Place => ({
    uri: 'file:///plan.spread',
    start,
    end,
    range: { start: { line: 0, character: start }, end: { line: 0, character: end } },
});

const origin = (more: Partial<Origin> = {}): Origin => ({
    place: place(5, 9),
    property: place(0, 9),
    voice: 'position',
    ...more,
});

function written(text: string, more: Partial<Origin> = {}): Measure {
    const quantity = parseQuantity(text);
    if (isQuantityError(quantity)) throw new Error(quantity.message);
    return { si: si(quantity), quantity, origin: origin(more), standing: 'measured' };
}

const replaced = (text: string, to: number, rounding?: Rounding) =>
    replaceValue((put) => put, written(text), to, rounding)?.edits[0]?.text;

describe('a new number in the place of an old one', () => {
    test.each([
        ['34 m', 33.62, '33.6 m'],
        ['34m', 33.62, '33.6m'],
        ['34.25 m', 33.621, '33.62 m'],
        ['112 ft', 33.6, '110 ft'],
        ['6 ft 4 in', 1.83, '6 ft'],
        ['6 ft 4 in', 1.98, '6 ft 6 in'],
        ['330 mm', 0.2951, '295 mm'],
        ['8 knots', 3.6, '7 knots'],
    ])('keeps the form of %s', (before, to, after) => {
        expect(replaced(before, to)).toBe(after);
    });

    test('is rounded to the side that keeps the limit', () => {
        expect(replaced('9.5 m', 9.14, 'down')).toBe('9.1 m');
        expect(replaced('9.5 m', 9.14, 'up')).toBe('9.2 m');
        expect(replaced('9.5 m', 9.2, 'up')).toBe('9.2 m');
        expect(replaced('31 ft', 9.14, 'down')).toBe('29 ft');
    });

    test('a drag that was written as a share stays one', () => {
        const drag: Measure = { ...written('40 %'), si: 94.1 };
        expect(replaceValue((put) => put, drag, 94.1 * 0.825)?.edits[0]?.text).toBe('33 %');
    });

    test('is not written over a default, nor into another plan', () => {
        const never = { voice: 'default' } as const;
        expect(replaceValue((put) => put, written('4 m', never), 5)).toBeUndefined();
        expect(replaceValue((put) => put, written('4 m', { inherited: true }), 5)).toBeUndefined();
        expect(replaceValue((put) => put, { ...written('4 m'), si: 0 }, 5)).toBeUndefined();
    });
});

describe('whole properties', () => {
    test('are written anew, or taken out', () => {
        const edits = replaceProperty('Move it', origin(), 'back wave 4')?.edits;
        expect(edits).toEqual([{ at: place(0, 9), text: 'back wave 4' }]);
        expect(removeProperty('Take it out', origin())?.edits).toEqual([{ at: place(0, 9), text: '' }]);
        expect(removeProperty('Take it out', origin({ inherited: true }))).toBeUndefined();
    });
});

describe('a swap', () => {
    const named = (name: string, start: number, more: Partial<Origin> = {}) => ({
        value: { name },
        origin: origin({ place: place(start, start + name.length), ...more }),
    });

    test('puts each name in the place of the other', () => {
        expect(swap('Swap', named('ink', 10), named('smoke', 30))?.edits).toEqual([
            { at: place(10, 13), text: 'smoke' },
            { at: place(30, 35), text: 'ink' },
        ]);
    });

    test('is not made with what another plan says, or with what is no name', () => {
        expect(swap('Swap', named('ink', 10), named('smoke', 30, { inherited: true }))).toBeUndefined();
        expect(swap('Swap', named('ink', 10), named('smoke', 30, { place: place(30, 99) }))).toBeUndefined();
    });
});
