import type { LanguageCode } from '../plan/checks/problem.ts';
import type { RuleEntry } from '../reports/sarif.ts';
import type { Unfit } from './reading.ts';

/** What the codes mean that are no rules: a text that cannot be read cannot be judged, set or waived. */
const meanings: Readonly<Record<LanguageCode | Unfit['rule'], string>> = {
    syntax: 'The text cannot be read at this place. The rest of the file still is, as far as it can be.',
    'unknown-word':
        'A word means nothing in the block it stands in. Often it is misspelt, or belongs one block up or down.',
    'unknown-name': 'A name leads to nothing: it is misspelt, or the file that defines it is not used.',
    quantity: 'A number lacks a unit, has one of the wrong kind, or is outside what makes sense on a boat.',
    value: 'A value is none of those that fit here.',
    duplicate: 'Something is said or defined twice, and only one of the two can count.',
    use: 'A `use` line leads to no file that can be read, or leads in a circle.',
    like: 'A definition is like something that it cannot be like: itself, in a circle, or another kind of thing.',
    'preset-idle': 'An override takes back or repeats what a preset never said, so it does nothing.',
    'file-size': 'A file is larger than any plan. It is not read.',
    nesting:
        'Blocks stand inside one another deeper than in any plan: as a rule, closing braces are missing.',
};

/** The codes as a report lists them, beside the rules. */
export const textCodes: readonly RuleEntry[] = Object.entries(meanings).map(([name, summary]) => ({
    name,
    group: 'the text',
    summary,
    standing: 'About the text, not about the fishing; it cannot be waived.',
    severity: name === 'preset-idle' ? 'warning' : 'error',
}));
