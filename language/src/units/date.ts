/** A day of the calendar in ISO 8601, `2026-02-14`: years 0001 to 9999, Gregorian throughout. */
export type IsoDate = string;

/** Why a text is no date. */
export interface DateError {
    readonly kind: 'not-a-date' | 'no-such-month' | 'no-such-day';
    /** Texts that would be accepted; may be empty. */
    readonly instead: readonly string[];
    readonly message: string;
}

export function parseDate(text: string): IsoDate | DateError {
    const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
    if (year === undefined || year === '0000') return notADate(text);
    if (Number(month) < 1 || Number(month) > 12) {
        return { kind: 'no-such-month', instead: [], message: `There is no month ${month}: ${form}.` };
    }
    const last = daysIn(Number(year), Number(month));
    if (Number(day) >= 1 && Number(day) <= last) return text;
    const instead = Number(day) > last ? [`${year}-${month}-${last}`] : [];
    const message = `${year}-${month} has the days 01 to ${last}, no ${day}.`;
    return { kind: 'no-such-day', instead, message };
}

/** Days from one date to another; negative where the second is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
    return dayNumber(to) - dayNumber(from);
}

/** @throws RangeError outside the years 0001 to 9999 */
export function addDays(date: IsoDate, days: number): IsoDate {
    return dateOf(dayNumber(date) + days);
}

/** Days since 1970-01-01. @throws RangeError for what `parseDate` refuses */
export function dayNumber(date: IsoDate): number {
    const checked = parseDate(date);
    if (typeof checked !== 'string') throw new RangeError(checked.message);
    const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
    return daysBefore(year, month) + day - 1 - daysBefore(1970, 1);
}

/** The date so many days after 1970-01-01. @throws RangeError outside the years 0001 to 9999 */
export function dateOf(dayNumber: number): IsoDate {
    const days = Math.floor(dayNumber) + daysBefore(1970, 1);
    // Never too late a year by more than one: 400 Gregorian years are exactly 146097 days.
    let year = Math.floor((days * 400) / 146_097) + 1;
    if (daysBefore(year, 1) > days) year--;
    else if (daysBefore(year + 1, 1) <= days) year++;
    if (!(year >= 1 && year <= 9999)) throw new RangeError('A date lies in the years 0001 to 9999.');
    let month = 12;
    while (daysBefore(year, month) > days) month--;
    const day = days - daysBefore(year, month) + 1;
    return [String(year).padStart(4, '0'), twoDigits(month), twoDigits(day)].join('-');
}

export function isLeapYear(year: number): boolean {
    return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

export function daysIn(year: number, month: number): number {
    if (month === 2) return isLeapYear(year) ? 29 : 28;
    return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Days from 0001-01-01 to the first of a month. */
function daysBefore(year: number, month: number): number {
    const past = year - 1;
    let days = past * 365 + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400);
    for (let each = 1; each < month; each++) days += daysIn(year, each);
    return days;
}

const form = 'a date is year-month-day, such as 2026-02-14';

function notADate(text: string): DateError {
    const instead = [...new Set(readings(text.trim()))].filter(
        (each) => each !== text && typeof parseDate(each) === 'string',
    );
    const advice = instead.length > 0 ? ` Write ${instead.join(' or ')}.` : '';
    return { kind: 'not-a-date', instead, message: `“${text}” is no date: ${form}.${advice}` };
}

/** What a date in another form may mean: a year that stands first leaves no doubt, one that stands last does. */
function readings(text: string): string[] {
    const [, first = '', second = '', third = ''] = /^(\d+)[-/.](\d+)[-/.](\d+)$/.exec(text) ?? [];
    const iso = (year: string, month: string, day: string) =>
        `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    if (first.length === 4) return [iso(first, second, third)];
    return third.length === 4 ? [iso(third, second, first), iso(third, first, second)] : [];
}

function twoDigits(number: number): string {
    return String(number).padStart(2, '0');
}
