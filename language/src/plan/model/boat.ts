import type { Measure, Span } from '../measure.ts';
import type { Origin } from '../origin.ts';
import type { Defined, Refused } from './defined.ts';
import type { Position } from './position.ts';

/** A point of the boat: metres ahead of the transom, out from the centreline, above the still waterline. */
export interface BoatPoint {
    readonly ahead?: Measure;
    readonly out?: Measure;
    readonly up?: Measure;
    readonly origin: Origin;
}

export interface Outriggers {
    readonly length?: Measure;
    readonly foot?: BoatPoint;
    /** Above horizontal. */
    readonly rise?: Measure;
    /** Outboard of dead ahead. */
    readonly sweep?: Measure;
    /** Distances along the pole from its foot, inner first. */
    readonly halyards: readonly Measure[];
    readonly refused?: Refused;
    readonly origin: Origin;
}

export interface Holder extends BoatPoint {
    readonly position: Position;
    /** Aft of vertical. */
    readonly lean?: Measure;
    /** Outboard of straight aft, seen from above. */
    readonly splay?: Measure;
}

export interface Boat extends Defined {
    readonly length?: Measure;
    readonly waterline?: Measure;
    readonly beam?: Measure;
    readonly refused?: Refused;
    readonly speed?: Span;
    /** Crests measured astern of the transom, the first one first. */
    readonly crests?: {
        readonly distances: readonly Measure[];
        readonly speed: Measure;
        readonly origin: Origin;
    };
    /** Height of sea up to which the crew can still read the boat's own waves. */
    readonly wavesUpTo?: Measure;
    readonly wash?: { readonly near?: Measure; readonly far?: Measure; readonly length?: Measure };
    readonly outriggers?: Outriggers;
    /** On the centreline: `out` and `sweep` do not apply. */
    readonly centreRigger?: Outriggers;
    readonly flatClip?: BoatPoint;
    readonly holders: readonly Holder[];
    /** Named tow points, for teasers and bands: `from bridge`. */
    readonly points: ReadonlyMap<string, BoatPoint>;
    readonly positions: ReadonlyMap<string, BoatPoint & { readonly title: string }>;
}
