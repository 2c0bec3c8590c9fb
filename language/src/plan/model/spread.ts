import type { Measure, Span } from '../measure.ts';
import type { Origin, Said } from '../origin.ts';
import type { Boat } from './boat.ts';
import type { Defined, Refused } from './defined.ts';
import type { SpreadLine } from './line.ts';
import type { Method, Species } from './method.ts';
import type { Position } from './position.ts';
import type { RuleSetting, Rules } from './rules.ts';
import type { Outfit } from './tackle.ts';
import type { Lure, Teaser } from './towed.ts';

/** A plan that another one is `like`, and which version of it. */
export interface Preset {
    readonly title: string;
    readonly edition?: string;
    /** With its version where it has one: `reef-pack 1.2.0`. */
    readonly package?: string;
}

export interface Waiver {
    readonly rule: Said<string>;
    readonly positions: readonly Said<Position>[];
    readonly because?: Said<string>;
    /** ISO date, inclusive. */
    readonly until?: Said<string>;
    /** True where the plan took it over from the one that it is `like`. */
    readonly inherited: boolean;
    readonly origin: Origin;
}

export interface StatedOrder {
    readonly what: 'set' | 'clear';
    readonly positions: readonly Said<Position>[];
    readonly because?: Said<string>;
    readonly origin: Origin;
}

export interface Role {
    readonly role: string;
    readonly position?: Said<Position>;
    readonly name: Said<string>;
}

export interface Fallback {
    readonly when: Said<string>;
    readonly drop: readonly Said<Position>[];
    readonly say?: Said<string>;
    readonly origin: Origin;
}

export interface Spread extends Defined {
    readonly kind: 'spread';
    /** Names of the spreads that it is `like`, nearest first. */
    readonly like: readonly string[];
    /** Of these, what says its version: an edition of its own, or the package that it is from. Absent for none. */
    readonly presets?: readonly Preset[];
    /** Packages that something in this plan is from, each with its version: `reef-pack 1.2.0`. Absent for none. */
    readonly packages?: readonly string[];
    readonly boat?: Said<Boat>;
    readonly target?: Said<Species>;
    readonly date?: Said<string>;
    readonly author?: Said<string>;
    readonly edition?: Said<string>;
    readonly speed?: Measure;
    readonly refused?: Refused;
    /** Between which the helm will keep her. */
    readonly speeds?: Span;
    /** Height of the sea, trough to crest. */
    readonly sea?: Measure;
    /** Bow to the sea: 0 is head sea, positive to starboard. */
    readonly heading?: Measure;
    readonly wind?: { readonly speed: Measure; readonly from?: Measure };
    readonly depth?: Measure;
    /** Everyone but the one at the helm. */
    readonly crew?: Measure;
    /** The tightest turn that the helm plans to make. */
    readonly turn?: Measure;
    readonly sway?: Measure;
    readonly method?: Said<Method>;
    readonly event?: Said<Rules>;
    readonly lines: readonly SpreadLine[];
    readonly waivers: readonly Waiver[];
    readonly orders: readonly StatedOrder[];
    readonly roles: readonly Role[];
    readonly fallbacks: readonly Fallback[];
    readonly spares: readonly { readonly of: Said<Outfit | Lure | Teaser>; readonly origin: Origin }[];
    readonly steps: readonly Said<string>[];
    readonly notes: readonly Said<string>[];
    readonly weatherLimit?: Said<string>;
    /** Hold speed and course after a strike, for a second bite. */
    readonly hold?: Said<boolean>;
    /** Settings of rules, the plan's own first, then its event's. */
    readonly settings: readonly RuleSetting[];
}
