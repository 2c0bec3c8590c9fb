import type { Location, Position, Range, WorkspaceEdit } from 'vscode-languageserver-types';
import type { PaletteName } from '../drawing/palette.ts';
import type { Summary } from '../drawing/summary.ts';
import type { Severity } from '../plan/finding.ts';
import type { RuleEntry } from '../reports/sarif.ts';
import type {
    Card,
    CardWanted,
    Fence,
    FenceWanted,
    Figures,
    PngWanted,
    SeasonText,
    Sensitivity,
} from './printed.ts';
import type { DeepPartial, Settings } from './settings.ts';
import type {
    Comparison,
    ComparisonWanted,
    MoveWanted,
    MoveWritten,
    NotCompared,
    Picture,
    PictureWanted,
    PositionWanted,
    StrikeScene,
    StrikeWanted,
    Trial,
    TryMove,
    TurnScene,
    TurnWanted,
    Viewed,
} from './viewed.ts';

export type * from './viewed.ts';
export type {
    Card,
    CardWanted,
    Fence,
    FenceWanted,
    Figures,
    PaletteName,
    PngWanted,
    RuleEntry,
    SeasonText,
    Sensitivity,
    Settings,
    Severity,
    Summary,
};

/*
 * Everything that server, extension and preview say to each other beyond the standard protocol. Types and names
 * alone: whoever imports this file bundles nothing else.
 */

/** A request by its name on the wire: `P` asks, `R` answers. */
export interface Request<P, R> {
    readonly method: string;
    /** Carries the types alone. */
    readonly types?: (params: P) => R;
}

/** A message that wants no answer. */
export interface Notice<P> {
    readonly method: string;
    readonly types?: (params: P) => void;
}

function request<P, R>(method: string): Request<P, R> {
    return { method };
}

function notice<P>(method: string): Notice<P> {
    return { method };
}

// ── The client asks the server ──────────────────────────────────────────────────────────────────────────

/** The text behind a `layback:` address: a file of the built-in library, the page of a rule, or a document. */
export const builtInText = request<{ readonly uri: string }, BuiltInText | null>('layback/builtInText');

/** The plans of a file, for choosing one. */
export const plansOfFile = request<{ readonly uri: string }, PlansOfFile | null>('layback/plans');

/** A plan as a picture. */
export const picture = request<PictureWanted, Picture | null>('layback/picture');

/** A plan in a half turn, for a player: tens of milliseconds, in slices, and can be cancelled. */
export const turnView = request<TurnWanted, Viewed<TurnScene> | null>('layback/turnView');

/** A bite on one line of a plan. */
export const strikeView = request<StrikeWanted, Viewed<StrikeScene> | null>('layback/strikeView');

/** A plan over an earlier version of it, or over another one. */
export const comparison = request<ComparisonWanted, Comparison | NotCompared | null>('layback/comparison');

/** What follows if a lure ran elsewhere: nothing is written. */
export const tryMove = request<TryMove, Trial | null>('layback/tryMove');

/** The edit that writes such a move into the text: one step to undo. */
export const writeMove = request<MoveWanted, MoveWritten | null>('layback/writeMove');

/** The edit that lets a position and the one across the boat change sides. */
export const swapSides = request<PositionWanted, MoveWritten | null>('layback/swapSides');

/** A drawing as pixels: a PNG file in base 64. */
export const png = request<PngWanted, string>('layback/png');

/** A plan's deck card, as a file. */
export const card = request<CardWanted, Card | null>('layback/card');

/** The plans in a fence of a Markdown text, drawn. */
export const fence = request<FenceWanted, Fence>('layback/fence');

/** Every computed number of a plan, in the form of `layback figures --format json`. */
export const figures = request<PlanWanted, Figures | null>('layback/figures');

/** What one metre, one line or one trade would make of a plan's tightest turns: takes seconds, and can be cancelled. */
export const sensitivity = request<PlanWanted, Sensitivity | null>('layback/sensitivity');

/** What the logs of the workspace tell, in the form of `layback season`. */
export const season = request<Record<string, never>, SeasonText>('layback/season');

/** Every rule, by name; after them the codes of findings that are no rules. */
export const ruleList = request<Record<string, never>, readonly RuleEntry[]>('layback/rules');

/** What a team's folder begins with. */
export const starter = request<Record<string, never>, readonly StarterFile[]>('layback/starter');

/** Where a team's rules are written, for choosing one, and what they say about one rule. */
export const teamRules = request<{ readonly rule: string }, readonly TeamRules[]>('layback/teamRules');

/** Sets how grave a rule is, in one of the team's rules; null where those are not there any more. */
export const ruleSeverity = request<RuleSeverityWanted, WorkspaceEdit | null>('layback/ruleSeverity');

/** The findings of a place that a plan may waive, each with the edit that does it but for its reason. */
export const waivers = request<WaiversWanted, readonly WaiverOffer[]>('layback/waivers');

/** How many findings the workspace has. */
export const tallyOfAll = request<Record<string, never>, Tally>('layback/tally');

// ── The server tells the client ─────────────────────────────────────────────────────────────────────────

/** A file was checked, or its slower findings arrived: whatever shows it may ask again. */
export const checked = notice<Checked>('layback/checked');

/** The findings of the whole workspace were counted anew: the figure in the status bar. */
export const counted = notice<Tally>('layback/counted');

// ── The server asks the client, where it cannot reach the files itself ──────────────────────────────────

/** The bytes of a file in base 64; null where there is none. */
export const readFile = request<{ readonly uri: string }, string | null>('layback/readFile');

/** What a folder holds; null where there is none. */
export const readFolder = request<{ readonly uri: string }, readonly FolderEntry[] | null>(
    'layback/readFolder',
);

/** What stands at an address. */
export const kindOfFile = request<{ readonly uri: string }, FileKind>('layback/kindOfFile');

// ── Commands that lenses and actions name; the client carries them out ──────────────────────────────────

export const commands = {
    /** `[uri, plan]` */
    openDiagram: 'layback.openDiagram',
    /** `[uri, position, locations]`, in the protocol's own shapes */
    showReferences: 'layback.showReferences',
    /** `[uri, plan]`: what its tightest turns hang on */
    showSensitivity: 'layback.showSensitivity',
    /** `[uri, range]`: the findings of a plan */
    showFindings: 'layback.showFindings',
    /** `[name]`: a document, such as `figures` */
    openGuide: 'layback.openGuide',
    /** Asks for completion again: a word was completed that wants another one. */
    suggest: 'editor.action.triggerSuggest',
} as const;

export type OpenDiagramArguments = readonly [uri: string, plan: string];
export type ShowSensitivityArguments = readonly [uri: string, plan: string];
export type ShowReferencesArguments = readonly [uri: string, position: Position, locations: Location[]];
export type ShowFindingsArguments = readonly [uri: string, range: Range];

// ── Shapes ──────────────────────────────────────────────────────────────────────────────────────────────

/** What a client says about itself when it starts the server. All of it may be left out. */
export interface InitializationOptions {
    /** Commands that it carries out; a lens that names another one is shown as text. */
    readonly commands?: readonly string[];
    /** True where it answers `readFile`, `readFolder` and `kindOfFile`. */
    readonly files?: boolean;
    /** Address of the folder that the server lies in, for one that has no disk of its own. */
    readonly beside?: string;
    /** Settings, for a client that has no way of being asked for them. */
    readonly settings?: DeepPartial<Settings>;
}

export interface BuiltInText {
    readonly text: string;
    readonly languageId: 'layback' | 'markdown';
}

export type FileKind = 'file' | 'folder' | 'nothing';

export interface FolderEntry {
    readonly name: string;
    readonly kind: 'file' | 'folder';
}

export interface Tally {
    readonly files: number;
    readonly filesWithFindings: number;
    readonly errors: number;
    readonly warnings: number;
    readonly hints: number;
    /** True while slower findings are still being sought. */
    readonly unfinished: boolean;
}

/** A file after a check. */
export interface Checked {
    readonly uri: string;
    /** Of the open document; absent for a file that nobody has open. */
    readonly version?: number;
    /** `first`: all but what takes long, that as it was; `second`: everything. */
    readonly phase: 'first' | 'second';
    /** How many plans it holds. */
    readonly plans: number;
    readonly errors: number;
    readonly warnings: number;
    readonly hints: number;
}

export interface PlanEntry {
    readonly name: string;
    readonly title: string;
    /** Of its definition. */
    readonly range: Range;
}

export interface PlansOfFile {
    readonly version?: number;
    readonly plans: readonly PlanEntry[];
}

/** One plan of a file: by its name, else the one at a position or the nearest one above it, else the first. */
export interface PlanWanted {
    readonly uri: string;
    readonly plan?: string;
    readonly position?: Position;
}

export interface StarterFile {
    /** Below the folder, with forward slashes. */
    readonly path: string;
    readonly text: string;
}

/** One `rules` definition of the team's. */
export interface TeamRules {
    readonly uri: string;
    readonly name: string;
    readonly title: string;
    /** As it is written there; absent where it says nothing about the rule. */
    readonly severity?: Severity;
}

export interface RuleSeverityWanted {
    readonly uri: string;
    /** The definition that is to say it. */
    readonly name: string;
    readonly rule: string;
    readonly severity: Severity;
}

export interface WaiversWanted {
    readonly uri: string;
    readonly range: Range;
}

/** A finding that can be waived: `before`, a reason, and `after` go to a place in a file. */
export interface WaiverOffer {
    readonly rule: string;
    /** What is waived, in the crew's words. */
    readonly title: string;
    readonly message: string;
    readonly uri: string;
    readonly at: Position;
    readonly before: string;
    readonly after: string;
}
