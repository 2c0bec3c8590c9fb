import type { Measure, Span } from '../measure.ts';
import type { Said } from '../origin.ts';
import type { Defined } from './defined.ts';
import type { Hooks, Leader } from './tackle.ts';

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
    readonly sway?: Measure;
    readonly hooks?: Hooks;
    readonly leader?: Leader;
}
