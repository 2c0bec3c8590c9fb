import { dirname, extname, join, parse, resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { type PaletteName, palettes } from '../drawing/palette.ts';
import { sceneFromAbove } from '../drawing/scene.ts';
import { sceneFromSide } from '../drawing/scene-side.ts';
import { svgOf } from '../drawing/svg.ts';
import { svgOfSide } from '../drawing/svg-side.ts';
import { fromPaths } from './asking.ts';
import { check } from './checking.ts';
import { type ChosenPlan, chosenPlans, warnOfErrors } from './chosen-plans.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';
import { writeWhole } from './writing.ts';

interface Options {
    readonly output?: string;
    readonly plan?: string;
    readonly view: 'above' | 'side';
    readonly theme: PaletteName;
    readonly fans?: true;
    readonly dpi: number;
}

const help = `
The picture is named after the file, and after the plan where the file holds several. Its ending says
what it is: .svg, for print and for drawing programs, or .png. A picture that is there is drawn anew.

Examples:
  layback draw plans/friday.spread
  layback draw plans/friday.spread --plan rough-day -o rough-day.png
  layback draw plans/friday.spread --view side --theme dark -o side.svg
  layback draw plans/friday.spread -o - > friday.svg`;

export function declare(command: Command): void {
    command
        .description('Draws plans to scale, with what was found marked on it.')
        .argument('<file>', 'a .spread file')
        .option(
            '-o, --output <path>',
            'where to: a name that ends in .svg or .png, or - for SVG on the standard output',
        )
        .option('-p, --plan <name>', 'only the spread of this name')
        .addOption(new Option('--view <from>', 'seen from').choices(['above', 'side']).default('above'))
        .addOption(new Option('--theme <theme>', 'its inks').choices(Object.keys(palettes)).default('light'))
        .option('--fans', 'also draw how far each line may wander')
        .option('--dpi <number>', 'dots per inch of a .png', dotsPerInch, 150)
        .addHelpText('after', help)
        .action(draw);
}

async function draw(path: string, options: Options): Promise<void> {
    const asked = fromPaths([path], process.cwd());
    if (asked.files.length === 0) throw new Refusal(asked.refusals.join(' '));
    for (const refusal of asked.refusals) terminal.log(`layback: ${refusal}`);
    const run = await check(asked);
    const chosen = chosenPlans(run, options.plan);
    const targets = chosen.map((one) => targetOf(one, options));
    if (options.output !== undefined && chosen.length > 1) {
        const names = chosen.map(({ plan }) => plan.plan.name).join(', ');
        throw new Refusal(
            `There are ${chosen.length} spreads, and one picture to draw: --plan names one of ${names}.`,
        );
    }
    warnOfErrors(run, terminal.log);
    for (const [index, one] of chosen.entries()) {
        const target = targets[index]!;
        const svg = picture(one, options);
        if (target === undefined) terminal.out(svg);
        else {
            writeWhole(target, extname(target) === '.png' ? await pixels(svg, options.dpi) : svg);
            terminal.out(`${showPath(target, process.cwd())}\n`);
        }
    }
    if (asked.refusals.length > 0) process.exitCode = 2;
}

/** Where the picture goes; undefined for the standard output. */
function targetOf({ file, plan }: ChosenPlan, { output, view }: Options): string | undefined {
    if (output === '-') return undefined;
    if (output === undefined) {
        const { dir, name } = parse(resolve(file.path));
        const ofPlan = file.plans.length > 1 ? `-${plan.plan.name}` : '';
        return join(dir, `${name}${ofPlan}${view === 'side' ? '-side' : ''}.svg`);
    }
    const ending = extname(output).toLowerCase();
    if (ending !== '.svg' && ending !== '.png') {
        throw new Refusal(`${output} should end in .svg or .png, to say what to draw.`);
    }
    return join(dirname(resolve(output)), parse(output).base);
}

function picture({ file, plan }: ChosenPlan, { view, theme, fans }: Options): string {
    const findings = file.concerning.get(plan.plan.name) ?? [];
    const wishes = { palette: theme, ...(fans && { fans }) };
    if (view === 'side') return svgOfSide(sceneFromSide(plan, findings), wishes);
    return svgOf(sceneFromAbove(plan, findings), wishes);
}

async function pixels(svg: string, dpi: number): Promise<Uint8Array> {
    const [{ pngOf }, { press }] = await Promise.all([import('../drawing/png.ts'), import('./press.ts')]);
    return pngOf(svg, press(), { dpi });
}

function dotsPerInch(text: string): number {
    const dpi = Number(text);
    if (!(dpi >= 20 && dpi <= 600)) throw new InvalidArgumentError('It takes 20 to 600.');
    return dpi;
}
