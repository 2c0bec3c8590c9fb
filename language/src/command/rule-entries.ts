/// <reference path="./rule-pages.d.ts" />
import pages from 'layback:rule-pages';
import type { RuleEntry } from '../reports/sarif.ts';
import { rules } from '../rules/registry.ts';
import { describe } from '../rules/standing.ts';
import { textCodes } from './text-codes.ts';

/** Every rule with its page, by name; after them the codes that are no rules. */
export function ruleEntries(): readonly RuleEntry[] {
    return [...ruleEntriesAlone(), ...textCodes];
}

function ruleEntriesAlone(): readonly RuleEntry[] {
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
