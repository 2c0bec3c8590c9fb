import { describe, expect, test } from 'vitest';
import type { Measure } from '../plan/measure.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import type { Origin, Place } from '../plan/origin.ts';
import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { si } from '../units/quantity.ts';
import {
    asWritten,
    inItsForm,
    type Rounding,
    removeProperty,
    replaceProperty,
    replaceSpan,
    replaceValue,
    replaceWord,
    swap,
    toldAs,
} from './fixes.ts';

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

describe('a number told before it is written', () => {
    test('tells what it means once it is rounded as it is written', () => {
        expect(asWritten(written('34 m'), 33.62, 'nearest')).toEqual({
            text: '33.6 m',
            si: expect.closeTo(33.6, 9),
        });
        expect(asWritten(written('6 ft 4 in'), 1.98, 'nearest')?.si).toBeCloseTo(78 * 0.0254, 9);
        expect(inItsForm(written('9.5 m'), 9.2, 'down')).toBe('9.2 m');
        expect(inItsForm(written('9.5 m'), 9.2, 'up')).toBe('9.2 m');
    });

    test('nobody wrote what is computed, is nothing, or cannot be', () => {
        const { quantity, ...computed } = written('34 m');
        expect(asWritten(computed, 30, 'nearest')).toBeUndefined();
        expect(asWritten({ ...written('34 m'), si: 0 }, 30, 'nearest')).toBeUndefined();
        expect(asWritten(written('34 m'), Number.NaN, 'nearest')).toBeUndefined();
        expect(asWritten(written('34 m'), Number.POSITIVE_INFINITY, 'nearest')).toBeUndefined();
    });

    test('a number that stood in no text is told with its unit', () => {
        const told = (text: string, to: number) => {
            const { quantity, ...rest } = written(text);
            return inItsForm(
                { ...rest, quantity: { ...quantity!, text: undefined as never } },
                to,
                'nearest',
            );
        };
        expect(told('34 m', 33.62)).toBe('33.6 m');
        expect(told('3', 2)).toBe('2');
    });

    test('a share of the class is told with the load that it means', () => {
        // 33 % of 24 kg are 7.92 kg.
        const drag: Measure = { ...written('40 %'), si: 0.4 * 24 * 9.80665 };
        expect(toldAs(drag, 0.33 * 24 * 9.80665, 'nearest')).toBe('33 % of class (7.9 kg)');
        const { quantity, ...computed } = drag;
        expect(toldAs(computed, 10 * 9.80665, 'nearest')).toBe('10 kg');
        const load: Measure = { ...written('10 kg'), si: 10 * 9.80665 };
        expect(toldAs(load, 8 * 9.80665, 'nearest')).toBe('8 kg');
        expect(replaceValue((text) => `Set ${text}`, drag, 0.33 * 24 * 9.80665)?.title).toBe(
            'Set 33 % of class',
        );
        expect(replaceValue((text) => `Set ${text}`, written('40 %'), 0.33)?.title).toBe('Set 33 %');
    });
});

describe('what others use as well', () => {
    const titled = (more: Partial<Origin>) =>
        replaceValue((text) => `Make it ${text}`, written('4 m', more), 5)?.title;

    test('is named in the title', () => {
        expect(titled({ voice: 'outfit', definition: 'Own' })).toBe('Make it 5 m in Own');
        expect(titled({ voice: 'method', definition: 'Soft' })).toBe('Make it 5 m in Soft, for every line');
        for (const voice of ['spread', 'position'] as const)
            expect(titled({ voice, definition: 'Today' })).toBe('Make it 5 m');
        expect(titled({ voice: 'outfit' })).toBe('Make it 5 m');
    });

    test('is left alone where the library says it, or nobody wrote a word', () => {
        const library = { ...place(5, 9), uri: `${LIBRARY_SCHEME}:written-rules` };
        expect(titled({ voice: 'rules', place: library })).toBeUndefined();
        expect(titled({ place: { ...place(5, 9), uri: `file:///${LIBRARY_SCHEME}:` } })).toBe('Make it 5 m');
        expect(titled({ place: place(5, 5) })).toBeUndefined();
    });
});

describe('a word and a range', () => {
    const said = (value: string, more: Partial<Origin> = {}) => ({
        value,
        origin: origin({ place: place(5, 5 + value.length), ...more }),
    });

    test('a word is written in the place of a word, and of nothing else', () => {
        expect(replaceWord('Rig it', said('single'), 'circle')).toEqual({
            title: 'Rig it',
            edits: [{ at: place(5, 11), text: 'circle' }],
        });
        expect(replaceWord('Rig it', said('single', { inherited: true }), 'circle')).toBeUndefined();
        expect(replaceWord('Rig it', said('single', { place: place(5, 9) }), 'circle')).toBeUndefined();
    });

    test('a range is drawn in at both ends, and not where rounding leaves nothing of it', () => {
        const span = (more: Partial<Origin> = {}) => ({
            from: written('7 kn', { place: place(10, 14) }),
            to: written('9 kn', { place: place(18, 22), ...more }),
        });
        const knots = (figure: number) => (figure * 1852) / 3600;
        const within = (from: number, to: number) => ({ from: knots(from), to: knots(to) });
        const keep = (from: string, to: string) => `Keep her at ${from} to ${to}`;
        expect(replaceSpan(keep, span(), within(7.42, 8.18))).toEqual({
            title: 'Keep her at 7.4 kn to 8.2 kn',
            edits: [
                { at: place(10, 14), text: '7.4 kn' },
                { at: place(18, 22), text: '8.2 kn' },
            ],
        });
        expect(replaceSpan(keep, span(), within(7.98, 8.02))).toBeUndefined();
        expect(replaceSpan(keep, span(), within(8.4, 7.9))).toBeUndefined();
        expect(replaceSpan(keep, span({ inherited: true }), within(7.4, 8.2))).toBeUndefined();
        const { to, ...from } = span({ inherited: true });
        expect(replaceSpan(keep, { from: to, to: from.from }, within(7.4, 8.2))).toBeUndefined();
    });
});
