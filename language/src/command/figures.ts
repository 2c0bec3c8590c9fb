import type { Command } from 'commander';
import { version } from '../../../package.json';
import { briefOfDay } from '../drawing/card/brief.ts';
import { inFull } from '../plan/analyse/in-full.ts';
import { withSensitivity } from '../plan/analyse/sensitivity.ts';
import { withTurns } from '../plan/analyse/turns.ts';
import { figuresJson, type PlansOfFile } from '../reports/figures.ts';
import { figuresTable } from '../reports/figures-table.ts';
import { nearest } from '../units/nearest.ts';
import { fromPaths } from './asking.ts';
import { check as checkFiles } from './checking.ts';
import { type ChosenPlan, chosenPlans, warnOfErrors } from './chosen-plans.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';

const help = `
The table speaks in the units of the plan; JSON has every figure in SI units, with what it stands on, or
why there is none. A tilde marks what leans on an estimate: measure it, or leave room. How the tightest
turns would change takes a second or two a plan, so it is worked out only with --sensitivity.

Examples:
  layback figures plans/friday.spread
  layback figures plans/friday.spread --plan rough-day
  layback figures plans/friday.spread --strike "port short corner"
  layback figures plans/friday.spread --sensitivity
  layback figures plans/friday.spread --json > figures.json`;

export function declare(command: Command): void {
    command
        .description('Prints every number that was computed about the plans of a file.')
        .argument('<file>', 'a .spread file, or a folder of them')
        .option('-p, --plan <name>', 'only the spread of this name')
        .option('--strike <position>', 'the ten seconds of a bite on this position, moment by moment')
        .option('--sensitivity', 'what one metre, one line or one trade would make of the tightest turns')
        .option('--json', 'as JSON')
        .addHelpText('after', help)
        .action(figures);
}

interface Options {
    readonly plan?: string;
    readonly strike?: string;
    readonly sensitivity?: true;
    readonly json?: true;
}

async function figures(path: string, options: Options): Promise<void> {
    const run = await checkFiles(fromPaths([path], process.cwd()), { plan: options.plan });
    for (const refusal of run.refusals) terminal.log(`layback: ${refusal}`);
    if (run.files.length > 0) {
        const chosen = chosenPlans(run, options.plan);
        const strikesOf = options.strike === undefined ? [] : [fishedAt(options.strike, chosen)];
        const files = run.files.map(
            (file): PlansOfFile => ({
                path: file.path,
                plans: chosen
                    .filter((one) => one.file === file)
                    .map(({ plan }) => (plan.turns ? plan : withTurns(plan)))
                    .map((plan) => (options.sensitivity ? withSensitivity(plan) : plan))
                    .map((plan) => inFull(plan, strikesOf)),
                ...(options.plan === undefined && file.days && { days: file.days }),
            }),
        );
        warnOfErrors(run, terminal.log);
        if (options.json) terminal.out(figuresJson(files, version));
        else {
            const days = files.flatMap((file) => file.days ?? []).map((day) => `\n${briefOfDay(day)}`);
            terminal.out([await figuresTable(files, terminal.ink), ...days].join(''));
        }
    }
    if (run.refusals.length > 0) process.exitCode = 2;
}

/** @throws Refusal where nothing of that name is fished */
function fishedAt(name: string, chosen: readonly ChosenPlan[]): string {
    const fished = chosen.flatMap(({ plan }) =>
        plan.lines.flatMap(({ line: { position, role } }) => (role === 'fished' ? [position.name] : [])),
    );
    const names = [...new Set(fished)];
    if (names.includes(name)) return name;
    if (names.length === 0) throw new Refusal('Nothing is fished there: no line of the plan has an outfit.');
    const meant = nearest(name, names);
    throw new Refusal(
        `Nothing is fished at ${name}. ${meant ? `Did you mean ${meant}?` : `There is ${names.join(', ')}.`}`,
    );
}
