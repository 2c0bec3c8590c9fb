import type { Season } from '../../plan/season/bites.ts';
import { type Grouping, groupings } from '../../plan/season/groupings.ts';
import { CONFIDENCE, countInterval, shareInterval } from '../../plan/season/intervals.ts';
import { type Tally, tallies, total } from '../../plan/season/tally.ts';
import { eventRows, type SeasonOptions } from './csv.ts';

/** Raised when a field changes its meaning or goes; new fields may appear without. */
export const seasonVersion = 1;

/** A season as JSON: every count, every rate with what it is of and its interval, every event. */
export function seasonJson(
    season: Season,
    version: string,
    options: SeasonOptions & { readonly by?: readonly Grouping[] } = {},
): string {
    const { by = groupings } = options;
    const report = {
        format: 'layback-season',
        version: seasonVersion,
        tool: { name: 'layback', version },
        confidence: CONFIDENCE,
        days: season.logs.map(({ date, title }) => ({ date: date.value, title })),
        total: tallyJson(total(season)),
        groups: Object.fromEntries(
            by.map((grouping) => [grouping, tallies(season, grouping).map(tallyJson)]),
        ),
        events: eventRows(season, options),
    };
    return `${JSON.stringify(report, undefined, 2)}\n`;
}

function tallyJson(tally: Tally) {
    const { of, raised, bit, hooked, boated, released, landed, lost, fished, bitWhileFished } = tally;
    return {
        ...(of !== undefined && { of }),
        raised,
        bit,
        hooked,
        boated,
        released,
        landed,
        lost,
        ...(bit > 0 && { hookedOfBites: { hits: hooked, of: bit, ...shareInterval(hooked, bit) } }),
        ...(hooked > 0 && { boatedOfHooked: { hits: boated, of: hooked, ...shareInterval(boated, hooked) } }),
        ...(fished !== undefined &&
            bitWhileFished !== undefined && {
                bitesPerHour: {
                    hits: bitWhileFished,
                    hours: fished / 3600,
                    ...perHour(countInterval(bitWhileFished), fished / 3600),
                },
            }),
    };
}

function perHour({ low, high }: { low: number; high: number }, hours: number) {
    return { low: low / hours, high: high / hours };
}
