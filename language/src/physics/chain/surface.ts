/**
 * How much of a link lies under water, and where: filled in by `wetOf`, written over each time.
 *
 * The surface is a centimetre thick: a line that floats, or is washed over, is neither dry nor drowned at a stroke,
 * and a chain that lies on it finds its balance.
 */
export interface Wetness {
    /** Share under water. */
    share: number;
    /** Share × how far along the link its middle lies, from 0 at the lower-numbered node to 1. */
    moment: number;
    /** How share and moment change as the first or the second node rises, 1/m. */
    shareByFirst: number;
    shareBySecond: number;
    momentByFirst: number;
    momentBySecond: number;
}

/** Half the thickness of the surface, m. */
const HALF = 5e-3;

/** Below this difference in height a link counts as level, m. */
const LEVEL = 1e-6;

export function dry(): Wetness {
    return { share: 0, moment: 0, shareByFirst: 0, shareBySecond: 0, momentByFirst: 0, momentBySecond: 0 };
}

/** @param first, second  heights of a link's nodes, m */
export function wetOf(first: number, second: number, into: Wetness): void {
    into.shareByFirst = into.shareBySecond = into.momentByFirst = into.momentBySecond = 0;
    if (first >= HALF && second >= HALF) {
        into.share = into.moment = 0;
        return;
    }
    if (first <= -HALF && second <= -HALF) {
        into.share = 1;
        into.moment = 0.5;
        return;
    }
    const rise = second - first;
    if (Math.abs(rise) < LEVEL) {
        const middle = (first + second) / 2;
        const change = Math.abs(middle) < HALF ? -1 / (2 * HALF) : 0;
        into.share = under(middle);
        into.moment = into.share / 2 + (change * rise) / 12;
        into.shareByFirst = into.shareBySecond = change / 2;
        into.momentByFirst = change / 6;
        into.momentBySecond = change / 3;
        return;
    }
    const deep = underUpTo(second) - underUpTo(first);
    const share = deep / rise;
    const moment = (momentUpTo(second) - momentUpTo(first) - first * deep) / rise ** 2;
    into.share = share;
    into.moment = moment;
    into.shareByFirst = (share - under(first)) / rise;
    into.shareBySecond = (under(second) - share) / rise;
    into.momentByFirst = (2 * moment - share) / rise;
    into.momentBySecond = (under(second) - 2 * moment) / rise;
}

/** How far a point at a height is under water, 0 to 1. */
function under(z: number): number {
    return z <= -HALF ? 1 : z >= HALF ? 0 : 0.5 - z / (2 * HALF);
}

/** Its integral over z. */
function underUpTo(z: number): number {
    return z <= -HALF ? z : z >= HALF ? 0 : z / 2 - z ** 2 / (4 * HALF) - HALF / 4;
}

/** The integral of z times it. */
function momentUpTo(z: number): number {
    if (z <= -HALF) return z ** 2 / 2;
    if (z >= HALF) return HALF ** 2 / 6;
    return z ** 2 / 4 - z ** 3 / (6 * HALF) + HALF ** 2 / 12;
}
