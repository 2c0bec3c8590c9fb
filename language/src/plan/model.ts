import type { Severity } from './finding.ts';
import type { Measure, Span } from './measure.ts';
import type { Origin, Place, Said } from './origin.ts';

/*
 * The resolved plan: presets applied, precedence settled, SI values, every value with its origin.
 * Loads: a drag, pull, clip or breaking load is in newtons; the weight of a thing is its mass in kilograms.
 * Whatever the team did not write is absent or a default that says so; nothing here is made up.
 */

export type Side = 'port' | 'starboard' | 'centre';

/** The places that every boat has; a boat may name further ones. */
export type StandardPlace =
    | 'corner'
    | 'rigger'
    | 'shotgun'
    | 'standby'
    | 'bridge teaser'
    | 'squid chain'
    | 'dredge';

export interface Position {
    /** In full, one spelling for both of the trade's: `port short corner`, `centre shotgun`. */
    readonly name: string;
    readonly side: Side;
    readonly length?: 'short' | 'long';
    readonly place: StandardPlace | (string & {});
    /** True where `place` is one that the boat named. */
    readonly extra: boolean;
}

/** What every definition has. `S` is whatever the definition says. */
export interface Defined {
    readonly name: string;
    /** The quoted title, or the name where there is none. */
    readonly title: string;
    /** The documentation comment above it. */
    readonly doc?: string;
    readonly origin: Origin;
}

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
    readonly speed?: Span;
    /** Crests measured astern of the transom, the first one first. */
    readonly crests?: {
        readonly distances: readonly Measure[];
        readonly speed: Measure;
        readonly origin: Origin;
    };
    readonly wash?: { readonly near?: Measure; readonly far?: Measure; readonly length?: Measure };
    readonly outriggers?: Outriggers;
    /** On the centreline: `out` and `sweep` do not apply. */
    readonly centreRigger?: Outriggers;
    readonly flatClip?: BoatPoint;
    readonly holders: readonly Holder[];
    /** Named tow points, for teasers and bands: `from bridge`. */
    readonly points: ReadonlyMap<string, BoatPoint>;
    readonly positions: ReadonlyMap<string, BoatPoint & { readonly title: string }>;
    readonly crew?: Measure;
}

export interface Rod {
    readonly title: string;
    readonly length?: Measure;
    /** From the reel's centre to the tip. */
    readonly tip?: Measure;
    /** From the reel's centre to the butt's end. */
    readonly butt?: Measure;
    readonly fitted?: Said<string>;
    readonly origin: Origin;
}

export interface Reel {
    readonly title: string;
    /** Diameters of the spool. */
    readonly full?: Measure;
    readonly arbor?: Measure;
    readonly capacity?: { readonly length: Measure; readonly diameter?: Measure };
    readonly origin: Origin;
}

/** How one piece holds on to the next: a rated strength, or a share of the weaker one's. */
export interface Joint {
    readonly kind: 'knot' | 'crimp' | 'swivel';
    readonly title?: string;
    /** Newtons, or undefined where a share was given. */
    readonly strength?: Measure;
    /** A fraction of the line's strength. */
    readonly share?: Measure;
    readonly origin: Origin;
}

export interface Line {
    readonly title: string;
    readonly material?: Said<string>;
    readonly diameter?: Measure;
    /** The class as written: kilograms or customary pounds, already mapped to the class in kilograms. */
    readonly lineClass?: Measure;
    readonly breaks?: Measure;
    readonly length?: Measure;
    readonly fitted?: Said<string>;
    readonly joints: readonly Joint[];
    readonly stretch?: Measure;
    readonly origin: Origin;
}

export interface Leader extends Line {
    readonly inspected?: Said<string>;
}

export type HookKind = 'J' | 'circle' | 'offset circle' | 'treble' | 'double';

export interface Hooks {
    readonly title: string;
    readonly count: Measure;
    readonly kind?: Said<string>;
    readonly gap?: Measure;
    readonly length?: Measure;
    /** Between the eyes of two hooks. */
    readonly spacing?: Measure;
    /** Between the points of two hooks, seen from behind. */
    readonly angle?: Measure;
    readonly point?: Said<string>;
    /** How far the trailing hook stands beyond the skirt. */
    readonly overhang?: Measure;
    /** One hook's point passes through the other's eye. */
    readonly linked?: Said<boolean>;
    /** A bait's hook hangs free of it. */
    readonly dangling?: Said<boolean>;
    readonly inspected?: Said<string>;
    readonly origin: Origin;
}

export interface Drag {
    readonly set?: Measure;
    readonly hooked?: Measure;
    readonly full?: Measure;
}

export interface Outfit extends Defined {
    readonly rod?: Rod;
    readonly reel?: Reel;
    readonly line?: Line;
    readonly double?: {
        readonly length?: Measure;
        readonly joints: readonly Joint[];
        readonly origin: Origin;
    };
    /** Newtons; a share of class is already resolved, its quantity kept as written. */
    readonly drag: Drag;
    readonly tested?: { readonly date: Said<string>; readonly by?: Said<string> };
    /** How much line a fish is expected to take. */
    readonly run?: Measure;
    /** How distance out is read: marks on the line every so far, or a counter. */
    readonly marks?: { readonly every?: Measure; readonly counter: boolean; readonly origin: Origin };
    readonly joints: readonly Joint[];
}

export type HeadKind = 'slant' | 'plunger' | 'pusher' | 'chugger' | 'bullet' | 'jet' | 'diver';

export interface Lure extends Defined {
    readonly kind?: Said<HeadKind>;
    readonly length?: Measure;
    /** The head's diameter. */
    readonly head?: Measure;
    /** Kilograms in air. */
    readonly weight?: Measure;
    /** Kilograms in water, as weighed submerged. */
    readonly submerged?: Measure;
    /** Cubic metres. */
    readonly displaces?: Measure;
    readonly pull?: { readonly load: Measure; readonly speed: Measure };
    readonly runs?: Span;
    readonly sway?: Measure;
    readonly colour?: Said<string>;
    readonly hooks?: Hooks;
    readonly leader?: Leader;
    readonly spares?: Measure;
}

export interface Teaser extends Omit<Lure, 'kind'> {
    readonly kind?: Said<string>;
}

export interface Bait extends Defined {
    readonly kind?: Said<string>;
    readonly length?: Measure;
    readonly weight?: Measure;
    readonly pull?: { readonly load: Measure; readonly speed: Measure };
    readonly runs?: Span;
    readonly hooks?: Hooks;
    readonly leader?: Leader;
}

export interface Method extends Defined {
    /** `direct`: the hook is driven at the bite. `drop-back`: light drag, a slack loop, a wait. */
    readonly style?: Said<'direct' | 'drop-back'>;
    readonly drag: Drag;
    readonly loop?: Measure;
    readonly wait?: Measure;
    readonly clip?: Measure;
    readonly wraps?: Measure;
    readonly speed?: Span;
    /** The most that a fish should have to pull to open the clip. */
    readonly opens?: Measure;
}

export interface Species extends Defined {
    readonly speed?: Span;
    readonly weight?: Span;
}

export interface RuleSetting {
    readonly rule: Said<string>;
    readonly severity?: Said<Severity>;
    readonly settings: ReadonlyMap<
        string,
        Said<unknown> & { readonly si?: number; readonly measure?: Measure }
    >;
    readonly origin: Origin;
}

/** Limits of one written edition, for lines up to and including a class. */
export interface TackleLimits {
    /** Kilograms of class; absent on the row for everything heavier. */
    readonly upTo?: Measure;
    readonly double?: Measure;
    readonly leader?: Measure;
    readonly combined?: Measure;
    readonly origin: Origin;
}

export interface WrittenRules {
    readonly edition?: Said<string>;
    readonly limits: readonly TackleLimits[];
    /** Kilograms of class, with the greatest load in newtons at which a test sample may break. */
    readonly classes: readonly {
        readonly lineClass: Measure;
        readonly tests?: Measure;
        readonly customary?: Measure;
    }[];
    readonly rodTip?: Measure;
    readonly rodButt?: Measure;
    readonly gaff?: Measure;
    readonly gaffRope?: Measure;
    readonly lureHooks?: Measure;
    readonly lureHookSpacing?: Measure;
    readonly baitHooks?: Measure;
    readonly baitHookSpacing?: Measure;
    readonly plugHooks?: Measure;
    readonly topLength?: Measure;
    readonly wireLine?: Said<boolean>;
}

export interface Rules extends Defined {
    /** Written packs that this one stands on, nearest first. */
    readonly written: readonly (Defined & WrittenRules)[];
    readonly own: WrittenRules;
    readonly mostLines?: Measure;
    readonly mostLinesPerAngler?: Measure;
    readonly classes?: { readonly among: readonly Measure[]; readonly origin: Origin };
    readonly baitHook?: Said<string>;
    readonly teasersHookless?: Said<boolean>;
    readonly settings: readonly RuleSetting[];
    readonly stretchMargin?: Measure;
    readonly linesIn?: Said<string>;
    readonly linesOut?: Said<string>;
    readonly callIn?: Said<string>;
    readonly notes: readonly Said<string>[];
}

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
    readonly position?: Position;
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
    readonly boat?: Said<Boat>;
    readonly target?: Said<Species>;
    readonly date?: Said<string>;
    readonly author?: Said<string>;
    readonly edition?: Said<string>;
    readonly speed?: Measure;
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
    /** Every definition of this file and whether anything that was looked at names it. */
    readonly definitions: readonly (Defined & {
        readonly kind: string;
        readonly used: boolean;
        readonly place: Place;
    })[];
}
