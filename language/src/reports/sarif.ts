import type {
    ArtifactLocation,
    Location,
    Log,
    PhysicalLocation,
    Region,
    ReportingDescriptor,
    Result,
    Fix as SarifFix,
} from 'sarif';
import { type Edit, type Finding, type Fix, messageOf, type Severity } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { type Run, sourceOf } from './checked.ts';

/** What a report tells of a rule beside its findings. */
export interface RuleEntry {
    readonly name: string;
    readonly group: string;
    readonly summary: string;
    /** What it stands on, in a sentence. */
    readonly standing: string;
    readonly severity: Severity;
    /** Its page, Markdown. */
    readonly page?: string;
    readonly link?: string;
}

export interface SarifOptions {
    /** Of this tool. */
    readonly version: string;
    /** Every rule that could have spoken. */
    readonly rules: readonly RuleEntry[];
    /** The folder that relative paths start from, as a `file:` URI ending in a slash. */
    readonly root: string;
}

const levels = { error: 'error', warning: 'warning', hint: 'note', off: 'none' } as const;
const base = '%SRCROOT%';

/**
 * Findings in the Static Analysis Results Interchange Format 2.1.0 (OASIS Standard, 27 March 2020), which code
 * hosts and editors read. Columns count UTF-16 code units, as `columnKind` says.
 */
export function sarifReport(run: Run, options: SarifOptions): string {
    const rules = descriptors(run, options.rules);
    const indexOf = new Map(rules.map((rule, index) => [rule.id, index]));
    const identities = new Map<string, number>();
    const log: Log = {
        $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
        version: '2.1.0',
        runs: [
            {
                tool: { driver: { name: 'Layback', semanticVersion: options.version, rules } },
                columnKind: 'utf16CodeUnits',
                originalUriBaseIds: { [base]: { uri: options.root } },
                invocations: [
                    {
                        executionSuccessful: run.refusals.length === 0,
                        toolExecutionNotifications: run.refusals.map((text) => ({
                            level: 'error',
                            message: { text },
                        })),
                    },
                ],
                artifacts: run.files.map((file) => ({
                    location: artifact(run, file.uri),
                    encoding: 'UTF-8',
                    sourceLanguage: 'layback',
                })),
                results: run.files.flatMap((file) =>
                    file.findings.map((finding) =>
                        result(run, finding, indexOf.get(finding.rule)!, identity(run, finding, identities)),
                    ),
                ),
            },
        ],
    };
    return `${JSON.stringify(log, undefined, 2)}\n`;
}

/** The rules, and after them whatever else spoke: syntax and names have codes that are no rules. */
function descriptors(run: Run, rules: readonly RuleEntry[]): ReportingDescriptor[] {
    const known = new Set(rules.map((rule) => rule.name));
    const spoken = run.files.flatMap((file) => file.findings.map((finding) => finding.rule));
    const others = [...new Set(spoken)].filter((code) => !known.has(code)).sort();
    return [...rules.map(descriptor), ...others.map((id) => ({ id }))];
}

function descriptor(rule: RuleEntry): ReportingDescriptor {
    const help = `${rule.summary}\n\n${rule.standing}`;
    return {
        id: rule.name,
        shortDescription: { text: rule.summary },
        fullDescription: { text: `${rule.summary} ${rule.standing}` },
        help: { text: help, markdown: rule.page ?? help },
        ...(rule.link === undefined ? {} : { helpUri: rule.link }),
        defaultConfiguration: { enabled: rule.severity !== 'off', level: levels[rule.severity] },
        properties: { tags: [rule.group], standing: rule.standing },
    };
}

function result(run: Run, finding: Finding, ruleIndex: number, identity: string): Result {
    return {
        ruleId: finding.rule,
        ruleIndex,
        level: levels[finding.severity],
        message: { text: messageOf(finding) },
        locations: [{ physicalLocation: physical(run, finding.at), ...logical(finding) }],
        ...(finding.related.length === 0
            ? {}
            : {
                  relatedLocations: finding.related.map(
                      (related, id): Location => ({
                          id,
                          message: { text: related.what },
                          physicalLocation: physical(run, related.at),
                      }),
                  ),
              }),
        ...(finding.fixes.length === 0 ? {} : { fixes: finding.fixes.map((fix) => sarifFix(run, fix)) }),
        partialFingerprints: { 'layback/v1': identity },
    };
}

function logical(finding: Finding): Pick<Location, 'logicalLocations'> {
    const { plan } = finding;
    if (plan === undefined) return {};
    const positions = finding.positions.map((position) => ({
        name: position,
        fullyQualifiedName: `${plan}/${position}`,
        kind: 'member',
    }));
    return { logicalLocations: [{ name: plan, fullyQualifiedName: plan, kind: 'object' }, ...positions] };
}

/** What stays the same of a finding while lines move and numbers change. */
function identity(run: Run, finding: Finding, met: Map<string, number>): string {
    const path = sourceOf(run, finding.at.uri).path;
    const what = [finding.rule, path, finding.plan ?? '', ...finding.positions].join('|');
    const before = met.get(what) ?? 0;
    met.set(what, before + 1);
    return `${what}|${before + 1}`;
}

function physical(run: Run, place: Place): PhysicalLocation {
    return { artifactLocation: artifact(run, place.uri), region: region(place) };
}

/** Relative inside the root; a file elsewhere, or one of the library, keeps its whole URI. */
function artifact(run: Run, uri: string): ArtifactLocation {
    const { path } = sourceOf(run, uri);
    const outside = path === uri || path.startsWith('/') || path === '..' || path.startsWith('../');
    if (outside || /^[a-z]:\//i.test(path)) return { uri };
    return { uri: path.split('/').map(encodeURIComponent).join('/'), uriBaseId: base };
}

function region({ range: { start, end } }: Place): Region {
    return {
        startLine: start.line + 1,
        startColumn: start.character + 1,
        endLine: end.line + 1,
        endColumn: end.character + 1,
    };
}

function sarifFix(run: Run, fix: Fix): SarifFix {
    const byFile = new Map<string, Edit[]>();
    for (const edit of fix.edits) byFile.set(edit.at.uri, [...(byFile.get(edit.at.uri) ?? []), edit]);
    return {
        description: { text: fix.title },
        artifactChanges: [...byFile].map(([uri, edits]) => ({
            artifactLocation: artifact(run, uri),
            replacements: edits.map((edit) => ({
                deletedRegion: region(edit.at),
                insertedContent: { text: edit.text },
            })),
        })),
    };
}
