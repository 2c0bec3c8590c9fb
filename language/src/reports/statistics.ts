import type { Run } from './checked.ts';
import type { Ink } from './ink.ts';
import { table } from './table.ts';
import { widthFor } from './width.ts';

/** How often one rule spoke. */
export interface Spoken {
    readonly rule: string;
    readonly errors: number;
    readonly warnings: number;
    readonly hints: number;
    /** In how many files. */
    readonly files: number;
    /** How many of them come with a quick fix. */
    readonly mendable: number;
}

/** How often each rule spoke, the most frequent first. */
export function statisticsOf(run: Run): Spoken[] {
    const rules = [...new Set(run.files.flatMap(({ findings }) => findings.map(({ rule }) => rule)))];
    const counted = rules.map((rule): Spoken => {
        const files = run.files
            .map(({ findings }) => findings.filter((one) => one.rule === rule))
            .filter((findings) => findings.length > 0);
        const found = files.flat();
        const of = (severity: string) => found.filter((one) => one.severity === severity).length;
        return {
            rule,
            errors: of('error'),
            warnings: of('warning'),
            hints: of('hint'),
            files: files.length,
            mendable: found.filter(({ fixes }) => fixes.length > 0).length,
        };
    });
    return counted.sort((a, b) => total(b) - total(a) || (a.rule < b.rule ? -1 : 1));
}

export async function statisticsTable(run: Run, ink: Ink): Promise<string> {
    const rows = statisticsOf(run);
    if (rows.length === 0) return 'Nothing found.\n';
    const sum = (of: (row: Spoken) => number) => rows.reduce((all, row) => all + of(row), 0);
    const all: Spoken = {
        rule: 'all',
        errors: sum(({ errors }) => errors),
        warnings: sum(({ warnings }) => warnings),
        hints: sum(({ hints }) => hints),
        files: run.files.filter(({ findings }) => findings.length > 0).length,
        mendable: sum(({ mendable }) => mendable),
    };
    const right = { align: 'right' } as const;
    const heads = ['errors', 'warnings', 'hints', 'files', 'quick fixes'].map((head) => ({ head, ...right }));
    const cells = [...rows, all].map(({ rule, errors, warnings, hints, files, mendable }) => [
        rule,
        ...[errors, warnings, hints, files, mendable].map(String),
    ]);
    const width = await widthFor(cells.flat());
    return `${table([{ head: 'rule' }, ...heads], cells, ink, width).join('\n')}\n`;
}

export function statisticsJson(run: Run, version: string): string {
    const report = {
        format: 'layback-statistics',
        version: 1,
        tool: { name: 'layback', version },
        files: run.files.length,
        rules: statisticsOf(run),
    };
    return `${JSON.stringify(report, undefined, 2)}\n`;
}

function total({ errors, warnings, hints }: Spoken): number {
    return errors + warnings + hints;
}
