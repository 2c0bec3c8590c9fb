import type { Measure } from '../measure.ts';
import type { Origin, Said } from '../origin.ts';
import type { Refused } from './defined.ts';
import type { Method } from './method.ts';
import type { Position } from './position.ts';
import type { Drag, Hooks, Leader, Outfit } from './tackle.ts';
import type { Bait, Lure, Teaser } from './towed.ts';

/** How far back a lure is asked to run. */
export type Back =
    | { readonly kind: 'distance'; readonly distance: Measure; readonly origin: Origin }
    | { readonly kind: 'wave'; readonly wave: Measure; readonly origin: Origin };

/** Where a line is towed from. */
export type From =
    | { readonly kind: 'halyard'; readonly number: number; readonly origin: Origin }
    | { readonly kind: 'flat clip' | 'rod tip'; readonly origin: Origin }
    | { readonly kind: 'point'; readonly name: string; readonly origin: Origin };

/** One line of a spread: a fished position, a teaser, or gear standing by. */
export interface SpreadLine {
    readonly position: Position;
    readonly role: 'fished' | 'teaser' | 'standby';
    /** The position as the plan names it: `port short corner`; `place` of the origin covers just that. */
    readonly origin: Origin;
    readonly outfit?: Said<Outfit>;
    readonly lure?: Said<Lure>;
    readonly teaser?: Said<Teaser>;
    readonly bait?: Said<Bait>;
    readonly back?: Back;
    readonly refused?: Refused;
    /** What the plan says, or what the position usually takes (then the voice is `default`). */
    readonly from?: From;
    readonly method?: Said<Method>;
    /** Newtons. */
    readonly clip?: Measure;
    /** Slack left below the clip. */
    readonly loop?: Measure;
    readonly wait?: Measure;
    readonly wraps?: Measure;
    readonly drag: Drag;
    readonly leader?: Leader;
    readonly hooks?: Hooks;
    readonly angler?: Said<string>;
    readonly steps: readonly Said<string>[];
    readonly notes: readonly Said<string>[];
}
