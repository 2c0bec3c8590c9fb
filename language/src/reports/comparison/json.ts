import { type Finding, messageOf } from '../../plan/finding.ts';
import { type Comparison, isDifferent, type PlanChange } from './comparison.ts';
import type { FindingsApart } from './findings-apart.ts';

/** Raised when a field changes its meaning or goes; new fields may appear without. */
export const comparisonVersion = 1;

/** The comparison as JSON, described by `comparison.schema.json` beside this file. */
export function comparisonJson(comparison: Comparison, version: string): string {
    const { before, after, changed, come, gone, same, findings } = comparison;
    const report = {
        format: 'layback-comparison',
        version: comparisonVersion,
        tool: { name: 'layback', version },
        before,
        after,
        different: isDifferent(comparison),
        changed: changed.map(planJson),
        new: come,
        gone,
        same,
        findings: findingsJson(findings),
    };
    return `${JSON.stringify(report, undefined, 2)}\n`;
}

function planJson({ before, after, told, changes, figures, findings, turns, orders }: PlanChange) {
    return {
        before,
        after,
        words: told,
        changes: changes.map(({ change, words }) => ({ ...change, words })),
        figures,
        findings: findingsJson(findings),
        turns,
        orders,
    };
}

function findingsJson({ came, went }: FindingsApart) {
    return { new: came.map(findingJson), gone: went.map(findingJson) };
}

function findingJson(finding: Finding) {
    const { rule, severity, positions, plan } = finding;
    return { rule, severity, message: messageOf(finding), positions, ...(plan !== undefined && { plan }) };
}
