import type { Location, WorkspaceEdit } from 'vscode-languageserver-types';
import type { StrikeScene } from '../drawing/scene-strike.ts';
import type { TurnScene } from '../drawing/scene-turn.ts';
import type { Summary } from '../drawing/summary.ts';
import type { SvgWishes } from '../drawing/svg.ts';
import type { PlanEntry, PlanWanted } from './protocol.ts';

export type { StrikeScene, TurnScene };

/*
 * Shapes of the protocol for what is drawn of a plan, and for what a hand does to a drawing: types alone.
 */

export interface PictureWanted extends PlanWanted {
    /** `above` by default. */
    readonly view?: 'above' | 'side';
    readonly wishes?: SvgWishes;
}

export interface Picture {
    readonly uri: string;
    /** Of the document that it was drawn from; absent for a file that nobody has open. */
    readonly version?: number;
    readonly plan: PlanEntry;
    readonly svg: string;
    /** The same in words, and as a table. */
    readonly summary: Summary;
    /** Of what is drawn, where the text says it: the use, not the definition. */
    readonly places: readonly PicturePlace[];
    /** Of each lure that can be moved by hand. None while the text cannot be read. */
    readonly moves: readonly LureMove[];
    /**
     * Why this is not the text as it stands: it cannot be read, and this is the last picture of one that could.
     * To be shown with the picture.
     */
    readonly outdated?: string;
    /** True where no text of it could ever be read: this is what can be read of it, and less than is meant. */
    readonly partial?: boolean;
}

/** Where the text says what one element stands for. */
export interface PicturePlace extends Location {
    /** The `data-id` of the element in the picture. */
    readonly id: string;
    /** The position of the spread that it belongs to. */
    readonly position?: string;
    /** Of a finding: every position that it concerns. */
    readonly positions?: readonly string[];
}

/** A lure that can be taken in or let back, and where to. */
export interface LureMove {
    readonly position: string;
    /** Where it runs, m astern of the transom. */
    readonly astern: number;
    /** Where its author counts waves it snaps to their faces; a distance may be any. */
    readonly counts: 'waves' | 'distance';
    /** The ideal place on each wave, m astern, nearer the boat first. */
    readonly faces: readonly { readonly wave: number; readonly astern: number }[];
}

/** One line of a plan. */
export interface PositionWanted {
    readonly uri: string;
    readonly plan: string;
    readonly position: string;
}

export interface MoveWanted extends PositionWanted {
    /** Where to, m astern of the transom. */
    readonly astern: number;
}

export interface TryMove extends MoveWanted {
    readonly view?: 'above' | 'side';
    readonly wishes?: SvgWishes;
    /** Also follows the turns of a plan that says how tightly it turns: tens of milliseconds. */
    readonly turns?: boolean;
}

/** A lure at another place, as long as nothing is written. */
export interface Trial extends Pick<Picture, 'svg' | 'summary' | 'moves'> {
    /** As it would be written: `back wave 4`. */
    readonly text: string;
    /** Where it would run then, m astern of the transom. */
    readonly astern: number;
    /** The wave that it would be at the ideal place of. */
    readonly wave?: number;
    /** What would be found about the lure, and what about it would no longer be. */
    readonly findings: { readonly here: readonly string[]; readonly gone: readonly string[] };
    /** `Turns cleanly down to 48 m to port (shotgun too slow), …`: the radius and what ends it each way; only where turns were asked for and can be followed. */
    readonly turns?: string;
}

export interface MoveWritten {
    readonly text: string;
    readonly edit: WorkspaceEdit;
    /** Of the open document that the edit is for; absent where nobody has it open. */
    readonly version?: number;
}

export interface TurnWanted extends PlanWanted {
    /** By default that which needs more room. */
    readonly side?: 'port' | 'starboard';
    /** m; by default the tightest turn that the plan allows, else the tightest clean one. */
    readonly radius?: number;
    /** For a sheet of it too. */
    readonly sheet?: SvgWishes;
}

export interface StrikeWanted extends PlanWanted {
    /** The position that has the bite; by default the one that `position` lies in, else the first that can be followed. */
    readonly line?: string;
    /** As the plan strikes by default. */
    readonly style?: 'direct' | 'drop-back';
    /** For a sheet of it too. */
    readonly sheet?: SvgWishes;
}

/** A scene that the page draws by itself, as plain numbers and words. */
export interface Viewed<S>
    extends Pick<Picture, 'uri' | 'version' | 'plan' | 'places' | 'outdated' | 'partial'> {
    readonly scene: S;
    /** On a sheet, where one was wanted. */
    readonly svg?: string;
}

export interface ComparisonWanted extends PlanWanted {
    /** Nothing yet, or why there is none: that is answered with the plan that it is about. */
    readonly earlier: Earlier | { readonly reason: string };
    readonly wishes?: SvgWishes;
}

/** The version to compare with. */
export interface Earlier {
    /** Of its file; for an earlier text of a file, that file's. */
    readonly uri: string;
    /** By default the plan that is most like the later one. */
    readonly plan?: string;
    /** The file's text as it was; by default as it stands. What it uses is taken as it stands now. */
    readonly text?: string;
}

export interface Comparison extends Picture {
    /** Title of the earlier plan. */
    readonly before: string;
    /** Every change as a sentence. */
    readonly told: readonly string[];
}

/** Why there is nothing to compare with, and what should have been compared. */
export interface NotCompared extends Pick<Picture, 'uri' | 'version' | 'plan'> {
    readonly reason: string;
}
