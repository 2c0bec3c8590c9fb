import { join, parse, resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { type PaletteName, palettes } from '../drawing/palette.ts';
import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { si } from '../units/quantity.ts';
import { fromPaths } from './asking.ts';
import { check } from './checking.ts';
import { type ChosenPlan, chosenPlans, suffixOf, warnOfErrors } from './chosen-plans.ts';
import { drawFences } from './draw-fences.ts';
import { drawView, earlierPlans, mustFit, type View, type ViewOptions, views } from './draw-views.ts';
import { pictureAt, writePicture } from './picture.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';

interface Options extends ViewOptions {
    readonly output?: string;
    readonly plan?: string;
    readonly view: View;
    readonly theme: PaletteName;
    readonly fans?: true;
    readonly dpi: number;
}

const help = `
The picture is named after the file, and after the plan where the file holds several. Its ending says
what it is: .svg, for print and for drawing programs, or .png. A picture that is there is drawn anew.

Views:
  above    the spread to scale on the boat's own waves, with what was found marked on it
  side     heights of the tow points, angles of the lines, the waves below the lures
  turn     a half turn: the boat and her lines at some moments, how near the closest two come and when,
           the tightest clean turn each way with its seconds. Without --radius it is the turn that the
           plan allows (\`turn within 150 m\`), else the tightest clean one; without --to, the side that
           needs more room
  strike   ten seconds of a bite at one position: tension at the hook, line run off, the stages of the
           drag; and what it takes to draw line as the spool empties
  compare  the plan over an earlier one (--before, --before-plan), every change in words

Of a Markdown text every fence is drawn beside it, from above: notes-1.svg is the first one's, which a
wiki shows with ![](notes-1.svg). The text is left as it is.

Examples:
  layback draw plans/friday.spread
  layback draw notes.md
  layback draw plans/friday.spread --plan rough-day -o rough-day.png
  layback draw plans/friday.spread --view side --theme dark -o side.svg
  layback draw plans/friday.spread --view turn --to starboard --radius 60m
  layback draw plans/friday.spread --view strike --position "port short corner" --style drop-back
  layback draw plans/friday.spread --view compare --before plans/thursday.spread
  layback draw plans/friday.spread --view compare --plan rough-day --before-plan settled-day
  layback draw plans/friday.spread -o - > friday.svg`;

export function declare(command: Command): void {
    command
        .description('Draws plans to scale, with what was found marked on it.')
        .argument('<file>', 'a .spread file, or a Markdown text with ```spread fences')
        .option(
            '-o, --output <path>',
            'where to: a name that ends in .svg or .png, or - for SVG on the standard output',
        )
        .option('-p, --plan <name>', 'only the spread of this name')
        .addOption(new Option('--view <from>', 'seen from').choices(views).default('above'))
        .option('--to <side>', 'turn: port or starboard', sideOfTurn)
        .option('--radius <length>', 'turn: of the circle, with its unit: 60m, 200ft', radiusOfTurn)
        .option('--position <name>', 'strike: where the fish bites')
        .addOption(new Option('--style <style>', 'strike: how it is struck').choices(['direct', 'drop-back']))
        .option('--before <file>', 'compare: the earlier version, a .spread file')
        .option('--before-plan <name>', 'compare: the spread of the earlier version')
        .addOption(new Option('--theme <theme>', 'its inks').choices(Object.keys(palettes)).default('light'))
        .option('--fans', 'also draw how far each line may wander')
        .option('--dpi <number>', 'dots per inch of a .png', dotsPerInch, 150)
        .addHelpText('after', help)
        .action(draw);
}

async function draw(path: string, options: Options): Promise<void> {
    mustFit(options.view, options);
    if (/\.(md|markdown)$/i.test(path)) {
        if (options.output !== undefined || options.plan !== undefined || options.view !== 'above')
            throw new Refusal(
                'Of a Markdown text every fence is drawn from above, beside it: leave -o, -p and --view out.',
            );
        await drawFences(path, options);
        return;
    }
    const asked = fromPaths([path], process.cwd());
    if (asked.files.length === 0) throw new Refusal(asked.refusals.join(' '));
    for (const refusal of asked.refusals) terminal.log(`layback: ${refusal}`);
    const run = await check(asked, options.view === 'compare' ? {} : { plan: options.plan });
    const chosen = chosenPlans(run, options.plan);
    const targets = chosen.map((one) => targetOf(one, options));
    if (options.output !== undefined && chosen.length > 1) {
        const names = chosen.map(({ plan }) => plan.plan.name).join(', ');
        throw new Refusal(
            `There are ${chosen.length} spreads, and one picture to draw: --plan names one of ${names}.`,
        );
    }
    const earlier = await earlierPlans(run, options);
    warnOfErrors(run, terminal.log);
    for (const [index, one] of chosen.entries()) {
        const target = targets[index]!;
        const svg = drawView(options.view, one, earlier, options);
        if (target === undefined) terminal.out(svg);
        else {
            await writePicture(svg, target, options.dpi);
            terminal.out(`${showPath(target, process.cwd())}\n`);
        }
    }
    if (asked.refusals.length > 0) process.exitCode = 2;
}

/** Where the picture goes; undefined for the standard output. */
function targetOf(chosen: ChosenPlan, { output, view }: Options): string | undefined {
    if (output === '-') return undefined;
    if (output === undefined) {
        const { dir, name } = parse(resolve(chosen.file.path));
        return join(dir, `${name}${suffixOf(chosen)}${view === 'above' ? '' : `-${view}`}.svg`);
    }
    return pictureAt(output);
}

function dotsPerInch(text: string): number {
    const dpi = Number(text);
    if (!(dpi >= 20 && dpi <= 600)) throw new InvalidArgumentError('It takes 20 to 600.');
    return dpi;
}

function sideOfTurn(text: string): 'port' | 'starboard' {
    if (text !== 'port' && text !== 'starboard')
        throw new InvalidArgumentError('It takes port or starboard.');
    return text;
}

/** m */
function radiusOfTurn(text: string): number {
    const read = parseQuantity(text, 'length', [10, 1000]);
    if (isQuantityError(read)) throw new InvalidArgumentError(read.message);
    const radius = si(read);
    if (!(radius >= 5 && radius <= 5000)) throw new InvalidArgumentError('It takes 5 m to 5000 m.');
    return radius;
}
