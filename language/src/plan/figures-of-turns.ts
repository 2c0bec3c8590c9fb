import type { LineFigures } from './figures.ts';
import type { Measure } from './measure.ts';

/** What ends the clean turns to one side. */
export interface TurnLimit {
    /** `unsettled` where it would take too long to tell whether the two lines foul. */
    readonly kind: 'foul' | 'slack' | 'slow' | 'unsettled';
    readonly lines: readonly LineFigures[];
    /** s from the helm going over, and heading changed by then, rad. */
    readonly time: number;
    readonly turned: number;
    /** Of the slow lure through the water, m/s. */
    readonly speed?: number;
}

/** The tightest clean turn of one kind. */
export interface CleanTurn {
    /** m; of turns no tighter than this nothing is wrong. Absent where no turn that was looked at is clean. */
    readonly radius?: number;
    /** What goes wrong in a turn just tighter; absent where none that was looked at goes wrong. */
    readonly limit?: TurnLimit;
    /** For a half turn at that radius, s. */
    readonly halfTurn?: number;
}

/** Two lines in the turn that the plan allows. */
export interface PairInTurnFigures {
    readonly a: LineFigures;
    readonly b: LineFigures;
    /** Least distance of the two fans, m. */
    readonly clearance: number;
    /** s from the helm going over, and heading changed by then, rad. */
    readonly time: number;
    readonly turned: number;
    /** Sway at which they touch somewhere in the turn, rad; Infinity where none that was looked at does. */
    readonly swayMargin: number;
    /** The same at the longer line's lure, m. */
    readonly swayAtLure: number;
    /** Where on each, from its tow point, m. */
    readonly fromTowPoint: readonly [number, number];
    /** When the lines pass through each other even without sway, s. */
    readonly passedThrough?: number;
}

/** A lure in the turn that the plan allows. */
export interface LureInTurnFigures {
    readonly line: LineFigures;
    /** The slowest that it runs, m/s, and when, s. */
    readonly slowest: number;
    readonly time: number;
    /** A line in air is followed as taut, one under water as a chain with weight, drag and stretch. */
    readonly model: 'taut' | 'chain';
    /** How far the taut line would have put the lure from where the chain has it, at most, m. */
    readonly astray?: number;
    /** When its line first falls slack, s. */
    readonly slackAt?: number;
}

export interface SideTurnFigures {
    /** No two lines touch at the sway asked, and none falls slack. */
    readonly noFoul: CleanTurn;
    /** Every lure keeps its least running speed. */
    readonly allWorking: CleanTurn;
    /** In a half turn as tight as the plan allows; empty where it names none. */
    readonly pairs: readonly PairInTurnFigures[];
    readonly lures: readonly LureInTurnFigures[];
}

/** A plan's turns. They take longer than the rest, so they come on their own. */
export interface TurnFigures {
    /** The tightest turn that the helm plans to make, m; absent too where no boat can be held to it. */
    readonly asked?: Measure;
    readonly port: SideTurnFigures;
    readonly starboard: SideTurnFigures;
    /** What is fished and of which it is said how slowly it works: only these are judged in `allWorking`. */
    readonly leastKnown: readonly LineFigures[];
    /** What is fished and of which nobody said how slowly it works. */
    readonly leastUnknown: readonly LineFigures[];
    /** Fans whose distance was worked out. */
    readonly fanPairs: number;
}

/** One thing that a crew may change, or that changes by itself. */
export type TurnChange =
    /** rad, m and m/s. */
    | { readonly what: 'sway' | 'contact' | 'speed'; readonly by: number }
    /** One line further back or, below zero, closer; m. */
    | { readonly what: 'back'; readonly line: LineFigures; readonly by: number }
    | { readonly what: 'without'; readonly line: LineFigures }
    /** Two lines trade distances. */
    | { readonly what: 'traded'; readonly lines: readonly LineFigures[] };

type CleanTurns = Pick<SideTurnFigures, 'noFoul' | 'allWorking'>;

/** What the tightest clean turns hang on, found to 0.1 m. */
export interface SensitivityFigures {
    readonly now: { readonly port: CleanTurns; readonly starboard: CleanTurns };
    readonly changes: readonly {
        readonly change: TurnChange;
        readonly port: CleanTurns;
        readonly starboard: CleanTurns;
    }[];
}
