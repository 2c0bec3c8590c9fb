import { type Command, Option } from 'commander';
import { version } from '../../../package.json';
import { sceneFromAbove } from '../drawing/scene.ts';
import { svgOf } from '../drawing/svg.ts';
import { analyse } from '../plan/analyse.ts';
import type { Spread } from '../plan/model.ts';
import { Gathered } from '../plan/resolve/gather.ts';
import { resolveDocument } from '../plan/resolve.ts';
import { type Season, seasonOf } from '../plan/season/bites.ts';
import { type Grouping, groupings } from '../plan/season/groupings.ts';
import { callList } from '../reports/season/calls.ts';
import { seasonCsv } from '../reports/season/csv.ts';
import { seasonJson } from '../reports/season/json.ts';
import { withRecord } from '../reports/season/picture.ts';
import { seasonTable } from '../reports/season/table.ts';
import { nearest } from '../units/nearest.ts';
import { fromPaths } from './asking.ts';
import { loadAsked } from './checking.ts';
import { pictureAt, writePicture } from './picture.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';

const formats = ['text', 'csv', 'json'] as const;

interface Options {
    readonly format: (typeof formats)[number];
    readonly by?: Grouping;
    readonly calls?: true;
    readonly withPlaces?: true;
    readonly picture?: string;
    readonly plan?: string;
}

const help = `
Bites count for the position where they came, and for what the plan of that hour has there; what an event
says itself (a lure, a speed) goes before. Places are told only with --with-places, and never drawn.

Examples:
  layback season logs
  layback season logs --by lure
  layback season logs/2026-03-07.spread --calls      what the event's radio wants to hear
  layback season logs --format csv > season.csv
  layback season logs --picture season.svg --plan bank-settled`;

export function declare(command: Command): void {
    command
        .description(
            'Says what the logs tell: bites by position, lure, wave and speed, and how sure that is.',
        )
        .argument('[paths...]', 'logs, and folders that are searched for them (default: this folder)')
        .addOption(new Option('-f, --format <form>', 'what to print').choices(formats).default('text'))
        .addOption(new Option('--by <what>', 'only this table').choices(groupings))
        .option('--calls', 'the fish that were hooked, day by day, for the call-in')
        .option('--with-places', 'also the places, in CSV and JSON')
        .option('--picture <file>', 'draw a plan with the season on it, .svg or .png')
        .option('-p, --plan <name>', 'the spread to draw')
        .addHelpText('after', help)
        .action(season);
}

async function season(paths: string[], options: Options): Promise<void> {
    mustFit(options);
    const target = options.picture === undefined ? undefined : pictureAt(options.picture);
    const asked = fromPaths(paths, process.cwd());
    for (const refusal of asked.refusals) terminal.log(`layback: ${refusal}`);
    const { documents } = await loadAsked(asked);
    const gathered = new Gathered();
    const logs = documents.flatMap((document) => resolveDocument(document, gathered).logs);
    if (logs.length === 0)
        throw new Refusal(
            'There is no log in what was named: log 2026-03-07 { … } in a .spread file is one, layback new shows how.',
        );
    const faulty = documents.filter(({ parseResult }) => parseResult.parserErrors.length > 0).length;
    if (faulty > 0) {
        const files = faulty === 1 ? 'One file' : `${faulty} files`;
        terminal.log(
            `layback: ${files} could not be read to the end, so events may be missing: layback check says which.`,
        );
    }
    const found = seasonOf(logs, analyse);
    if (target !== undefined) {
        await draw(found, options.plan, target);
        terminal.log(showPath(target, process.cwd()));
    }
    terminal.out(await print(found, options));
    if (asked.refusals.length > 0) process.exitCode = 2;
}

function mustFit({ calls, format, by, withPlaces, picture, plan }: Options): void {
    if (calls && (format !== 'text' || by))
        throw new Refusal('--calls is a list of its own: leave --format and --by out.');
    if (withPlaces && format === 'text') throw new Refusal('--with-places belongs to --format csv or json.');
    if (plan !== undefined && picture === undefined)
        throw new Refusal('--plan says what to draw: add --picture.');
}

async function print(found: Season, { format, by, calls, withPlaces }: Options): Promise<string> {
    const places = withPlaces ?? false;
    if (calls) return callList(found, terminal.ink);
    switch (format) {
        case 'text':
            return seasonTable(found, by ? [by] : groupings, terminal.ink);
        case 'csv':
            return seasonCsv(found, { places });
        case 'json':
            return seasonJson(found, version, { places, ...(by && { by: [by] }) });
    }
}

async function draw(found: Season, name: string | undefined, target: string): Promise<void> {
    const svg = svgOf(withRecord(sceneFromAbove(analyse(chosenPlan(found, name))), found), {
        palette: 'light',
    });
    await writePicture(svg, target);
}

/** The one named; else the one that was fished on most days. */
function chosenPlan({ fished }: Season, name: string | undefined): Spread {
    const days = new Map<string, { plan: Spread; times: number }>();
    for (const { plan } of fished)
        days.set(plan.name, { plan, times: (days.get(plan.name)?.times ?? 0) + 1 });
    const names = [...days.keys()];
    if (names.length === 0)
        throw new Refusal('No log says which plan was fished (using …), so there is none to draw.');
    if (name === undefined) return [...days.values()].sort((a, b) => b.times - a.times)[0]!.plan;
    const found = days.get(name);
    if (found) return found.plan;
    const meant = nearest(name, names);
    throw new Refusal(
        `No log used a spread ${name}. ${meant ? `Did you mean ${meant}?` : `There is ${names.join(', ')}.`}`,
    );
}
