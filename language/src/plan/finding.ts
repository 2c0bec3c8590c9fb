import type { Place } from './origin.ts';

export type Severity = 'error' | 'warning' | 'hint' | 'off';

/** A replacement in one file. Edits of one fix never overlap. */
export interface Edit {
    readonly at: Place;
    readonly text: string;
}

export interface Fix {
    /** What the crew would say they did: `Move the lure to 22.8 m`. */
    readonly title: string;
    readonly edits: readonly Edit[];
    /** May be applied unseen, on save: it changes no decision of the crew's. */
    readonly safe?: boolean;
}

export interface Related {
    readonly at: Place;
    readonly what: string;
}

/** What one check found. One sentence each: what is wrong with the numbers, why it matters, what to do. */
export interface Finding {
    /** The rule's name, which is its code: `stagger`. Syntax and names have codes of their own. */
    readonly rule: string;
    readonly severity: Exclude<Severity, 'off'>;
    readonly at: Place;
    readonly what: string;
    readonly why?: string;
    readonly remedy?: string;
    readonly related: readonly Related[];
    readonly fixes: readonly Fix[];
    /** The position(s) that it concerns, by name, so that the drawing can mark them. */
    readonly positions: readonly string[];
    /** Shown faded in an editor: it does nothing. */
    readonly unnecessary?: boolean;
    /** The plan that it was found in, where it concerns one. */
    readonly plan?: string;
}

/** The finding as a person reads it. */
export function messageOf(finding: Pick<Finding, 'what' | 'why' | 'remedy'>): string {
    return [finding.what, finding.why, finding.remedy].filter(Boolean).join(' ');
}
