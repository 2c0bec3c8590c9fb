import type { Origin } from '../origin.ts';

/**
 * Properties that were written and cannot be used, as written, by their word: `speed 118 kn`. They count as absent, and
 * whoever misses them can say so.
 */
export type Refused = Readonly<Record<string, string>>;

/** What every definition has. `S` is whatever the definition says. */
export interface Defined {
    readonly name: string;
    /** The quoted title, or the name where there is none. */
    readonly title: string;
    /** The documentation comment above it. */
    readonly doc?: string;
    readonly origin: Origin;
}
