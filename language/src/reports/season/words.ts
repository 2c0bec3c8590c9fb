import type { Grouping } from '../../plan/season/groupings.ts';
import { countInterval, shareInterval } from '../../plan/season/intervals.ts';
import type { Tally } from '../../plan/season/tally.ts';

export const groupingNames: Readonly<Record<Grouping, string>> = {
    position: 'Position',
    lure: 'Lure',
    method: 'Method',
    wave: 'Wave',
    speed: 'Speed',
    target: 'Target',
    species: 'Species',
};

/** `3 of 5, 60 % (14 to 95)`: what a rate is of stands before it, and how far it can be trusted behind. */
export function shareWords(hits: number, tries: number): string {
    if (tries === 0) return '';
    const { low, high } = shareInterval(hits, tries);
    return `${hits} of ${tries}, ${percent(hits / tries)} % (${percent(low)} to ${percent(high)})`;
}

/** Bites in ten hours of fishing a position: `2.1 (0.6 to 5.4)`. */
export function tenHoursWords({ bitWhileFished, fished }: Tally): string {
    if (bitWhileFished === undefined || fished === undefined) return '';
    const { low, high } = countInterval(bitWhileFished);
    const told = (count: number) => ((count / fished) * TEN_HOURS).toFixed(1);
    return `${told(bitWhileFished)} (${told(low)} to ${told(high)})`;
}

/** s */
const TEN_HOURS = 36_000;

export function hoursWords({ fished }: Tally): string {
    return fished === undefined ? '' : `${(fished / 3600).toFixed(1)} h`;
}

function percent(share: number): string {
    return (100 * share).toFixed(0);
}

/** What a reader must know to read the tables. */
export const readingNotes = [
    'Each count contains those to its right: a fish that was released had been hooked, and had bitten.',
    'In brackets: where the true rate lies, 95 times of 100 at least (exact intervals: Clopper and Pearson, Garwood).',
    'Hours count where the log says from when a plan was fished and it is known until when: the next plan, or the event’s lines out.',
    'A season tells what happened, not why: what was fished more, in better water or by better hands has more to tell.',
] as const;
