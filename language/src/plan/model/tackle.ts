import type { Measure } from '../measure.ts';
import type { Origin, Said } from '../origin.ts';
import type { Defined } from './defined.ts';

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

/** What is said of the stages of a drag; shares are not yet loads. */
export type DragSaid = {
    readonly [Stage in keyof Drag]: { readonly force?: Measure; readonly share?: Measure };
};

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
