import type { PlanEntry, PlanWanted } from './protocol.ts';

/* What server and extension say to each other about what is printed: types alone, like all of the protocol. */

/** A drawing in pixels. */
export interface PngWanted {
    readonly svg: string;
    /** 150 by default. */
    readonly dpi?: number;
}

export interface CardWanted extends PlanWanted {
    /** `html` is the page for a telephone. */
    readonly form: 'pdf' | 'html' | 'svg' | 'png';
    /** `half` is A5. */
    readonly paper: 'a4' | 'letter' | 'half';
    /** Of a png; 150 by default. */
    readonly dpi?: number;
}

export interface Card {
    readonly uri: string;
    readonly version?: number;
    readonly plan: PlanEntry;
    /** The file in base 64. */
    readonly content: string;
    /** Whether letters that print has no face for are counted on it instead of shown. */
    readonly curtailed: boolean;
    /** In the text that it was made of: what is wrong there is wrong on the card. */
    readonly errors: number;
}

export interface FenceWanted {
    /** Of the text around it: what the fence uses is looked for from there. */
    readonly uri: string;
    readonly text: string;
}

export interface Fence {
    /** Every plan from above, as SVG. */
    readonly pictures: readonly string[];
    /** What keeps it from being read, in words. */
    readonly told: readonly string[];
}

/** What the logs of the workspace tell. */
export interface SeasonText {
    /** How many logs there are. */
    readonly days: number;
    /** As `layback season` prints it. */
    readonly text: string;
}

export interface Figures {
    readonly uri: string;
    readonly version?: number;
    readonly name: string;
    readonly title: string;
    /** As `layback figures` prints it. */
    readonly text: string;
    /** One entry of `plans` in `figures.schema.json`. */
    readonly plan: Readonly<Record<string, unknown>>;
}

/** What the tightest turns of a plan hang on, at one version of its text. */
export interface Sensitivity {
    readonly uri: string;
    readonly version?: number;
    readonly name: string;
    readonly title: string;
    /** As `layback figures --sensitivity` prints it. */
    readonly text: string;
}
