import type { Wash } from '../physics/waves/wash.ts';
import type { Measure } from './measure.ts';
import type { Side, Spread, SpreadLine } from './model.ts';
import type { Origin, Standing } from './origin.ts';

/*
 * What was computed about a plan. A figure is either a value with its standing or a silence with its reason;
 * rules, hovers and pictures read figures and never compute physics of their own.
 */

/** A computed value: SI, in the boat frame (x forward from the transom, y to port, z up from still water). */
export interface Known<T> {
    readonly known: true;
    readonly value: T;
    readonly standing: Standing;
    /** The estimates that it leans on, in words, so that whoever shows it can say so. */
    readonly leaning: readonly string[];
}

/** No figure, and why: `The boat has no beam.` One sentence that can be shown as it is. */
export interface Silent {
    readonly known: false;
    readonly reason: string;
}

export type Figure<T = number> = Known<T> | Silent;

export type Point = readonly [x: number, y: number, z: number];

/** The waves astern at the plan's speed. */
export interface WaveFigures {
    /** Through the water, m/s. */
    readonly speed: number;
    /** Between crests on the centreline, m. */
    readonly wavelength: number;
    /** Astern of the transom, m. */
    readonly firstCrest: number;
    readonly firstCrestMeasured: boolean;
    /** Why the model should not be trusted here, if so; then no rule leans on it. */
    readonly doubt?: string;
    /** Of the boat's own waves, trough to crest, m; only ever a rough estimate. */
    readonly height?: Figure;
}

/** An outrigger pole, or the centre rigger, as it stands when fishing. */
export interface PoleFigures {
    readonly side: Side;
    readonly foot: Point;
    readonly tip: Point;
    /** Where the halyards are, inner first. */
    readonly halyards: readonly Point[];
    readonly origin: Origin;
}

export type WavePart = 'front lower' | 'front middle' | 'front upper' | 'crest' | 'back' | 'trough';

/** Where on the waves a lure runs. */
export interface WavePlace {
    /** The wave that the lure is on or nearest to, counted from 1. */
    readonly wave: number;
    readonly part: WavePart;
    readonly onFace: boolean;
    /** Astern distance that `back wave n` means at this lure's lateral offset, m. */
    readonly ideal: number;
    /** Ideal places of the waves nearest to the lure, nearer the boat first. */
    readonly faces: readonly { readonly wave: number; readonly astern: number }[];
    /** Boat speeds at which the lure stays on this front face, m/s; absent when it is on none. */
    readonly band?: { readonly from: number; readonly to: number };
}

export type DragStage = 'set' | 'hooked' | 'full';

export interface DragFigure {
    readonly stage: DragStage;
    /** As measured: at the spool as filled, N. */
    readonly force: Measure;
    /** Of the line class; absent without a class. */
    readonly share?: number;
    /** At fractions of line left, N and share of class; needs the reel's spool. */
    readonly spool: readonly { readonly left: number; readonly force: number; readonly share?: number }[];
}

export interface LineFigures {
    readonly line: SpreadLine;
    /** The tow point: clip, halyard, rod tip or named point. */
    readonly towPoint: Figure<Point>;
    /** Of the rod in its holder; the line runs from here to its clip. */
    readonly rodTip?: Figure<Point>;
    /** Where the line goes through the surface; at the lure where it is in air all the way. */
    readonly entry?: Figure<Point>;
    /** Of the lure, astern of the transom, m. */
    readonly astern: Figure;
    /** Of the lure, to port, m. */
    readonly lateral: Figure;
    readonly wave: Figure<WavePlace>;
    readonly inWash: Figure<boolean>;
    readonly drags: readonly DragFigure[];
    /** Towing pull of the lure at the plan's speed, N. */
    readonly pull: Figure;
    /** Sway to either side, radians. */
    readonly sway: Figure;
}

/** Two lines running straight. */
export interface PairFigures {
    readonly a: LineFigures;
    readonly b: LineFigures;
    /** Neighbours: no other line of the spread runs between the two, seen from astern. */
    readonly neighbours: boolean;
    /** At the water, m, not negative. */
    readonly lateralGap: Figure;
    /** Difference in distance astern, m, not negative. */
    readonly stagger: Figure;
    /** Least distance of the two fans at the plan's sway, m. */
    readonly clearance: Figure;
    /** Sway at which they touch, radians; Infinity where none up to the largest judged does. */
    readonly swayMargin: Figure;
    /** The same at the longer line's lure, m. */
    readonly swayAtLure: Figure;
    /** What would give the pair the plan's sway, each alone, m; absent where it alone cannot. */
    readonly cure?: { readonly stagger?: number; readonly height?: number; readonly width?: number };
}

/** A plan with its figures. Everything outside `plan/` starts from here. */
export interface AnalysedPlan {
    readonly plan: Spread;
    readonly waves: Figure<WaveFigures>;
    readonly wash?: Figure<Wash>;
    /** Port before starboard before centre; none where the boat has none or their place is not known. */
    readonly poles?: readonly PoleFigures[];
    /** In the plan's order; standby gear has silent geometry. */
    readonly lines: readonly LineFigures[];
    readonly pairs: readonly PairFigures[];
    /** The sway that the plan asks every pair to bear, radians. */
    readonly swayAsked: { readonly value: number; readonly standing: Standing };
    /** The distance at which two lines count as touching, m. */
    readonly contact: number;
}
