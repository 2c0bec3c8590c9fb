/// <reference path="./rule-pages.d.ts" />
import pages from 'layback:rule-pages';
import type { RuleEntry } from '../reports/sarif.ts';
import { rules } from '../rules/registry.ts';
import { describe } from '../rules/standing.ts';
import { textCodes } from '../rules/text-codes.ts';

/** Every rule with its page, by name; after them the codes that are no rules. */
export function ruleEntries(): readonly RuleEntry[] {
    return [...ruleEntriesAlone(), ...textCodes.map((code) => ({ ...code, ...pageOf(code.name) }))];
}

function ruleEntriesAlone(): readonly RuleEntry[] {
    return rules.map((rule) => ({
        name: rule.name,
        group: rule.group,
        summary: rule.summary,
        standing: describe(rule.standing),
        severity: rule.severity,
        ...pageOf(rule.name),
    }));
}

function pageOf(name: string): Pick<RuleEntry, 'page'> {
    const page = pages[name];
    return page === undefined ? {} : { page };
}
