import type { Origin } from '../origin.ts';

/** What every definition has. `S` is whatever the definition says. */
export interface Defined {
    readonly name: string;
    /** The quoted title, or the name where there is none. */
    readonly title: string;
    /** The documentation comment above it. */
    readonly doc?: string;
    readonly origin: Origin;
}
