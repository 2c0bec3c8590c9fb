import type { AnalysedPlan } from '../plan/figures.ts';
import type { Fix, Severity } from '../plan/finding.ts';
import type { Position, Resolved, Spread, Waiver } from '../plan/model.ts';
import type { Origin, Place, Said } from '../plan/origin.ts';
import type { Settings, Values } from './settings.ts';
import type { Standing } from './standing.ts';

/**
 * One thing that can be wrong with a plan.
 *
 * A rule is what it says in data and a check that reads figures: it never parses, computes no physics, does no
 * I/O and reads no clock. Whatever else is known of a rule (its code, its page, its place in the index) follows
 * from this object.
 */
export interface Rule<S extends Settings = Settings> {
    /** A readable slug: the folder's name, and the code of every finding. */
    readonly name: string;
    readonly group: Group;
    readonly standing: Standing;
    readonly severity: Severity;
    /** One line, as it stands in the index. */
    readonly summary: string;
    readonly settings: S;
    /** Figures that come on their own and later than the rest; until they are there the rule has nothing to say. */
    readonly reads?: 'turns';
    /** Rules that name the cause of what this one would say about the same lines: one cause, one finding. */
    readonly givesWayTo?: readonly string[];
    /** Says nothing of a plan that others are like while it has no boat or no speed: it is there to be completed. */
    readonly spares?: 'presets';
    /** Judges one plan. */
    check?(analysis: AnalysedPlan, settings: Values<S>, report: Report): void;
    /** Judges one file as a whole; a plan's settings and waivers do not reach it. */
    checkFile?(file: JudgedFile, settings: Values<S>, report: Report): void;
    /** Judges what became of a plan's waivers, once every other rule has spoken. */
    checkWaivers?(plan: Spread, outcomes: readonly WaiverOutcome[], report: Report): void;
}

/** A file as it is judged. */
export interface JudgedFile extends Resolved {
    /** The language that it says it is written in: `layback 1`. */
    readonly version?: Said<string>;
}

export const groups = [
    'layout',
    'waves and speed',
    'drag and strike',
    'tackle',
    'hooks',
    'written rules',
    'crew',
    'the file itself',
] as const;

export type Group = (typeof groups)[number];

/** Says what was found. */
export type Report = (problem: Problem) => void;

export interface Problem {
    /** Of several the first that stands in the plan's own file is shown, so the most exact one comes first. */
    readonly at: Where | readonly Where[];
    /** One sentence: the thing as the crew calls it, and the two numbers. Its first letter is made a capital. */
    readonly what: string;
    /** One sentence: why it matters. */
    readonly why?: string;
    /** One sentence: what to do. */
    readonly remedy?: string | undefined;
    readonly related?: readonly { readonly at: Where | undefined; readonly what: string }[];
    /** `undefined` entries are fixes that the text does not allow. */
    readonly fixes?: readonly (Fix | undefined)[];
    /** How it is said where one place has several of its kind. */
    readonly together?: Together;
    /** The lines that it concerns. */
    readonly positions?: readonly { readonly position: Position }[];
    /** Where this case is graver or milder than the rule's own severity; a team's own choice still wins. */
    readonly severity?: Exclude<Severity, 'off'>;
    readonly unnecessary?: boolean;
    /** Of a log: the plan in use, whose settings judge it, also where that stands in a file of its own. */
    readonly judgedBy?: Spread;
}

/** One number of a plan can be wrong for many lines: then the plan hears it once, with each of them beside it. */
export interface Together {
    /** Only what is of one kind goes together, and of one severity, in one place. */
    readonly kind: string;
    /** Whom it is about, as a list says it: `port long rigger`. */
    readonly name: string;
    /** What is said of several, as one sentence. */
    what(names: string): string;
    /** What is said of this one beside it, and where that is. */
    readonly each: { readonly at: Where | undefined; readonly what: string };
    /** Otherwise as each says it by itself, where they all say the same. */
    readonly why?: string;
    readonly remedy?: string | undefined;
    readonly fixes?: Problem['fixes'];
}

/** Anything that knows where it was said: a measure, a said value, a line, a definition. */
export type Where = Place | Origin | { readonly origin: Origin };

/** What a waiver did in its plan. `idle` says why it did nothing. */
export interface WaiverOutcome {
    readonly waiver: Waiver;
    readonly waived: number;
    readonly idle?: 'no reason' | 'run out' | 'nothing to waive';
}

/** Declares a rule, so that its check knows the types of its settings. */
export function rule<const S extends Settings>(declared: Rule<S>): Rule<S> {
    return declared;
}

export function placeOf(where: Where): Place {
    const origin = originOf(where);
    return origin ? origin.place : (where as Place);
}

/** The origin of whatever has one; a bare place has none. */
export function originOf(where: Where): Origin | undefined {
    if ('origin' in where) return where.origin;
    return 'place' in where ? where : undefined;
}
