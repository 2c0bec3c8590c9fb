/** The grammar as it is followed through a text without faults; computed when the parser is generated. */
export interface Table {
    readonly tokens: readonly string[];
    /** By type of token, the types that are read for it: `NAME` for an `ID`. None: itself only. */
    readonly members: Readonly<Record<number, readonly number[]>>;
    /** What tokens look like, in the order in which they are tried; words are settled afterwards. */
    readonly patterns: readonly Pattern[];
    /** Characters, and the patterns that something beginning with one of them may fit. */
    readonly openers: readonly (readonly [characters: string, patterns: readonly number[]])[];
    /** The first is where a file begins. */
    readonly rules: readonly RuleRow[];
}

export interface Pattern {
    readonly token: number;
    /** As a regular expression. */
    readonly source: string;
    /** A comment is left out of the grammar, space of the tree too. */
    readonly apart?: 'hidden' | 'skipped';
}

export interface RuleRow {
    /** The type of the node that it makes; none for a fragment, and for what is read as a text. */
    readonly type?: string;
    readonly kind: 'node' | 'text' | 'fragment';
    readonly step: Step;
}

/** `at` counts the elements of the grammar in the order of its text. */
export type Step = Take | Call | Group | Choice | Repeat;

export interface Take {
    readonly do: 'take';
    readonly token: number;
    readonly at: number;
    readonly into?: Into;
    /** How the text of a terminal becomes a value; as it stands, where it does not say. */
    readonly value?: 'NUMBER' | 'STRING';
}

export interface Call {
    readonly do: 'call';
    readonly rule: number;
    readonly at: number;
    readonly into?: Into;
}

export interface Into {
    readonly feature: string;
    readonly operator: '=' | '+=' | '?=';
    readonly reference?: true;
}

export interface Group {
    readonly do: 'group';
    readonly steps: readonly Step[];
}

export interface Choice {
    readonly do: 'choice';
    readonly steps: readonly Step[];
    /** By step, the types of tokens that lead there; the first that fits. */
    readonly on: number[][];
}

export interface Repeat {
    readonly do: 'maybe' | 'many';
    readonly step: Step;
    /** The types of tokens that it may begin with. */
    readonly on: number[][];
}
