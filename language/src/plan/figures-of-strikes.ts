import type { StrikeMoment, StrikeSample } from '../physics/strike.ts';
import type { Figure, LineFigures, Range } from './figures.ts';

/** Why a line comes in when it does, with a fish on another one. */
export type ClearingReason =
    /** The hooked line falls across it as its clip opens. */
    | { readonly kind: 'release' }
    /** The running line meets it while the fish runs straight astern of the struck lure. */
    | { readonly kind: 'astern' }
    /** The running line meets it when the fish has gone so far to that side of the struck lure, m. */
    | { readonly kind: 'run'; readonly side: 'port' | 'starboard'; readonly aside: number }
    /** That one cannot come in before it. */
    | { readonly kind: 'in the way'; readonly of: LineFigures }
    /** The running line does not meet it. */
    | { readonly kind: 'rest' };

/** What comes in, and in which order, with a fish on one line. */
export interface ClearingFigures {
    readonly hooked: LineFigures;
    readonly order: readonly { readonly line: LineFigures; readonly reason: ClearingReason }[];
}

/** A bite on one line, both ways of striking. */
export interface StrikesFigures {
    /** How the plan's method strikes. */
    readonly planned: 'direct' | 'drop-back';
    /** At hooked drag from the bite on. */
    readonly direct: Figure<StrikeFigures>;
    /** At set drag, pushed to hooked drag when the fish has had its time. */
    readonly dropBack: Figure<StrikeFigures>;
}

/** The first ten seconds of a bite. */
export interface StrikeFigures {
    /** In order of time; what does not happen within ten seconds is not among them. */
    readonly moments: readonly StrikeMomentFigures[];
    /** Every 0.05 s; absent where nobody asked for it. */
    readonly series?: readonly StrikeSample[];
    /** The highest tension at the hook, N. */
    readonly peak: number;
    /** Between what it lies for the fish and the lure’s pull that nobody measured, N. */
    readonly peakRange?: Range;
}

/** A moment of a strike, and between which times it comes for a fish that nobody has met, s. */
export type StrikeMomentFigures = StrikeMoment & { readonly range?: Range };
