import { dateOf, dayNumber, type IsoDate } from './date.ts';

/** Why a text is no time of day or no offset from UTC. */
export interface TimeError {
    readonly kind: 'not-a-time' | 'no-such-time' | 'not-a-zone' | 'no-such-zone';
    /** Texts that would be accepted; may be empty. */
    readonly instead: readonly string[];
    readonly message: string;
}

/** Seconds in a day of 24 hours; leap seconds are left out, as in every log on board. */
export const DAY = 86_400;

/** Seconds since midnight of `07:42` or `07:42:30`. */
export function parseTime(text: string): number | TimeError {
    const [, hours, minutes, seconds = '00'] = /^(\d{2}):(\d{2})(?::(\d{2}))?$/.exec(text) ?? [];
    if (hours === undefined) return notATime(text);
    if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 59) {
        const message = `There is no time ${text}: the day runs from 00:00 to 23:59:59.`;
        return { kind: 'no-such-time', instead: text.startsWith('24:00') ? ['00:00'] : [], message };
    }
    return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
}

/** The same where one can be read; what cannot is told of where it is written. */
export function secondsOf(text: string | undefined): number | undefined {
    const seconds = text === undefined ? undefined : parseTime(text);
    return typeof seconds === 'number' ? seconds : undefined;
}

/** The time of day, `07:42`, with seconds only where there are any; days are dropped. */
export function printTime(seconds: number): string {
    const whole = Math.round(seconds);
    const inDay = whole - Math.floor(whole / DAY) * DAY;
    const parts = [Math.floor(inDay / 3600), Math.floor(inDay / 60) % 60, inDay % 60];
    return parts
        .slice(0, parts[2] ? 3 : 2)
        .map(twoDigits)
        .join(':');
}

/**
 * Times as a log lists them, carried past midnight: each falls on the day that brings it nearest to the one
 * before it, never before the first day. So 23:50, 00:10 cross midnight, and 07:42, 07:40 are noted late.
 *
 * @param times  seconds since midnight, in the log's order
 * @returns seconds since the midnight of the first day
 */
export function pastMidnight(times: readonly number[]): number[] {
    let before: number | undefined;
    return times.map((time) => {
        const days = before === undefined ? 0 : Math.max(0, Math.round((before - time) / DAY));
        before = time + days * DAY;
        return before;
    });
}

/** Minutes east of UTC of `+10:00` or `Z`. */
export function parseZone(text: string): number | TimeError {
    if (text === 'Z') return 0;
    const [, sign, hours, minutes] = /^([+\-−])(\d{2}):(\d{2})$/.exec(text) ?? [];
    if (sign === undefined) return notAZone(text);
    const size = Number(hours) * 60 + Number(minutes);
    const offset = sign === '+' ? size : 0 - size;
    // Clocks on earth stand between these two; so do all in the time zone database, from memory.
    if (Number(minutes) <= 59 && offset >= -12 * 60 && offset <= 14 * 60) return offset;
    return {
        kind: 'no-such-zone',
        instead: [],
        message: `Clocks run from -12:00 to +14:00, none at ${text}.`,
    };
}

export function printZone(minutes: number): string {
    const size = Math.abs(minutes);
    return `${minutes < 0 ? '-' : '+'}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}

/** Seconds since 1970-01-01T00:00Z of a time in a zone; `seconds` may run past the date's own day. */
export function instant(date: IsoDate, seconds: number, zone: number): number {
    return dayNumber(date) * DAY + seconds - zone * 60;
}

/** ISO 8601 with the zone, `2026-02-15T00:10+10:00`; seconds past the date's day move the date. */
export function printMoment(date: IsoDate, seconds: number, zone?: number): string {
    const whole = Math.round(seconds);
    const day = dateOf(dayNumber(date) + Math.floor(whole / DAY));
    return `${day}T${printTime(whole)}${zone === undefined ? '' : printZone(zone)}`;
}

function notATime(text: string): TimeError {
    const [, hours = '', minutes = '', seconds] =
        /^(\d{1,2})[:.h]?(\d{2})(?:[:.](\d{2}))?$/.exec(text.trim()) ?? [];
    const padded = `${hours.padStart(2, '0')}:${minutes}${seconds ? `:${seconds}` : ''}`;
    const instead = hours && typeof parseTime(padded) === 'number' ? [padded] : [];
    const message = `“${text}” is no time of day: hours and minutes, such as 07:42.${write(instead)}`;
    return { kind: 'not-a-time', instead, message };
}

function notAZone(text: string): TimeError {
    const [, sign = '', hours = '', minutes = '00'] =
        /^(?:UTC|GMT)?\s*([+\-−])(\d{1,2}):?(\d{2})?$/i.exec(text.trim()) ?? [];
    const padded = `${sign}${hours.padStart(2, '0')}:${minutes}`;
    const instead = sign && padded !== text && typeof parseZone(padded) === 'number' ? [padded] : [];
    const message = `“${text}” is no offset from UTC: such as +10:00, or Z for UTC itself.${write(instead)}`;
    return { kind: 'not-a-zone', instead, message };
}

function write(instead: readonly string[]): string {
    return instead.length > 0 ? ` Write ${instead.join(' or ')}.` : '';
}

function twoDigits(number: number): string {
    return String(number).padStart(2, '0');
}
