import { fromSI } from '../../units/quantity.ts';
import { units } from '../../units/unit.ts';
import type { Bite, Fished, Season } from './bites.ts';
import type { Grouping } from './groupings.ts';

/** What happened in one group. Each count is of events; those of a row contain the ones to their right. */
export interface Tally {
    /** What they have in common; absent for those of which it is not known. */
    readonly of?: string;
    readonly raised: number;
    readonly bit: number;
    readonly hooked: number;
    readonly boated: number;
    readonly released: number;
    readonly landed: number;
    readonly lost: number;
    /** s that it was fished; absent where that cannot be told, of this group or at all. */
    readonly fished?: number;
    /** Bites within these hours: only they can be told by the hour. */
    readonly bitWhileFished?: number;
}

/** Every group of a season, the one with the most bites first; what is not known at the end. */
export function tallies(season: Season, by: Grouping): Tally[] {
    const groups = new Map<string | undefined, Bite[]>();
    for (const bite of season.bites) {
        addTo(groups, groupOf(bite, by), bite);
    }
    const hours = by === 'position' ? hoursByPosition(season.fished) : new Map<string, readonly Fished[]>();
    // A position that was fished and saw nothing says as much as one that did.
    for (const name of hours.keys()) if (!groups.has(name)) groups.set(name, []);
    return [...groups]
        .map(([of, bites]) => tallyOf(of, bites, of === undefined ? undefined : hours.get(of)))
        .sort(byBites);
}

/** The whole season as one group. */
export function total({ bites }: Season): Tally {
    return tallyOf(undefined, bites, undefined);
}

function tallyOf(
    of: string | undefined,
    bites: readonly Bite[],
    fished: readonly Fished[] | undefined,
): Tally {
    const count = (what: keyof Bite['went']) => bites.filter(({ went }) => went[what]).length;
    const timed = fished?.filter(({ seconds }) => seconds !== undefined) ?? [];
    const isTimed = ({ log, plan }: Bite) => timed.some((each) => each.log === log && each.plan === plan);
    return {
        ...(of !== undefined && { of }),
        raised: count('raised'),
        bit: count('bit'),
        hooked: count('hooked'),
        boated: count('boated'),
        released: count('released'),
        landed: count('landed'),
        lost: count('lost'),
        ...(timed.length > 0 && {
            fished: timed.reduce((sum, { seconds }) => sum + seconds!, 0),
            bitWhileFished: bites.filter((bite) => bite.went.bit && isTimed(bite)).length,
        }),
    };
}

function groupOf({ event, lure, method, wave, speed, target }: Bite, by: Grouping): string | undefined {
    switch (by) {
        case 'position':
            return event.position?.value.name;
        case 'lure':
            return lure;
        case 'method':
            return method;
        case 'wave':
            return wave === undefined ? undefined : `wave ${wave}`;
        case 'speed':
            return speed === undefined ? undefined : bandOf(fromSI(speed, units.kn));
        case 'target':
            return target;
        case 'species':
            return event.species?.value;
    }
}

/** Whole knots, since nobody holds a boat closer than that. */
function bandOf(knots: number): string {
    const whole = Math.floor(knots + 1e-9);
    return `${whole} kn to ${whole + 1} kn`;
}

function hoursByPosition(fished: readonly Fished[]): Map<string, Fished[]> {
    const hours = new Map<string, Fished[]>();
    for (const each of fished) {
        for (const { position, role } of each.plan.lines) {
            if (role === 'standby') continue;
            addTo(hours, position.name, each);
        }
    }
    return hours;
}

function addTo<K, T>(groups: Map<K, T[]>, key: K, entry: T): void {
    const group = groups.get(key);
    if (group) group.push(entry);
    else groups.set(key, [entry]);
}

function byBites(a: Tally, b: Tally): number {
    if ((a.of === undefined) !== (b.of === undefined)) return a.of === undefined ? 1 : -1;
    return b.bit - a.bit || b.raised - a.raised || ((a.of ?? '') < (b.of ?? '') ? -1 : 1);
}
