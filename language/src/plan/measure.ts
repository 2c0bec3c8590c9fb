import type { Quantity } from '../units/quantity.ts';
import type { Origin, Standing } from './origin.ts';

/** One number of a plan: in SI for computing, as its author wrote it for talking about it. */
export interface Measure {
    /** SI: metres, newtons or kilograms as the property says, m/s, radians, seconds, a fraction for `%`. */
    readonly si: number;
    /** As written; absent for defaults and for what was computed. */
    readonly quantity?: Quantity;
    readonly origin: Origin;
    readonly standing: Standing;
}

/** A range as written: `runs 6 kn to 9 kn`. */
export interface Span {
    readonly from: Measure;
    readonly to: Measure;
}
