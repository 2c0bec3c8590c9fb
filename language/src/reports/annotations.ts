import { type Finding, messageOf } from '../plan/finding.ts';
import { type Run, sourceOf } from './checked.ts';

const commands = { error: 'error', warning: 'warning', hint: 'notice' } as const;

/**
 * Findings as workflow commands, one a line, which GitHub shows beside the changed lines.
 * Form and escapes: GitHub Docs, "Workflow commands for GitHub Actions", setting an error message; and its
 * published toolkit (`@actions/core`, command.ts) for which characters are escaped where.
 */
export function annotations(run: Run): string {
    return run.files
        .flatMap((file) => file.findings)
        .map((finding) => `${annotation(finding, sourceOf(run, finding.at.uri).path)}\n`)
        .join('');
}

function annotation(finding: Finding, path: string): string {
    const { start, end } = finding.at.range;
    const properties: Record<string, string | number> = {
        title: finding.plan === undefined ? finding.rule : `${finding.rule} in ${finding.plan}`,
        file: path,
        line: start.line + 1,
        endLine: end.line + 1,
        // Columns are only read where the place stays on one line.
        ...(start.line === end.line ? { col: start.character + 1, endColumn: end.character + 1 } : {}),
    };
    const list = Object.entries(properties).map(
        ([name, value]) => `${name}=${escapeProperty(String(value))}`,
    );
    return `::${commands[finding.severity]} ${list.join(',')}::${escapeText(messageOf(finding))}`;
}

function escapeText(text: string): string {
    return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapeProperty(text: string): string {
    return escapeText(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
