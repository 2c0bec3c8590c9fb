import type { Command } from 'commander';
import { version } from '../../../package.json';
import { withTurns } from '../plan/analyse/turns.ts';
import { figuresJson, type PlansOfFile } from '../reports/figures.ts';
import { figuresTable } from '../reports/figures-table.ts';
import { fromPaths } from './asking.ts';
import { check as checkFiles } from './checking.ts';
import { chosenPlans, warnOfErrors } from './chosen-plans.ts';
import { terminal } from './terminal.ts';

const help = `
The table speaks in the units of the plan; JSON has every figure in SI units, with what it stands on, or
why there is none. A tilde marks what leans on an estimate: measure it, or leave room.

Examples:
  layback figures plans/friday.spread
  layback figures plans/friday.spread --plan rough-day
  layback figures plans/friday.spread --json > figures.json`;

export function declare(command: Command): void {
    command
        .description('Prints every number that was computed about the plans of a file.')
        .argument('<file>', 'a .spread file, or a folder of them')
        .option('-p, --plan <name>', 'only the spread of this name')
        .option('--json', 'as JSON')
        .addHelpText('after', help)
        .action(figures);
}

async function figures(path: string, options: { plan?: string; json?: true }): Promise<void> {
    const run = await checkFiles(fromPaths([path], process.cwd()));
    for (const refusal of run.refusals) terminal.log(`layback: ${refusal}`);
    if (run.files.length > 0) {
        const chosen = chosenPlans(run, options.plan);
        const files = run.files.map(
            (file): PlansOfFile => ({
                path: file.path,
                plans: chosen
                    .filter((one) => one.file === file)
                    .map(({ plan }) => (plan.turns ? plan : withTurns(plan))),
            }),
        );
        warnOfErrors(run, terminal.log);
        terminal.out(options.json ? figuresJson(files, version) : await figuresTable(files, terminal.ink));
    }
    if (run.refusals.length > 0) process.exitCode = 2;
}
