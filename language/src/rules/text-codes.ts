import type { LanguageCode } from '../plan/checks/problem.ts';
import type { Severity } from '../plan/finding.ts';

/** What can be wrong with a file beside what the rules judge: its text, its size, or what a team keeps about it. */
export type TextCode = LanguageCode | 'file-size' | 'nesting' | 'baseline-stale';

/** A code that is no rule: it cannot be set, and a plan cannot waive it. */
export interface TextCodeEntry {
    readonly name: TextCode;
    readonly group: 'the text';
    readonly summary: string;
    readonly standing: string;
    readonly severity: Severity;
}

const summaries: Readonly<Record<TextCode, string>> = {
    syntax: 'The text cannot be read at this place. The rest of the file still is, as far as it can be.',
    'unknown-word':
        'A word means nothing in the block it stands in. Often it is misspelt, or belongs one block up or down.',
    'unknown-name':
        'A name leads to nothing: it is misspelt, its file is not used, or the boat has no such tow point.',
    quantity: 'A number lacks a unit, has one of the wrong kind, or is outside what makes sense on a boat.',
    value: 'A value is none of those that fit here, or contradicts another one.',
    duplicate: 'Something is said or defined twice, and only one of the two can count.',
    conflict: 'Two branches changed one thing, each otherwise, and nobody has chosen yet.',
    use: 'A `use` line leads to no file that can be read, or leads in a circle.',
    like: 'A definition is like something that it cannot be like: itself, in a circle, or another kind of thing.',
    'preset-idle': 'An override takes back or repeats what a preset never said, so it does nothing.',
    'preset-lost': 'A part names again what the preset has, and so loses what the preset said of it.',
    'file-size': 'A file is larger than any plan. It is not read.',
    nesting:
        'Blocks stand inside one another deeper than in any plan: as a rule, closing braces are missing.',
    'baseline-stale': 'What a baseline knows of a file is gone from it.',
};

const milder: ReadonlyMap<string, Severity> = new Map([
    ['preset-idle', 'warning'],
    ['baseline-stale', 'warning'],
    ['preset-lost', 'hint'],
]);

/** Every code that is no rule, by how likely a crew is to meet it. */
export const textCodes: readonly TextCodeEntry[] = Object.entries(summaries).map(([name, summary]) => ({
    name: name as TextCode,
    group: 'the text',
    summary,
    standing: 'About the text, not about the fishing; it cannot be set or waived.',
    severity: milder.get(name) ?? 'error',
}));

export function textCodeNamed(name: string): TextCodeEntry | undefined {
    return textCodes.find((code) => code.name === name);
}
