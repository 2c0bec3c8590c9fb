import type { Season } from '../../plan/season/bites.ts';
import { type Tally, tallies } from '../../plan/season/tally.ts';
import { hoursWords, shareWords, tenHoursWords } from './words.ts';

/**
 * What a season tells of one position, as rows of a name, a count or a rate with what it is of, and how far it can be
 * trusted. All plans together: a position is compared with itself.
 *
 * @returns undefined for one that was neither fished nor bitten
 */
export function positionRecord(season: Season, position: string): [string, string, string?][] | undefined {
    const tally = tallies(season, 'position').find(({ of }) => of === position);
    return tally && recordRows(season, tally);
}

function recordRows({ logs }: Season, tally: Tally): [string, string, string?][] {
    const { raised, bit, hooked, boated, released } = tally;
    const [days, hours, often] = [logs.length, hoursWords(tally), tenHoursWords(tally)];
    const trust = 'in brackets: 95 times of 100 the true rate';
    return [
        ['Season', days === 1 ? '1 day' : `${days} days`, hours && `fished ${hours}`],
        ['Raised', String(raised)],
        ['Bit', String(bit)],
        ['Hooked, of bites', bit > 0 ? shareWords(hooked, bit) : '0', bit > 0 ? trust : undefined],
        ['To the boat, of hooked', hooked > 0 ? shareWords(boated, hooked) : '0'],
        ['Released', String(released)],
        ['Bites in 10 h', often || 'not known', often ? undefined : 'no log says how long it was fished'],
    ];
}
