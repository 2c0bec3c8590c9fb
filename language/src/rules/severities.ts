import type { Severity } from '../plan/finding.ts';
import type { RuleSetting } from '../plan/model.ts';
import type { Rule } from './rule.ts';
import { fallbacks, type Setting, type Values } from './settings.ts';

/** How hard a rule judges a plan: its own word, unless the plan or its event has another. */
export interface Strictness {
    readonly severity: Severity;
    /** True where the team chose the severity: then no case is graver or milder than that. */
    readonly chosen: boolean;
    readonly values: Values<Rule['settings']>;
}

/** @param said  the plan's own settings first, then its event's: the first word on anything is the last */
export function strictness(rule: Rule, said: readonly RuleSetting[]): Strictness {
    const about = said.filter((setting) => setting.rule.value === rule.name);
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

const grades: Readonly<Record<Severity, true>> = { error: true, warning: true, hint: true, off: true };

type Given = RuleSetting['settings'] extends ReadonlyMap<string, infer G> ? G : never;

/** A setting of the wrong kind is reported where it is written and has no effect. */
function valueGiven(setting: Setting, { value, si, measure }: Given): number | string | undefined {
    if (setting.kind === 'choice') {
        return setting.options.find((option) => option === value);
    }
    const dimension = measure?.quantity?.unit.dimension;
    return dimension === undefined || dimension === setting.dimension ? (si ?? measure?.si) : undefined;
}
