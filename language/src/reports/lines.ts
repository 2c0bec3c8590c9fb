import { type Finding, messageOf } from '../plan/finding.ts';
import { type Run, sourceOf } from './checked.ts';

/**
 * Findings as compilers print them, one a line: `plans/friday.spread:12:5: warning wave-face in friday: …`.
 * Editors and task runners that know any compiler can be told this form in one expression.
 */
export function linesReport(run: Run): string {
    return run.files
        .flatMap((file) => file.findings)
        .map((finding) => `${lineOf(finding, sourceOf(run, finding.at.uri).path)}\n`)
        .join('');
}

function lineOf(finding: Finding, path: string): string {
    const { line, character } = finding.at.range.start;
    const plan = finding.plan === undefined ? '' : ` in ${finding.plan}`;
    const message = messageOf(finding).replace(/\s+/g, ' ');
    return `${path}:${line + 1}:${character + 1}: ${finding.severity} ${finding.rule}${plan}: ${message}`;
}
