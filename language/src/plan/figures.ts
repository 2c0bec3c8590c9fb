import type { Wash } from '../physics/waves/wash.ts';
import type { ClearingFigures, StrikesFigures } from './figures-of-strikes.ts';
import type { SensitivityFigures, TurnFigures } from './figures-of-turns.ts';
import type { Measure } from './measure.ts';
import type { Joint, Side, Spread, SpreadLine } from './model.ts';
import type { Origin, Standing } from './origin.ts';

export type * from './figures-of-strikes.ts';
export type * from './figures-of-turns.ts';

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
    /** Where an estimate matters: between what the value lies, in its own unit. */
    readonly range?: Range;
}

export interface Range {
    readonly low: number;
    readonly high: number;
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
    /**
     * Where that doubt is a sea that hides the boat's waves, by an estimate and not by what the crew says: the sea up to
     * which they would show, m.
     */
    readonly shownUpTo?: number;
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
    /** At fractions of line left, full first; needs the reel's spool. */
    readonly spool: readonly SpoolFigure[];
    /** After the run that is expected, begun with the line that is out; `spooled` where that is more than the reel holds. */
    readonly afterRun?: SpoolFigure | 'spooled';
}

/** A drag with so much line left. */
export interface SpoolFigure {
    /** As a fraction of what the spool holds. */
    readonly left: number;
    /** At the reel, N. */
    readonly force: number;
    /** Of the line class. */
    readonly share?: number;
    /** At the fish, with the water's hold on the line, N. */
    readonly atFish?: { readonly low: number; readonly high: number };
}

/** A line on a straight course, settled. */
export interface RestFigures {
    /** Unstretched, from tow point to lure, m. */
    readonly lineOut: number;
    /** N */
    readonly tension: { readonly lure: number; readonly towPoint: number };
    /** Below the horizontal, rad. */
    readonly angle: { readonly lure: number; readonly towPoint: number };
    /** Where the line goes through the surface and how steeply, rad; absent for a line wholly in air. */
    readonly entry?: { readonly point: Point; readonly angle: number };
    /** The line's pull upwards on the lure as a multiple of the lure's weight in air. */
    readonly lift: number;
    /** m */
    readonly sag: { readonly down: number; readonly aside: number };
    readonly atSurface: boolean;
    /** How far under the surface the lure runs, m; only of one that dives. */
    readonly depth?: number;
    /** What the estimates of its pull and of its lip leave open; absent where the pull was measured. */
    readonly range?: {
        /** N at the tow point. */
        readonly towPoint: Range;
        readonly lift: Range;
        readonly depth?: Range;
    };
}

/** A clip or band, and the lure that it holds until a fish comes. */
export interface ClipFigures {
    readonly setting: Measure;
    /** Towing pull with surge, N: below this the clip opens for the sea. */
    readonly towing: number;
    /** Setting over towing pull with surge. */
    readonly ratio: number;
    /** The same over what the estimate of the pull leaves open. */
    readonly ratioRange?: Range;
    /** Setting less towing pull with surge, N; below zero where the sea opens the clip. */
    readonly spare: number;
    /** The same over what the estimate of the pull leaves open. */
    readonly spareRange?: Range;
    /** Hooked drag less setting, N; below zero where the reel gives line before the clip opens. Absent without that drag. */
    readonly belowHooked?: number;
    /** What a fish must pull, N, the lure's own pull being part of it; silent where the geometry is. */
    readonly opens: Figure<{
        readonly pull: number;
        readonly kind: 'opens' | 'runs through' | 'opens alone';
    }>;
}

/** What falls slack when the clip opens. */
export interface DropBackFigures {
    /** m */
    readonly slack: number;
    /** Until the boat has taken it up, s. */
    readonly stall: number;
}

/** Where the tackle parts first. */
export interface WeakestFigures {
    readonly name: string;
    /** N */
    readonly holds: number;
    /** Share of its rated strength that holds. */
    readonly fraction: number;
    readonly origin: Origin;
    /** Every link, the weakest first. */
    readonly ranked: readonly LinkFigures[];
    /** What the main line holds, N: its measured strength, or else the class that it may not break above. */
    readonly line?: { readonly holds: number; readonly said: Measure };
}

export interface LinkFigures {
    readonly name: string;
    /** What it is a part of. */
    readonly piece: 'line' | 'leader';
    /** Where it holds one piece on to the next; absent for the piece itself. */
    readonly joint?: Joint['kind'];
    /** N */
    readonly holds: number;
    readonly origin: Origin;
}

/** The line of a reel while its lure is out, and after the run that is expected; all in m. */
export interface ReelFigures {
    /** On the full spool, of this line. */
    readonly holds: number;
    /** Off the spool while trolling. */
    readonly out: number;
    readonly run: number;
    /** Where the team said how far a fish runs; absent for the usual estimate. */
    readonly runSaid?: Measure;
    /** After the run; below zero where the fish empties the spool. */
    readonly left: number;
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
    /** The same with the boat's surge in this sea, N. */
    readonly towing: Figure;
    /** Sway to either side, radians. */
    readonly sway: Figure;
    /** The line settled on a straight course. */
    readonly rest: Figure<RestFigures>;
    /** Absent on a line that no clip holds. */
    readonly clip?: Figure<ClipFigures>;
    readonly dropBack?: Figure<DropBackFigures>;
    /** Absent for teasers. */
    readonly weakest?: Figure<WeakestFigures>;
    /** Absent for what is not fished. */
    readonly reel?: Figure<ReelFigures>;
    /** Absent for what is not fished, and until somebody asked: see `inFull`. */
    readonly strikes?: StrikesFigures;
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

/** Why one line is set before another: the other way round, the mover would sweep across the other one. */
export interface OrderDemand {
    readonly first: LineFigures;
    readonly second: LineFigures;
    /** One of the two. */
    readonly mover: LineFigures;
    readonly stage: 'paying out' | 'hauling to the clip';
    /** How near they come, m; 0 where one sweeps across the other. */
    readonly distance: number;
    /** On the mover's way and on the other line. */
    readonly at: readonly [Point, Point];
}

/** In which order the fished lines can be handled. Taking in is setting backwards: see `demands`. */
export interface OrderFigures {
    readonly set: readonly LineFigures[];
    readonly takeIn: readonly LineFigures[];
    /** Taking in, the second of each comes before the first. */
    readonly demands: readonly OrderDemand[];
    /** Lines each of which would have to be set before the next: no order clears them all. */
    readonly cycles: readonly (readonly LineFigures[])[];
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
    readonly order: Figure<OrderFigures>;
    /** What is cleared after a strike at each position; absent until somebody asked: see `inFull`. */
    readonly clearings?: Figure<readonly ClearingFigures[]>;
    /** The radius to which a boat can be held at the plan's speed, m: no tighter turn is looked at. */
    readonly tightestHeld?: Figure;
    /** Absent until somebody asked for them: see `withTurns`. */
    readonly turns?: Figure<TurnFigures>;
    /** Absent until somebody asked: see `withSensitivity`. */
    readonly sensitivity?: Figure<SensitivityFigures>;
}
