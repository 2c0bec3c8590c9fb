import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Finding } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { placeIn as placeOfText, startOf } from '../plan/place.ts';
import { listed } from '../plan/wording.ts';
import type { Checked, Run } from './checked.ts';

/**
 * What a team had already found when it took the tool up. It is not said again until it changes place or comes
 * more often; what was mended since is said once, so that the list only ever grows shorter.
 */
export interface Baseline {
    readonly format: 'layback-baseline';
    /** Raised when a field changes its meaning or goes. */
    readonly version: 1;
    readonly findings: readonly KnownFinding[];
}

/** A finding as it is known again: by what it is about, never by its line or its numbers. */
export interface KnownFinding {
    readonly rule: string;
    /** From the baseline's own folder, with forward slashes. */
    readonly path: string;
    readonly plan?: string;
    readonly positions: readonly string[];
    /** The gravest that is known; a graver one is news. Absent in a baseline that was written before it was kept. */
    readonly severity?: Finding['severity'];
    /** How often; absent for once. */
    readonly times?: number;
}

/** How a baseline names files: a checked file's URI to its path from the baseline's folder. */
export type PathOf = (uri: string) => string;

/**
 * A baseline of all that was found now.
 *
 * @param canBeKnown  whether a rule's findings may wait; faults of the text may not
 * @param before  what is known of files that were not looked at now
 * @param isGone  files that are there no more: what is known of them goes
 */
export function baselineOf(
    run: Run,
    pathOf: PathOf,
    canBeKnown: (rule: string) => boolean,
    before?: Baseline,
    isGone: (path: string) => boolean = () => false,
): Baseline {
    const looked = new Set(run.files.map(({ uri }) => pathOf(uri)));
    const counts = new Map<string, { known: KnownFinding; times: number }>();
    for (const { uri, findings } of run.files) {
        for (const finding of findings.filter(({ rule }) => canBeKnown(rule))) {
            const known = knownAs(finding, pathOf(uri));
            const key = keyOf(known);
            const before = counts.get(key);
            const gravest = before && isGraver(before.known.severity, known.severity) ? before.known : known;
            counts.set(key, { known: gravest, times: (before?.times ?? 0) + 1 });
        }
    }
    const now = [...counts.values()].map(({ known, times }) => (times > 1 ? { ...known, times } : known));
    const kept = before?.findings.filter(({ path }) => !looked.has(path) && !isGone(path)) ?? [];
    const findings = [...kept, ...now].sort((a, b) => compare(keyOf(a), keyOf(b)));
    return { format: 'layback-baseline', version: 1, findings };
}

/** The baseline's own text, and which of the files that it knows are there no more. */
export interface Kept {
    readonly uri: string;
    readonly path: string;
    readonly text: string;
    readonly isGone: (path: string) => boolean;
}

/**
 * The run without what is known; in its place a finding for each entry whose fault is gone. What it knows of a file that
 * is gone itself is said where the baseline says it: it would hide the next fault of a file of that name.
 */
export function sift(run: Run, baseline: Baseline, pathOf: PathOf, kept?: Kept): Run {
    const left = new Map(baseline.findings.map((known) => [keyOf(known), known.times ?? 1]));
    const gravity = new Map(baseline.findings.map((known) => [keyOf(known), known.severity]));
    const files = run.files.map((file) => {
        const findings = file.findings.filter((finding) => {
            const key = keyOf(knownAs(finding, pathOf(file.uri)));
            const times = left.get(key) ?? 0;
            if (times > 0) left.set(key, times - 1);
            // What was known as a warning, and is an error by now, was never agreed to wait.
            return times === 0 || isGraver(finding.severity, gravity.get(key));
        });
        const path = pathOf(file.uri);
        const gone = baseline.findings.filter((known) => known.path === path && left.get(keyOf(known))! > 0);
        return {
            ...file,
            findings: [...gone.map((known) => stale(known, placeIn(file, known))), ...findings],
        };
    });
    const lost = kept && leftOver(baseline, kept);
    if (!lost) return { ...run, files };
    return { ...run, files: [...files, lost], sources: new Map([...run.sources, [lost.uri, lost]]) };
}

/** At the plan that it was found in, which may be gone as well. */
function placeIn({ uri, plans }: Checked, { plan }: KnownFinding): Place {
    return plans.find((one) => one.plan.name === plan)?.plan.origin.place ?? startOf(uri);
}

/** The baseline as a file with findings, one for each file that it knows and that is gone. */
function leftOver({ findings }: Baseline, { uri, path, text, isGone }: Kept): Checked | undefined {
    const paths = [...new Set(findings.map((known) => known.path))].filter(isGone);
    if (paths.length === 0) return undefined;
    const document = TextDocument.create(uri, 'json', 1, text);
    const told = paths.map((gone): Finding => {
        const written = JSON.stringify(gone);
        const start = Math.max(0, text.indexOf(written));
        const known = findings.filter((one) => one.path === gone);
        const times = known.reduce((sum, { times = 1 }) => sum + times, 0);
        return stillHeld(
            `${times} ${times === 1 ? 'finding' : 'findings'} in ${gone}, and that file is gone.`,
            'in a file of that name',
            placeOfText(document, start, text.includes(written) ? start + written.length : start),
        );
    });
    return { uri, path, text, findings: told, plans: [], concerning: new Map() };
}

/** Whether a text is a baseline of this form; a sentence that says what is wrong with it otherwise. */
export function readBaseline(text: string): Baseline | string {
    let read: unknown;
    try {
        read = JSON.parse(text);
    } catch {
        return 'is no JSON';
    }
    const { format, version, findings } = (read ?? {}) as Partial<Record<keyof Baseline, unknown>>;
    if (format !== 'layback-baseline') return 'is no baseline';
    if (version !== 1) return `is a baseline of version ${String(version)}, and this tool reads 1`;
    if (!Array.isArray(findings) || !findings.every(isKnown)) return 'holds entries that are none';
    return { format, version, findings };
}

function isKnown(entry: unknown): entry is KnownFinding {
    const { rule, path, plan, positions, severity, times } = (entry ?? {}) as Record<string, unknown>;
    return (
        typeof rule === 'string' &&
        typeof path === 'string' &&
        (plan === undefined || typeof plan === 'string') &&
        Array.isArray(positions) &&
        positions.every((position) => typeof position === 'string') &&
        (severity === undefined || severities.includes(severity as Finding['severity'])) &&
        (times === undefined || (Number.isInteger(times) && (times as number) > 0))
    );
}

function knownAs({ rule, plan, positions, severity }: Finding, path: string): KnownFinding {
    return { rule, path, ...(plan !== undefined && { plan }), positions, severity };
}

const severities: readonly Finding['severity'][] = ['hint', 'warning', 'error'];

/** A severity that nobody wrote down is as grave as any. */
function isGraver(a: Finding['severity'] | undefined, b: Finding['severity'] | undefined): boolean {
    return b !== undefined && a !== undefined && severities.indexOf(a) > severities.indexOf(b);
}

function keyOf({ rule, path, plan = '', positions }: KnownFinding): string {
    return [path, plan, rule, ...positions].join('\n');
}

function stale({ rule, plan, positions }: KnownFinding, at: Place): Finding {
    const where = positions.length > 0 ? ` at ${listed(positions)}` : '';
    const held = `${rule}${where}${plan === undefined ? '' : ` in ${plan}`}, and it is gone.`;
    return { ...stillHeld(held, 'there', at), positions, ...(plan !== undefined && { plan }) };
}

function stillHeld(held: string, where: string, at: Place): Finding {
    return {
        rule: 'baseline-stale',
        severity: 'warning',
        at,
        what: `The baseline still holds ${held}`,
        why: `Left in, it would hide the next one ${where}.`,
        remedy: 'Write the baseline anew.',
        related: [],
        fixes: [],
        positions: [],
    };
}

function compare(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
