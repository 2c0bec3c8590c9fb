import { fileURLToPath } from 'node:url';
import { type Command, Option } from 'commander';
import { version } from '../../../package.json';
import type { Finding } from '../plan/finding.ts';
import { annotations } from '../reports/annotations.ts';
import type { Run } from '../reports/checked.ts';
import { jsonReport } from '../reports/json.ts';
import { linesReport } from '../reports/lines.ts';
import { textReport } from '../reports/text.ts';
import { type Asked, fromInput, fromPaths } from './asking.ts';
import { usualBaseline, withoutKnown, writeBaseline } from './baseline.ts';
import { check as checkFiles } from './checking.ts';
import { knownCode } from './known-code.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';

const formats = ['text', 'lines', 'json', 'sarif', 'github', 'gitlab'] as const;
const thresholds = ['error', 'warning', 'hint', 'never'] as const;

interface Options {
    readonly format: (typeof formats)[number];
    readonly failOn: (typeof thresholds)[number];
    readonly stdin?: true;
    readonly stdinPath?: string;
    readonly watch?: true;
    readonly quiet?: true;
    readonly rule?: readonly string[];
    readonly statistics?: true;
    readonly baseline?: string;
    readonly writeBaseline?: true;
}

const help = `
It ends with 0 when nothing was found that --fail-on counts, 1 when something was, 2 when a file could
not be looked at. What it found goes to the standard output, everything else to the standard error.

Examples:
  layback check
  layback check plans/friday.spread --fail-on error
  layback check plans --watch
  layback check --format sarif > findings.sarif
  layback check --format gitlab > gl-code-quality-report.json
  layback check --rule stagger --rule wave-face
  layback check --statistics
  layback check --write-baseline            what is found now is known from now on
  layback check --baseline layback-baseline.json
  layback check --stdin --stdin-path plans/friday.spread < draft.spread`;

export function declare(command: Command): void {
    command
        .description('Says what is wrong with plans, or could be better, and what to do about it.')
        .argument(
            '[paths...]',
            'files, and folders that are searched for .spread files (default: this folder)',
        )
        .addOption(new Option('-f, --format <form>', 'what to print').choices(formats).default('text'))
        .addOption(
            new Option('--fail-on <severity>', 'the least that makes it end with 1')
                .choices(thresholds)
                .default('warning'),
        )
        .option('--stdin', 'check what comes in on the standard input')
        .option('--stdin-path <path>', 'where that text belongs, so that its use lines lead somewhere')
        .option('-w, --watch', 'check again whenever a file changes')
        .option('-q, --quiet', 'only what makes it end with 1, and no line that sums up')
        .option('-r, --rule <name>', 'only what this rule finds; may be given more than once', also)
        .option('--statistics', 'how often each rule spoke, instead of what it said')
        .option('--baseline <file>', 'leave out what this file knows, and say what in it is gone')
        .option('--write-baseline', `write down all that is found as known (to ${usualBaseline})`)
        .addHelpText('after', help)
        .action(check);
}

function also(name: string, before: readonly string[] = []): readonly string[] {
    return [...before, name];
}

async function check(paths: string[], options: Options): Promise<void> {
    for (const name of options.rule ?? []) knownCode(name);
    if (options.statistics && options.format !== 'text' && options.format !== 'json')
        throw new Refusal('--statistics prints text or JSON.');
    if (options.writeBaseline && (options.rule || options.watch || options.stdin))
        throw new Refusal('--write-baseline writes down all that is found in files: leave the rest out.');
    if (options.watch) {
        if (options.stdin) throw new Refusal('--watch looks at files, --stdin at none: choose one.');
        if (options.format !== 'text') throw new Refusal('--watch prints text only.');
        const { watch } = await import('./watch.ts');
        await watch(paths, async (asked) => pathsIn((await report(asked, options)).run));
        return;
    }
    process.exitCode = (await report(await asked(paths, options), options)).status;
}

async function asked(paths: string[], { stdin, stdinPath }: Options): Promise<Asked> {
    if (!stdin) {
        if (stdinPath !== undefined)
            throw new Refusal('--stdin-path says where the text of --stdin belongs: add --stdin.');
        return fromPaths(paths, process.cwd());
    }
    if (paths.length > 0) throw new Refusal('Either paths or --stdin, not both.');
    return fromInput(stdinPath, process.cwd());
}

/** @returns also what the command is to end with */
async function report(asked: Asked, options: Options): Promise<{ run: Run; status: 0 | 1 | 2 }> {
    const all = await checkFiles(asked, { findingsOnly: true });
    for (const refusal of all.refusals) terminal.log(`layback: ${refusal}`);
    if (options.writeBaseline) {
        writeBaseline(all, options.baseline ?? usualBaseline);
        return { run: all, status: all.refusals.length > 0 ? 2 : 0 };
    }
    const unknown = options.baseline === undefined ? all : withoutKnown(all, options.baseline);
    const run = options.rule ? onlyRules(unknown, options.rule) : unknown;
    const counted = onlyCounted(run, options.failOn);
    terminal.out(await print(options.quiet ? counted : run, options));
    if (run.refusals.length > 0) return { run, status: 2 };
    return { run, status: counted.files.some((file) => file.findings.length > 0) ? 1 : 0 };
}

function pathsIn(run: Run): string[] {
    const uris = [...run.sources.keys()].filter((uri) => uri.startsWith('file:'));
    return uris.map((uri) => fileURLToPath(uri));
}

function onlyRules(run: Run, names: readonly string[]): Run {
    const files = run.files.map((file) => ({
        ...file,
        findings: file.findings.filter(({ rule }) => names.includes(rule)),
    }));
    return { ...run, files };
}

async function print(run: Run, { format, quiet, statistics }: Options): Promise<string> {
    if (statistics) {
        const { statisticsJson, statisticsTable } = await import('../reports/statistics.ts');
        return format === 'json' ? statisticsJson(run, version) : statisticsTable(run, terminal.ink);
    }
    switch (format) {
        case 'text':
            return textReport(run, { ink: terminal.ink, columns: terminal.columns, quiet });
        case 'lines':
            return linesReport(run);
        case 'json':
            return jsonReport(run, version);
        case 'github':
            return annotations(run);
        case 'gitlab': {
            const { codeQuality } = await import('./code-quality.ts');
            return codeQuality(run);
        }
        case 'sarif': {
            const { sarif } = await import('./sarif.ts');
            return sarif(run, process.cwd());
        }
    }
}

function onlyCounted(run: Run, failOn: Options['failOn']): Run {
    const counts: Record<Options['failOn'], readonly Finding['severity'][]> = {
        error: ['error'],
        warning: ['error', 'warning'],
        hint: ['error', 'warning', 'hint'],
        never: [],
    };
    const files = run.files.map((file) => ({
        ...file,
        findings: file.findings.filter((finding) => counts[failOn].includes(finding.severity)),
    }));
    return { ...run, files };
}
