import { createHash } from 'node:crypto';
import { type Finding, messageOf } from '../plan/finding.ts';
import { type Run, sourceOf } from '../reports/checked.ts';

const severities = { error: 'major', warning: 'minor', hint: 'info' } as const;

/**
 * Findings as GitLab shows them beside a merge request. Fields: GitLab Docs, "Code Quality report format":
 * description, check_name, fingerprint, severity, location.path and location.lines.begin.
 */
export function codeQuality(run: Run): string {
    const times = new Map<string, number>();
    const entries = run.files.flatMap(({ findings }) =>
        findings.map((finding) => {
            const { path } = sourceOf(run, finding.at.uri);
            const about = aboutOf(finding, path);
            const time = (times.get(about) ?? 0) + 1;
            times.set(about, time);
            return {
                description: messageOf(finding),
                check_name: finding.rule,
                fingerprint: createHash('sha256').update(`${about} ${time}`).digest('hex'),
                severity: severities[finding.severity],
                location: { path, lines: { begin: finding.at.range.start.line + 1 } },
            };
        }),
    );
    return `${JSON.stringify(entries, undefined, 2)}\n`;
}

/** A finding is the same one wherever its line has moved to and whatever its numbers have become. */
function aboutOf({ rule, plan, positions, what }: Finding, path: string): string {
    return JSON.stringify([path, rule, plan, plan === undefined ? what : positions]);
}
