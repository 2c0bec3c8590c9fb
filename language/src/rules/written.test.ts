import { expect, test } from 'vitest';
import type { Measure } from '../plan/measure.ts';
import type { Spread } from '../plan/model.ts';
import { firstWord, limitsFor, type RuleBook, writtenHere } from './written.ts';

const kilograms = (si: number) => ({ si }) as Measure;
const book = (...upTo: readonly (number | undefined)[]) =>
    ({
        title: 'Book',
        limits: upTo.map((most) => (most === undefined ? {} : { upTo: kilograms(most) })),
    }) as unknown as RuleBook;
const rowFor = (rules: RuleBook, lineClass: number) => limitsFor(rules, kilograms(lineClass))?.upTo?.si;

test('the row for a class is the least that still covers it, in whatever order the rows are written', () => {
    for (const rules of [book(10, 24, undefined), book(undefined, 24, 10), book(24, undefined, 10)]) {
        expect([6, 10, 11, 24, 37].map((lineClass) => rowFor(rules, lineClass))).toEqual([
            10,
            10,
            24,
            24,
            undefined,
        ]);
        expect(limitsFor(rules, kilograms(37))).toBeDefined();
    }
    expect(limitsFor(book(10, 24), kilograms(37))).toBeUndefined();
});

test('a limit is told with the book, and with the edition where it has one', () => {
    expect(writtenHere({ title: 'Club' } as RuleBook)).toBe('Club writes it here.');
    const edition = { value: 'the edition of 2 May' };
    expect(writtenHere({ title: 'Club', edition } as RuleBook)).toBe(
        'Club writes it here, after the edition of 2 May.',
    );
});

test('the event’s own word comes before its packs, each of them in turn', () => {
    const pack = (title: string, most?: number) => ({ title, ...(most && { most }) });
    const plan = (own: object, ...written: object[]) =>
        ({ event: { value: { title: 'Cup', own, written } } }) as unknown as Spread;
    const word = (spread: Spread) => {
        const found = firstWord(spread, (each) => (each as unknown as { most?: number }).most);
        return found && [found.book.title, found.limit];
    };
    expect(word(plan({ most: 3 }, pack('A', 4)))).toEqual(['Cup', 3]);
    expect(word(plan({}, pack('A'), pack('B', 5)))).toEqual(['B', 5]);
    expect(word(plan({}, pack('A')))).toBeUndefined();
    expect(word({} as Spread)).toBeUndefined();
});
