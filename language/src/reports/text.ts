import type { Finding } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { ruleNamed } from '../rules/registry.ts';
import { type Run, type Source, sourceOf, type Tally, tallyOf } from './checked.ts';
import { excerpt } from './excerpt.ts';
import { type Ink, noColours } from './ink.ts';
import { padStart, readable, type Width, widthFor, wrap } from './width.ts';

export interface TextOptions {
    readonly ink?: Ink;
    /** Width of the terminal; without one, sentences are not broken. */
    readonly columns?: number;
    /** Leave out the line that sums up. */
    readonly quiet?: boolean;
}

/** Without a terminal, lines of source are cut at this width: a plan is never written so wide. */
const excerptColumns = 120;
const leastColumns = 40;

/** Findings as a person reads them: by file, each with its line of source and carets under the place. */
export async function textReport(run: Run, options: TextOptions = {}): Promise<string> {
    const page: Page = {
        run,
        ink: options.ink ?? noColours,
        columns: options.columns === undefined ? undefined : Math.max(leastColumns, options.columns),
        width: await widthFor(textsOf(run)),
    };
    const lines: string[] = [];
    for (const file of run.files) {
        if (file.findings.length === 0) continue;
        lines.push(page.ink.strong(readable(file.path)));
        for (const finding of file.findings) lines.push(...findingLines(finding, file, page), '');
    }
    if (!options.quiet && run.files.length > 0) lines.push(summaryLine(tallyOf(run.files), page.ink));
    return lines.length === 0 ? '' : `${lines.join('\n')}\n`;
}

interface Page {
    readonly run: Run;
    readonly ink: Ink;
    readonly columns: number | undefined;
    readonly width: Width;
}

function textsOf(run: Run): string[] {
    return run.files.flatMap((file) =>
        file.findings.length === 0
            ? []
            : [file.text, ...file.findings.flatMap((one) => [one.what, one.why ?? '', one.remedy ?? ''])],
    );
}

function findingLines(finding: Finding, file: Source, page: Page): string[] {
    const { ink } = page;
    const plan = finding.plan === undefined ? '' : ink.faint(` in ${readable(finding.plan)}`);
    const severity = ink.severity(finding.severity, finding.severity);
    const elsewhere = finding.at.uri === file.uri ? '' : `${pathShown(finding.at, page)}:`;
    const place = ink.faint(elsewhere + lineAndColumn(finding.at));
    return [
        `  ${place} ${severity} ${ink.strong(finding.rule)}${plan}${ink.faint(standingOf(finding))}`,
        ...[finding.what, finding.why, finding.remedy].flatMap((sentence) => indented(sentence, page)),
        ...sourceLines(finding, file, page),
        ...finding.related.map((related) => {
            const path = pathShown(related.at, page);
            return ink.faint(`    see ${path}:${lineAndColumn(related.at)} ${readable(related.what)}`);
        }),
        ...finding.fixes.map((fix) => ink.faint(`    quick fix: ${readable(fix.title)}`)),
    ];
}

/** On what the rule stands, in a word; of a fault in the text there is nothing to say. */
function standingOf({ rule }: Finding): string {
    const kind = ruleNamed(rule)?.standing.kind;
    return kind === undefined || kind === 'housekeeping' ? '' : ` (${kind})`;
}

function indented(sentence: string | undefined, page: Page): string[] {
    if (!sentence) return [];
    const columns = page.columns === undefined ? Number.POSITIVE_INFINITY : page.columns - 4;
    return wrap(readable(sentence), columns, page.width).map((line) => `    ${line}`);
}

function sourceLines(finding: Finding, file: Source, page: Page): string[] {
    const source = finding.at.uri === file.uri ? file : sourceOf(page.run, finding.at.uri);
    if (source.text.length === 0) return [];
    const number = String(finding.at.range.start.line + 1);
    const gutter = Math.max(number.length, 4);
    const columns = (page.columns ?? excerptColumns) - gutter - 3;
    const { line, carets } = excerpt(source.text, finding.at, columns, page.width);
    const { ink } = page;
    return [
        `${ink.faint(`${padStart(number, gutter, page.width)} |`)} ${line}`.trimEnd(),
        `${ink.faint(`${' '.repeat(gutter)} |`)} ${ink.severity(finding.severity, carets)}`,
    ];
}

function pathShown(place: Place, page: Page): string {
    return readable(sourceOf(page.run, place.uri).path);
}

function lineAndColumn(place: Place): string {
    return `${place.range.start.line + 1}:${place.range.start.character + 1}`;
}

function summaryLine(tally: Tally, ink: Ink): string {
    const files = count(tally.files, 'file');
    if (tally.filesWithFindings === 0) return `${files} checked, nothing found.`;
    const parts = [
        tally.errors > 0 && ink.severity('error', count(tally.errors, 'error')),
        tally.warnings > 0 && ink.severity('warning', count(tally.warnings, 'warning')),
        tally.hints > 0 && ink.severity('hint', count(tally.hints, 'hint')),
    ].filter(Boolean);
    const among = tally.files === 1 ? '1 file' : `${tally.filesWithFindings} of ${files}`;
    return `${parts.join(', ')} in ${among}.`;
}

function count(number: number, noun: string): string {
    return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
