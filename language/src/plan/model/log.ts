import type { Measure } from '../measure.ts';
import type { Origin, Place, Said } from '../origin.ts';
import type { Day } from './day.ts';
import type { Defined } from './defined.ts';
import type { Position } from './position.ts';
import type { Spread } from './spread.ts';

export interface LogEvent {
    /** Seconds since the log's midnight; beyond a day where it runs past midnight. */
    readonly time: Said<number>;
    readonly outcome: readonly Said<string>[];
    readonly position?: Said<Position>;
    readonly lure?: Said<string>;
    readonly species?: Said<string>;
    readonly weight?: Measure;
    readonly angler?: Said<string>;
    readonly fought?: Measure;
    readonly speed?: Measure;
    readonly sea?: Measure;
    readonly water?: Measure;
    readonly colour?: Said<string>;
    /** Private: left out of everything unless asked for by name. */
    readonly spot?: Said<string>;
    readonly note?: Said<string>;
    readonly origin: Origin;
}

export interface Log {
    readonly date: Said<string>;
    readonly title: string;
    readonly zone?: Said<string>;
    readonly using: readonly { readonly plan: Said<Spread>; readonly from?: Said<number> }[];
    readonly events: readonly LogEvent[];
    readonly origin: Origin;
}

/** What a file (or a folder of files) holds, resolved. */
export interface Resolved {
    readonly uri: string;
    readonly spreads: readonly Spread[];
    readonly logs: readonly Log[];
    readonly days: readonly Day[];
    /** Every definition of this file and whether anything that was looked at names it. */
    readonly definitions: readonly (Defined & {
        readonly kind: string;
        readonly used: boolean;
        readonly place: Place;
    })[];
}
