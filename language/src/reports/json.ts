import { type Finding, messageOf } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { ruleNamed } from '../rules/registry.ts';
import { type Run, sourceOf, tallyOf } from './checked.ts';

/** Raised when a field changes its meaning or goes; new fields may appear without. */
export const findingsVersion = 1;

/**
 * Findings as JSON, described by `findings.schema.json` beside this file.
 * Lines and columns count from 1, columns and offsets in UTF-16 code units.
 */
export function jsonReport(run: Run, version: string): string {
    const tally = tallyOf(run.files);
    const report = {
        format: 'layback-findings',
        version: findingsVersion,
        tool: { name: 'layback', version },
        summary: {
            files: tally.files,
            filesWithFindings: tally.filesWithFindings,
            errors: tally.errors,
            warnings: tally.warnings,
            hints: tally.hints,
        },
        refusals: run.refusals,
        files: run.files.map((file) => ({
            path: file.path,
            plans: file.plans.map((one) => one.plan.name),
            findings: file.findings.map((finding) => findingJson(run, finding)),
        })),
    };
    return `${JSON.stringify(report, undefined, 2)}\n`;
}

function findingJson(run: Run, finding: Finding) {
    return {
        rule: finding.rule,
        severity: finding.severity,
        ...standingJson(finding),
        message: messageOf(finding),
        what: finding.what,
        ...(finding.why === undefined ? {} : { why: finding.why }),
        ...(finding.remedy === undefined ? {} : { remedy: finding.remedy }),
        ...(finding.plan === undefined ? {} : { plan: finding.plan }),
        positions: finding.positions,
        at: placeJson(run, finding.at),
        related: finding.related.map((one) => ({ what: one.what, at: placeJson(run, one.at) })),
        fixes: finding.fixes.map((fix) => ({
            title: fix.title,
            safe: fix.safe ?? false,
            edits: fix.edits.map((edit) => ({ at: placeJson(run, edit.at), text: edit.text })),
        })),
        unnecessary: finding.unnecessary ?? false,
    };
}

function standingJson({ rule }: Finding) {
    const kind = ruleNamed(rule)?.standing.kind;
    return kind === undefined ? {} : { standing: kind };
}

function placeJson(run: Run, place: Place) {
    const { start, end } = place.range;
    return {
        path: sourceOf(run, place.uri).path,
        start: { line: start.line + 1, column: start.character + 1, offset: place.start },
        end: { line: end.line + 1, column: end.character + 1, offset: place.end },
    };
}
