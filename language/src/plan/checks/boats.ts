import { printQuantity } from '../../units/print.ts';
import type { Finding } from '../finding.ts';
import type { Measure } from '../measure.ts';
import type { Boat, Outriggers } from '../model.ts';
import { ownPlace } from './own.ts';
import { problem } from './problem.ts';

/** Sizes of a boat and its poles that do not fit one another. */
export function checkBoat(boat: Boat, uri: string): Finding[] {
    return [
        ...checkSize(boat, 'beam', uri),
        ...checkSize(boat, 'waterline', uri),
        ...(boat.outriggers ? checkPole(boat.outriggers, 'pole', uri) : []),
        ...(boat.centreRigger ? checkPole(boat.centreRigger, 'centre rigger', uri) : []),
    ];
}

function checkSize(boat: Boat, what: 'beam' | 'waterline', uri: string): Finding[] {
    const [size, { length }] = [boat[what], boat];
    if (!size || !length || size.si <= length.si) return [];
    const at = ownPlace(uri, size.origin, length.origin);
    if (!at) return [];
    return [
        problem('value', at, {
            what: `${boat.title} has a ${what} of ${written(size)}, and is ${written(length)} long.`,
            why: `No boat has more ${what} than length.`,
            remedy: 'Look for a slip in one of the two.',
            related: [{ at: length.origin.place, what: 'Her length is said here.' }],
        }),
    ];
}

function checkPole({ length, halyards }: Outriggers, name: string, uri: string): Finding[] {
    const beyond = length
        ? halyards.flatMap((halyard, index) => {
              const at = halyard.si > length.si && ownPlace(uri, halyard.origin, length.origin);
              if (!at) return [];
              return [
                  problem('value', at, {
                      what: `Halyard ${index + 1} is ${written(halyard)} along a ${name} of ${written(length)}.`,
                      why: 'Halyards are measured along the pole from its foot, so none is farther out than the tip.',
                      remedy: 'Measure the two again.',
                      related: [{ at: length.origin.place, what: 'Its length is said here.' }],
                  }),
              ];
          })
        : [];
    const astray = halyards.findIndex((halyard, index) => index > 0 && halyard.si <= halyards[index - 1]!.si);
    const at = astray > 0 ? ownPlace(uri, halyards[astray]!.origin) : undefined;
    if (!at) return beyond;
    const [before, halyard] = [halyards[astray - 1]!, halyards[astray]!];
    return [
        ...beyond,
        problem('value', at, {
            what: `Halyard ${astray + 1}, at ${written(halyard)}, is no farther out than halyard ${astray}, at ${written(before)}.`,
            why: 'Halyards are numbered from the foot of the pole outwards: a short rigger takes the inner one, a long rigger the outer.',
            remedy: `Write them in that order: \`halyards ${inOrder(halyards)}\`.`,
        }),
    ];
}

function inOrder(halyards: readonly Measure[]): string {
    return [...halyards]
        .sort((a, b) => a.si - b.si)
        .map(written)
        .join(', ');
}

function written({ quantity, si }: Measure): string {
    return quantity ? printQuantity(quantity) : `${si} m`;
}
