import type { Finding, Fix, Related } from '../finding.ts';
import type { Place } from '../origin.ts';

/** The codes of what can be wrong with a text before anything is known about the plan in it. */
export type LanguageCode =
    | 'syntax'
    | 'unknown-word'
    | 'unknown-name'
    | 'quantity'
    | 'value'
    | 'duplicate'
    | 'conflict'
    | 'use'
    | 'like'
    | 'preset-idle'
    | 'preset-lost';

interface Said {
    readonly what: string;
    /** Nothing where nothing is to be said; the code's own word where this is absent. */
    readonly why?: string;
    readonly remedy?: string | undefined;
    readonly severity?: Finding['severity'];
    readonly related?: readonly Related[];
    readonly fixes?: readonly Fix[];
    readonly unnecessary?: boolean;
}

/** Why it matters, where the case itself says nothing else. */
const whys: Readonly<Partial<Record<LanguageCode, string>>> = {
    'unknown-word': 'It counts as not written.',
    'unknown-name': 'What leans on it is not known.',
    quantity: 'It counts as not written: nothing is computed from it.',
    value: 'It counts as not written.',
};

/** A finding about the text itself. It cannot be waived: a plan that cannot be read cannot be judged. */
export function problem(rule: LanguageCode, at: Place, said: Said): Finding {
    const { severity = 'error', why = severity === 'error' ? whys[rule] : undefined } = said;
    return {
        rule,
        severity,
        at,
        what: said.what,
        ...(why && { why }),
        ...(said.remedy && { remedy: said.remedy }),
        related: said.related ?? [],
        fixes: said.fixes ?? [],
        positions: [],
        ...(said.unnecessary && { unnecessary: true }),
    };
}

/** A fix that puts one text in the place of another. */
export function instead(at: Place, text: string): Fix {
    return { title: `Change to \`${text}\``, edits: [{ at, text }] };
}
