import { type Command, Option } from 'commander';
import { type BriefFormat, briefOf, briefOfDay } from '../drawing/card/brief.ts';
import { cardContents } from '../drawing/card/contents.ts';
import { withTurns } from '../plan/analyse/turns.ts';
import { fromPaths } from './asking.ts';
import { check } from './checking.ts';
import { chosenPlans, warnOfErrors } from './chosen-plans.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';

interface Options {
    readonly plan?: string;
    readonly format: BriefFormat;
}

const help = `
Examples:
  layback brief plans/friday.spread
  layback brief plans/friday.spread --plan rough-day --format markdown > friday.md`;

export function declare(command: Command): void {
    command
        .description('Prints the words of the deck card, for a message to the crew.')
        .argument('<file>', 'a .spread file')
        .option('-p, --plan <name>', 'only the spread of this name')
        .addOption(new Option('--format <format>', 'its form').choices(['text', 'markdown']).default('text'))
        .addHelpText('after', help)
        .action(brief);
}

async function brief(path: string, { plan, format }: Options): Promise<void> {
    const asked = fromPaths([path], process.cwd());
    if (asked.files.length === 0) throw new Refusal(asked.refusals.join(' '));
    for (const refusal of asked.refusals) terminal.log(`layback: ${refusal}`);
    const run = await check(asked, { plan });
    const chosen = chosenPlans(run, plan);
    warnOfErrors(run, terminal.log);
    const briefs = chosen.map(({ plan, findings, days }) => {
        const analysed = plan.turns ? plan : withTurns(plan);
        return briefOf(cardContents(analysed, findings, days), format);
    });
    const days = plan === undefined ? run.files.flatMap((file) => file.days ?? []) : [];
    terminal.out([...days.map((day) => briefOfDay(day, format)), ...briefs].join('\n\n'));
    if (asked.refusals.length > 0) process.exitCode = 2;
}
