import type { Spread, SpreadLine } from '../plan/model.ts';
import type { Origin, Place } from '../plan/origin.ts';

/**
 * Where in its own plan a finding is shown.
 *
 * A drag may stand in a tackle file, a distance in the plan that this one is like: an editor underlines the word
 * by which this plan took it over, and the place where it was said becomes a related one.
 *
 * @param origins  of what is wrong, the most exact first
 * @param lines  the lines that it concerns, the one to blame first
 */
export function placeInPlan(origins: readonly Origin[], plan: Spread, lines: readonly SpreadLine[]): Place {
    const candidates = [
        ...origins,
        ...origins.map((origin) => referenceTo(origin, plan, lines[0])),
        ...lines.map((concerned) => concerned.origin),
        plan.origin,
    ];
    return (candidates.find((candidate) => candidate && isWrittenIn(candidate, plan)) ?? plan.origin).place;
}

/** Whether the words stand in the plan's own file, and not in a plan that it is like. */
function isWrittenIn({ place, voice, inherited }: Origin, plan: Spread): boolean {
    const lent = inherited && (voice === 'spread' || voice === 'position' || voice === 'default');
    return place.uri === plan.origin.place.uri && !lent;
}

function referenceTo({ voice }: Origin, plan: Spread, line: SpreadLine | undefined): Origin | undefined {
    switch (voice) {
        case 'outfit':
            return line?.outfit?.origin;
        // A hook rig or a leader of its own speaks as a lure, whatever it is rigged to.
        case 'lure':
        case 'bait':
        case 'teaser':
            return (line?.lure ?? line?.bait ?? line?.teaser)?.origin;
        case 'method':
            return (line?.method ?? plan.method)?.origin;
        case 'boat':
            return plan.boat?.origin;
        case 'species':
            return plan.target?.origin;
        case 'rules':
            return plan.event?.origin;
        default:
            return undefined;
    }
}
