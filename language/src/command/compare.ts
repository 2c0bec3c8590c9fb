import { type Command, Option } from 'commander';
import { version } from '../../../package.json';
import { sceneOfChanges } from '../drawing/scene-compare.ts';
import { svgOfChanges } from '../drawing/svg.ts';
import { type Pair, pairPlans } from '../plan/compare/pairs.ts';
import {
    type Comparison,
    comparisonOf,
    isDifferent,
    type Version,
} from '../reports/comparison/comparison.ts';
import { findingsApart } from '../reports/comparison/findings-apart.ts';
import { comparisonJson } from '../reports/comparison/json.ts';
import { comparisonMarkdown } from '../reports/comparison/markdown.ts';
import { comparisonText } from '../reports/comparison/text.ts';
import { nearest } from '../units/nearest.ts';
import { pictureAt, writePicture } from './picture.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { checkSides, type Sides, sidesOf } from './versions.ts';
import { showPath } from './walk.ts';

const formats = ['text', 'markdown', 'json'] as const;

interface Options {
    readonly format: (typeof formats)[number];
    readonly plan?: string;
    readonly picture?: string;
    readonly exitCode?: true;
}

const help = `
Plans are compared by what they mean, not by their lines: how a text is laid out, its comments and the
form of its numbers are no change. Then what follows: figures that can be read to be others, findings that
came or went, the tightest clean turns, the orders of setting and taking in.

Examples:
  layback compare                              everything here with the last commit
  layback compare plans/friday.spread          one file with the last commit
  layback compare HEAD~1 -- plans/friday.spread
  layback compare main.. --format markdown > changes.md
  layback compare thursday.spread friday.spread --picture changes.svg
  layback compare last-season this-season      two folders

Revisions are read through the git that is installed; nothing is checked out.
It ends with 0, with --exit-code with 1 where something differs, and with 2 where it could not compare.`;

export function declare(command: Command): void {
    command
        .description('Says what changed between two versions of plans, and what follows from it.')
        .usage('[options] [<before> [<after>]] [-- <paths...>]')
        .argument('[versions...]', 'two files, two folders, or revisions; after -- the paths that matter')
        .addOption(new Option('-f, --format <form>', 'what to print').choices(formats).default('text'))
        .option('-p, --plan <name>', 'only the spread of this name')
        .option('--picture <file>', 'draw one plan over its earlier version, .svg or .png')
        .option('--exit-code', 'end with 1 where something differs')
        .addHelpText('after', help)
        .action(compare);
}

async function compare(words: string[], options: Options, command: Command): Promise<void> {
    const cwd = process.cwd();
    const sides = sidesAsked(words, command, cwd);
    const target = options.picture === undefined ? undefined : pictureAt(options.picture);
    const [before, after] = await checkSides(sides, cwd);
    for (const refusal of [...before.run.refusals, ...after.run.refusals])
        terminal.log(`layback: ${refusal}`);
    const pairs = chosen(paired(sides, before.plans, after.plans), options.plan);
    const findings = options.plan ? { came: [], went: [] } : findingsApart(before.findings, after.findings);
    const comparison = comparisonOf({ before: before.name, after: after.name }, pairs, findings);
    if (target !== undefined) await draw(pairs, comparison, target);
    terminal.out(await print(comparison, options));
    if (before.run.refusals.length + after.run.refusals.length > 0) process.exitCode = 2;
    else if (options.exitCode && isDifferent(comparison)) process.exitCode = 1;
}

function sidesAsked(words: readonly string[], command: Command, cwd: string): Sides {
    // What stands after `--` reaches us among the other words: only the line as it was typed tells them apart.
    const typed = (command.parent as (Command & { rawArgs: string[] }) | null)?.rawArgs ?? [];
    const at = typed.indexOf('--');
    if (at < 0) return sidesOf(words, undefined, cwd);
    const paths = typed.slice(at + 1);
    return sidesOf(words.slice(0, words.length - paths.length), paths, cwd);
}

function paired(sides: Sides, before: readonly Version[], after: readonly Version[]): Pair<Version>[] {
    const pairs = pairPlans(before, after);
    const [one, other, ...more] = pairs;
    // Two files that hold one plan each were named to be compared, however little they share.
    const areNamed = sides.kind === 'paths' && before.length === 1 && after.length === 1;
    return areNamed && one && other && more.length === 0 ? [{ before: before[0]!, after: after[0]! }] : pairs;
}

function chosen(pairs: readonly Pair<Version>[], name: string | undefined): readonly Pair<Version>[] {
    if (name === undefined) return pairs;
    const namesOf = ({ before, after }: Pair<Version>) =>
        [before, after].flatMap((each) => (each ? [each.plan.plan.name] : []));
    const found = pairs.filter((pair) => namesOf(pair).includes(name));
    if (found.length > 0) return found;
    const names = [...new Set(pairs.flatMap(namesOf))];
    const meant = nearest(name, names);
    const remedy = meant ? `Did you mean ${meant}?` : names.length > 0 ? `There is ${names.join(', ')}.` : '';
    throw new Refusal(`There is no spread ${name} in either version. ${remedy}`.trim());
}

async function print(comparison: Comparison, { format }: Options): Promise<string> {
    switch (format) {
        case 'text':
            return comparisonText(comparison, terminal);
        case 'markdown':
            return comparisonMarkdown(comparison);
        case 'json':
            return comparisonJson(comparison, version);
    }
}

/** @throws Refusal where it is not plain which plan to draw */
async function draw(pairs: readonly Pair<Version>[], { changed }: Comparison, target: string): Promise<void> {
    const both = pairs.filter(({ before, after }) => before && after);
    const worth = both.filter(({ after }) => changed.some((one) => one.after.name === after!.plan.plan.name));
    const [one, ...more] = worth.length > 0 ? worth : both;
    if (!one?.before || !one.after)
        throw new Refusal('No plan is in both versions, so there is nothing to draw.');
    if (more.length > 0) {
        const names = [one, ...more].map(({ after }) => after!.plan.plan.name).join(', ');
        throw new Refusal(`One picture shows one plan: --plan names one of ${names}.`);
    }
    const svg = svgOfChanges(sceneOfChanges(one.before.plan, one.after.plan, one.after.findings), {
        palette: 'light',
    });
    await writePicture(svg, target);
    terminal.log(`${showPath(target, process.cwd())}`);
}
