/// <reference path="./rule-pages.d.ts" />
import pages from 'layback:rule-pages';
import type { RuleEntry } from '../reports/sarif.ts';
import { rules } from '../rules/registry.ts';
import { describe } from '../rules/standing.ts';

/** Every rule with its page, by name. */
export function ruleEntries(): readonly RuleEntry[] {
    return rules.map((rule) => {
        const page = pages[rule.name];
        return {
            name: rule.name,
            group: rule.group,
            summary: rule.summary,
            standing: describe(rule.standing),
            severity: rule.severity,
            ...(page !== undefined && { page }),
        };
    });
}
