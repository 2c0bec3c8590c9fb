import type { Measure } from '../measure.ts';
import type { Origin, Said } from '../origin.ts';
import type { Defined } from './defined.ts';
import type { Spread } from './spread.ts';

/** A spread from a time on. */
export interface Hour {
    /** Seconds since the midnight before the day's first hour; beyond a day where it runs past the next one. */
    readonly from: Said<number>;
    readonly plan: Said<Spread>;
    readonly origin: Origin;
}

/** A spread under a sea, a wind or a light. */
export interface Condition {
    readonly when:
        | { readonly kind: 'sea' | 'wind'; readonly side: 'over' | 'under'; readonly bound: Measure }
        | { readonly kind: 'light'; readonly light: Said<string> };
    readonly plan: Said<Spread>;
    readonly origin: Origin;
}

/** Which spread is fished when: the first condition that holds, or else the spread of the hour. */
export interface Day extends Defined {
    readonly kind: 'day';
    readonly date?: Said<string>;
    /** By the clock, from the first one that is written. */
    readonly hours: readonly Hour[];
    /** In the order of the text: that one counts. */
    readonly conditions: readonly Condition[];
    /** Counted as the hours are. */
    readonly until?: Said<number>;
    readonly notes: readonly Said<string>[];
}
