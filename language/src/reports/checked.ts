import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Day } from '../plan/model.ts';

/** A text that a place can point into: a file of the team's, or one of the built-in library. */
export interface Source {
    readonly uri: string;
    /** As reports print it: relative to where the check ran, with forward slashes. */
    readonly path: string;
    readonly text: string;
}

/** One file as a check leaves it. */
export interface Checked extends Source {
    /** In the order of the text. */
    readonly findings: readonly Finding[];
    readonly plans: readonly AnalysedPlan[];
    /** Days of this file, and plans of other files that they name, as those were checked. */
    readonly days?: readonly Day[];
    readonly plansOfDays?: readonly PlanOfDay[];
    /** By the plan's name: what concerns it, also where another plan is where it was said. */
    readonly concerning: ReadonlyMap<string, readonly Finding[]>;
}

/** A plan that a day names, out of another file. */
export interface PlanOfDay {
    readonly plan: AnalysedPlan;
    readonly findings: readonly Finding[];
}

/** A whole check: what every report is made from. */
export interface Run {
    /** In the order in which they are reported. */
    readonly files: readonly Checked[];
    /** Every text that a finding may point into, by its URI: these files and what they reach. */
    readonly sources: ReadonlyMap<string, Source>;
    /** What could not be looked at, and why, one sentence each; nothing was concluded about it. */
    readonly refusals: readonly string[];
}

export interface Tally {
    readonly files: number;
    readonly filesWithFindings: number;
    readonly errors: number;
    readonly warnings: number;
    readonly hints: number;
}

export function tallyOf(files: readonly Checked[]): Tally {
    const findings = files.flatMap((file) => file.findings);
    const of = (severity: Finding['severity']) => findings.filter((one) => one.severity === severity).length;
    return {
        files: files.length,
        filesWithFindings: files.filter((file) => file.findings.length > 0).length,
        errors: of('error'),
        warnings: of('warning'),
        hints: of('hint'),
    };
}

/** The source that a place points into; an unknown one stands for itself, without text. */
export function sourceOf(run: Run, uri: string): Source {
    return run.sources.get(uri) ?? { uri, path: uri, text: '' };
}
