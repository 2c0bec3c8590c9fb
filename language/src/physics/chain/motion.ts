import type { TowedLure } from '../towed.ts';
import type { Vec } from '../vector.ts';
import { dry, type Wetness } from './surface.ts';

/** Where the nodes are and how they move, three figures a node from the lure (0) to the tow point; m, m/s, m/s². */
export interface Motion {
    readonly x: Float64Array;
    readonly v: Float64Array;
    readonly a: Float64Array;
}

/** What acts on a chain apart from its own motion. */
export interface Surroundings {
    readonly lure: TowedLure;
    readonly wind: Vec;
    /** Drag coefficient across each link, in water and in air. */
    readonly crossFlow: readonly [Float64Array, Float64Array];
    /** Reynolds numbers across each link for which those hold. */
    readonly reynolds: readonly [Float64Array, Float64Array];
}

/** Force that is missing at each free node, and how it changes as nodes move: blocks of 3 × 3 by rows. */
export interface Balance {
    /** Mass × acceleration − force, N. */
    readonly missing: Float64Array;
    readonly lower: Float64Array;
    readonly diagonal: Float64Array;
    readonly upper: Float64Array;
    /** The link being loaded, handed on in one array because numbers as arguments would each be boxed: see `Link`. */
    readonly link: Float64Array;
    readonly wetness: Wetness;
}

/** Places in `Balance.link`. */
export const Link = {
    tx: 0,
    ty: 1,
    tz: 2,
    length: 3,
    rate: 4,
    part: 5,
    centre: 6,
    fx: 7,
    fy: 8,
    fz: 9,
    size: 10,
} as const;

/** Room for the balance of so many links. */
export function roomFor(links: number): Balance {
    return {
        missing: new Float64Array(3 * links),
        lower: new Float64Array(9 * links),
        diagonal: new Float64Array(9 * links),
        upper: new Float64Array(9 * links),
        link: new Float64Array(Link.size),
        wetness: dry(),
    };
}
