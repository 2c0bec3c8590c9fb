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
import { check as checkFiles } from './checking.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';

const formats = ['text', 'lines', 'json', 'sarif', 'github'] as const;
const thresholds = ['error', 'warning', 'hint', 'never'] as const;

interface Options {
    readonly format: (typeof formats)[number];
    readonly failOn: (typeof thresholds)[number];
    readonly stdin?: true;
    readonly stdinPath?: string;
    readonly watch?: true;
    readonly quiet?: true;
}

const help = `
It ends with 0 when nothing was found that --fail-on counts, 1 when something was, 2 when a file could
not be looked at. What it found goes to the standard output, everything else to the standard error.

Examples:
  layback check
  layback check plans/friday.spread --fail-on error
  layback check plans --watch
  layback check --format sarif > findings.sarif
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
        .addHelpText('after', help)
        .action(check);
}

async function check(paths: string[], options: Options): Promise<void> {
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
    const run = await checkFiles(asked, true);
    for (const refusal of run.refusals) terminal.log(`layback: ${refusal}`);
    const counted = onlyCounted(run, options.failOn);
    terminal.out(await print(options.quiet ? counted : run, options));
    if (run.refusals.length > 0) return { run, status: 2 };
    return { run, status: counted.files.some((file) => file.findings.length > 0) ? 1 : 0 };
}

function pathsIn(run: Run): string[] {
    const uris = [...run.sources.keys()].filter((uri) => uri.startsWith('file:'));
    return uris.map((uri) => fileURLToPath(uri));
}

async function print(run: Run, { format, quiet }: Options): Promise<string> {
    switch (format) {
        case 'text':
            return textReport(run, { ink: terminal.ink, columns: terminal.columns, quiet });
        case 'lines':
            return linesReport(run);
        case 'json':
            return jsonReport(run, version);
        case 'github':
            return annotations(run);
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
