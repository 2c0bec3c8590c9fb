import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, dateOf, dayNumber, daysBetween, parseDate } from '../../language/src/units/date.ts';
import {
    instant,
    parseTime,
    parseZone,
    pastMidnight,
    printMoment,
    printTime,
    printZone,
} from '../../language/src/units/time.ts';

/** The platform's calendar, as days since 1970 and back. */
const platformDays = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;
const platformDate = (days: number) => new Date(days * 86_400_000).toISOString().slice(0, 10);

const first = platformDays('0001-01-01');
const last = platformDays('9999-12-31');
const anyDay = fc.integer({ min: first, max: last });
const clock = (text: string) => parseTime(text) as number;

describe("the calendar is the platform's", () => {
    test('on every day of a whole cycle of 400 years, and at both ends of the range', () => {
        for (let days = platformDays('1999-12-31'); days < platformDays('2400-03-02'); days++) {
            const date = platformDate(days);
            if (dateOf(days) !== date || dayNumber(date) !== days || parseDate(date) !== date) {
                expect.fail(`${date}: day ${dayNumber(date)} for ${days}, back as ${dateOf(days)}`);
            }
        }
        expect([dateOf(first), dateOf(last)]).toEqual(['0001-01-01', '9999-12-31']);
    });

    test('on any day of the range', () => {
        fc.assert(
            fc.property(anyDay, anyDay, (a, b) => {
                expect(dateOf(a)).toBe(platformDate(a));
                expect(daysBetween(platformDate(a), platformDate(b))).toBe(b - a);
                expect(addDays(platformDate(a), b - a)).toBe(platformDate(b));
            }),
            { numRuns: 2000 },
        );
    });

    test('also about which days there are', () => {
        for (let year = 1896; year <= 2104; year++) {
            for (let month = 1; month <= 12; month++) {
                for (let day = 1; day <= 31; day++) {
                    const two = (n: number) => String(n).padStart(2, '0');
                    const text = `${year}-${two(month)}-${two(day)}`;
                    const rolled = new Date(Date.UTC(year, month - 1, day)).getUTCMonth() !== month - 1;
                    if ((typeof parseDate(text) !== 'string') !== rolled) expect.fail(text);
                }
            }
        }
    });
});

describe('a date that is none is refused by name', () => {
    test.each([
        ['2026-13-01', 'no-such-month', []],
        ['2026-00-10', 'no-such-month', []],
        ['2026-02-29', 'no-such-day', ['2026-02-28']],
        ['1900-02-29', 'no-such-day', ['1900-02-28']],
        ['2026-04-31', 'no-such-day', ['2026-04-30']],
        ['2026-04-00', 'no-such-day', []],
        ['2026-2-4', 'not-a-date', ['2026-02-04']],
        ['2026/02/14', 'not-a-date', ['2026-02-14']],
        ['14/02/2026', 'not-a-date', ['2026-02-14']],
        ['3.4.2026', 'not-a-date', ['2026-04-03', '2026-03-04']],
        ['14/02/26', 'not-a-date', []],
        ['20260214', 'not-a-date', []],
        ['0000-01-01', 'not-a-date', []],
        ['2026-02-14T07:42', 'not-a-date', []],
        ['', 'not-a-date', []],
    ] as const)('%s: %s', (text, kind, instead) => {
        expect(parseDate(text)).toMatchObject({ kind, instead });
    });

    test('in words', () => {
        expect(parseDate('2026-02-30')).toMatchObject({ message: '2026-02 has the days 01 to 28, no 30.' });
    });

    test('the 29th of February comes every fourth year, but not in 1900, and in 2000', () => {
        const leaps = ['1896', '1900', '1996', '2000', '2024', '2026', '2100'].filter(
            (year) => typeof parseDate(`${year}-02-29`) === 'string',
        );
        expect(leaps).toEqual(['1896', '1996', '2000', '2024']);
    });

    test('and no sum is done with it', () => {
        expect(() => daysBetween('2026-02-30', '2026-03-01')).toThrow(RangeError);
        expect(() => addDays('9999-12-31', 1)).toThrow(RangeError);
        expect(() => addDays('0001-01-01', -1)).toThrow(RangeError);
        expect(() => dateOf(Number.NaN)).toThrow(RangeError);
    });
});

describe('a time of day', () => {
    test.each([
        ['00:00', 0],
        ['07:42', 27_720],
        ['07:42:30', 27_750],
        ['23:59:59', 86_399],
    ])('%s is %d seconds past midnight', (text, seconds) => {
        expect(parseTime(text)).toBe(seconds);
        expect(printTime(seconds)).toBe(text);
    });

    test.each([
        ['24:00', 'no-such-time', ['00:00']],
        ['07:60', 'no-such-time', []],
        ['23:59:60', 'no-such-time', []],
        ['7:42', 'not-a-time', ['07:42']],
        ['0742', 'not-a-time', ['07:42']],
        ['7.42', 'not-a-time', ['07:42']],
        ['7h42', 'not-a-time', ['07:42']],
        ['7:42 pm', 'not-a-time', []],
        ['noon', 'not-a-time', []],
    ] as const)('%s is none: %s', (text, kind, instead) => {
        expect(parseTime(text)).toMatchObject({ kind, instead });
    });

    test('every second of a day prints and reads back', () => {
        for (let second = 0; second < 86_400; second++) {
            if (parseTime(printTime(second)) !== second) expect.fail(printTime(second));
        }
    });
});

describe('a log runs on past midnight', () => {
    const told = (...texts: string[]) =>
        pastMidnight(texts.map(clock)).map(
            (seconds) => `${Math.floor(seconds / 86_400)} ${printTime(seconds)}`,
        );

    test('into the next day', () => {
        expect(told('21:15', '23:50', '00:10', '05:30')).toEqual([
            '0 21:15',
            '0 23:50',
            '1 00:10',
            '1 05:30',
        ]);
    });

    test('over more than one night', () => {
        expect(told('20:00', '02:00', '12:00', '20:00', '02:00')).toEqual([
            '0 20:00',
            '1 02:00',
            '1 12:00',
            '1 20:00',
            '2 02:00',
        ]);
    });

    test('while an event noted late stays on its own day', () => {
        expect(told('07:42', '07:40', '08:00')).toEqual(['0 07:42', '0 07:40', '0 08:00']);
        expect(told('23:50', '00:10', '23:58', '00:20')).toEqual([
            '0 23:50',
            '1 00:10',
            '0 23:58',
            '1 00:20',
        ]);
    });

    test('and a long wait on the first day is no night', () => {
        expect(told('05:00', '19:00')).toEqual(['0 05:00', '0 19:00']);
    });
});

describe('a zone', () => {
    test.each([
        ['+10:00', 600],
        ['-03:30', -210],
        ['+05:45', 345],
        ['+00:00', 0],
        ['+14:00', 840],
        ['-12:00', -720],
    ])('%s is %d minutes east of UTC', (text, minutes) => {
        expect(parseZone(text)).toBe(minutes);
        expect(printZone(minutes)).toBe(text);
    });

    test('Z is UTC', () => {
        expect(parseZone('Z')).toBe(0);
        expect(Object.is(parseZone('-00:00'), 0)).toBe(true);
    });

    test.each([
        ['+10', 'not-a-zone', ['+10:00']],
        ['+1000', 'not-a-zone', ['+10:00']],
        ['UTC+10', 'not-a-zone', ['+10:00']],
        ['AEST', 'not-a-zone', []],
        ['+15:00', 'no-such-zone', []],
        ['-12:30', 'no-such-zone', []],
        ['+10:75', 'no-such-zone', []],
    ] as const)('%s is none: %s', (text, kind, instead) => {
        expect(parseZone(text)).toMatchObject({ kind, instead });
    });

    test("fixes a moment as the platform's parser does", () => {
        const zone = fc.integer({ min: -48, max: 56 }).map((quarters) => quarters * 15);
        fc.assert(
            fc.property(anyDay, fc.nat(86_399), zone, (day, seconds, minutes) => {
                const date = platformDate(day);
                const text = printMoment(date, seconds, minutes);
                expect(instant(date, seconds, minutes)).toBe(Date.parse(text) / 1000);
            }),
        );
    });

    test('stands behind the time, and seconds past the day move the date', () => {
        expect(printMoment('2026-02-14', 86_400 + 600, 600)).toBe('2026-02-15T00:10+10:00');
        expect(printMoment('2026-12-31', 86_400)).toBe('2027-01-01T00:00');
    });
});
