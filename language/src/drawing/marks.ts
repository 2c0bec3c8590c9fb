import { type Finding, messageOf, type Severity } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';

/** A finding as the picture carries it: a number in a shape beside what it concerns, its words below. */
export interface Mark {
    readonly id: string;
    readonly number: number;
    readonly severity: Exclude<Severity, 'off'>;
    readonly rule: string;
    readonly message: string;
    /** Names of the positions that it concerns; none where it concerns the plan. */
    readonly positions: readonly string[];
    readonly at: Place;
}

const weight: Readonly<Record<Mark['severity'], number>> = { error: 0, warning: 1, hint: 2 };

/** The findings of a plan, gravest first, then as they stand in the text. */
export function markFindings(findings: readonly Finding[], plan: string): Mark[] {
    return findings
        .filter((finding) => finding.plan === undefined || finding.plan === plan)
        .sort((a, b) => weight[a.severity] - weight[b.severity] || a.at.start - b.at.start)
        .map((finding, i) => ({
            id: `mark:${i + 1}`,
            number: i + 1,
            severity: finding.severity,
            rule: finding.rule,
            message: messageOf(finding),
            positions: finding.positions,
            at: finding.at,
        }));
}
