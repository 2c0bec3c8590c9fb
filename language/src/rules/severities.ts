import type { Severity } from '../plan/finding.ts';
import type { RuleSetting } from '../plan/model.ts';
import type { Rule } from './rule.ts';
import { fallbacks, isUsable, type Setting, type Values } from './settings.ts';

/** How hard a rule judges a plan: its own word, unless the plan or its event has another. */
export interface Strictness {
    readonly severity: Severity;
    /** True where the team chose the severity: then no case is graver or milder than that. */
    readonly chosen: boolean;
    readonly values: Values<Rule['settings']>;
}

/** @param said  the plan's own settings first, then its event's: the first word on anything is the last */
export function strictness(rule: Rule, said: readonly RuleSetting[]): Strictness {
    if (said.length === 0) return usual(rule);
    const about = said.filter((setting) => setting.rule.value === rule.name);
    if (about.length === 0) return usual(rule);
    const severity = about.map((setting) => setting.severity?.value).find((said) => said && said in grades);
    const values = fallbacks(rule.settings);
    for (const setting of [...about].reverse()) {
        for (const [name, given] of setting.settings) {
            const declared = rule.settings[name];
            const value = declared && valueGiven(declared, given);
            if (value !== undefined) values[name] = value;
        }
    }
    return { severity: severity ?? rule.severity, chosen: severity !== undefined, values };
}

const ownWords = new WeakMap<Rule, Strictness>();

/** A rule's own word, the same object every time: most plans have no other. */
function usual(rule: Rule): Strictness {
    let strict = ownWords.get(rule);
    if (!strict) {
        strict = { severity: rule.severity, chosen: false, values: fallbacks(rule.settings) };
        ownWords.set(rule, strict);
    }
    return strict;
}

const grades: Readonly<Record<Severity, true>> = { error: true, warning: true, hint: true, off: true };

type Given = RuleSetting['settings'] extends ReadonlyMap<string, infer G> ? G : never;

/** A setting of the wrong kind, or beyond its bounds, is reported where it is written and has no effect. */
function valueGiven(setting: Setting, { si, measure }: Given): number | undefined {
    const dimension = measure?.quantity?.unit.dimension;
    const given =
        dimension === undefined || dimension === setting.dimension ? (si ?? measure?.si) : undefined;
    return given !== undefined && isUsable(given, setting) ? given : undefined;
}
