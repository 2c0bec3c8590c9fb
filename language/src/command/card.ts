import { dirname, extname, join, parse, resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { aboutCard } from '../drawing/card/about.ts';
import { cardContents } from '../drawing/card/contents.ts';
import { cardHtml } from '../drawing/card/html.ts';
import { cardPages, cardSheet, isCurtailed } from '../drawing/card/pages.ts';
import { type PaperName, papers } from '../drawing/card/paper.ts';
import { sceneFromAbove } from '../drawing/scene.ts';
import { withTurns } from '../plan/analyse/turns.ts';
import { fromPaths } from './asking.ts';
import { check } from './checking.ts';
import { type ChosenPlan, chosenPlans, suffixOf, warnOfErrors } from './chosen-plans.ts';
import { pixels } from './picture.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';
import { writeWhole } from './writing.ts';

interface Options {
    readonly output?: string;
    readonly as?: Form;
    readonly plan?: string;
    readonly paper: PaperName;
    readonly dpi: number;
}

const forms = ['pdf', 'html', 'svg', 'png'] as const;
type Form = (typeof forms)[number];

const help = `
The card is named after the file, and after the plan where the file holds several. Its ending says what
it is, or --as does: a pdf to print, an html page for a telephone, an svg or png picture. A card that is
there is made anew. On the standard output it is a PDF, unless --as says otherwise. The same plan gives
the same card, byte for byte: no clock is asked.

Examples:
  layback card plans/friday.spread
  layback card plans/friday.spread --plan rough-day -o rough-day.pdf --paper half
  layback card plans/friday.spread -o friday.html
  layback card plans/friday.spread --as png --dpi 300
  layback card plans/friday.spread -o - | lp`;

export function declare(command: Command): void {
    command
        .description('Makes the deck card: the plan from above, and below it all that the crew works from.')
        .argument('<file>', 'a .spread file')
        .option(
            '-o, --output <path>',
            'where to: a name that ends in .pdf, .html, .svg or .png, or - for the standard output',
        )
        .addOption(new Option('--as <form>', 'what to make, whatever the name ends in').choices(forms))
        .option('-p, --plan <name>', 'only the spread of this name')
        .addOption(
            new Option('--paper <size>', 'half is A5, for laminating')
                .choices(Object.keys(papers))
                .default('a4'),
        )
        .option('--dpi <number>', 'dots per inch of a .png', dotsPerInch, 150)
        .addHelpText('after', help)
        .action(card);
}

async function card(path: string, options: Options): Promise<void> {
    const asked = fromPaths([path], process.cwd());
    if (asked.files.length === 0) throw new Refusal(asked.refusals.join(' '));
    for (const refusal of asked.refusals) terminal.log(`layback: ${refusal}`);
    const run = await check(asked, { plan: options.plan });
    const chosen = chosenPlans(run, options.plan);
    if (options.output !== undefined && chosen.length > 1) {
        const names = chosen.map(({ plan }) => plan.plan.name).join(', ');
        throw new Refusal(
            `There are ${chosen.length} spreads, and one card to make: --plan names one of ${names}.`,
        );
    }
    const targets = chosen.map((one) => targetOf(one, options));
    warnOfErrors(run, terminal.log);
    for (const [index, one] of chosen.entries()) {
        const target = targets[index];
        const card = await made(one, target, options);
        if (target === undefined) {
            terminal.out(card);
            continue;
        }
        writeWhole(target, card);
        terminal.out(`${showPath(target, process.cwd())}\n`);
    }
    if (asked.refusals.length > 0) process.exitCode = 2;
}

/** Where the card goes; undefined for the standard output. */
function targetOf(chosen: ChosenPlan, { output, as }: Options): string | undefined {
    if (output === '-') {
        const form = as ?? 'pdf';
        if (terminal.columns !== undefined && (form === 'pdf' || form === 'png'))
            throw new Refusal(
                `A ${form} is nothing to read on a screen: send it on, as in -o - > card.${form}.`,
            );
        return undefined;
    }
    if (output === undefined) {
        const { dir, name } = parse(resolve(chosen.file.path));
        return join(dir, `${name}${suffixOf(chosen)}.${as ?? 'pdf'}`);
    }
    if (!as && !formOf(output)) {
        throw new Refusal(`${output} should end in .pdf, .html, .svg or .png, or --as say what to make.`);
    }
    return join(dirname(resolve(output)), parse(output).base);
}

function formOf(path: string): Form | undefined {
    return forms.find((form) => extname(path).toLowerCase() === `.${form}`);
}

async function made(
    { plan, findings, days }: ChosenPlan,
    target: string | undefined,
    { as, paper, dpi }: Options,
): Promise<string | Uint8Array> {
    const scene = sceneFromAbove(plan, findings);
    const contents = cardContents(plan.turns ? plan : withTurns(plan), findings, days);
    const form = as ?? (target === undefined ? 'pdf' : formOf(target));
    if (form !== 'html' && isCurtailed(contents)) terminal.log(`layback: ${strangeLetters}`);
    switch (form) {
        case 'html':
            return cardHtml(contents, scene);
        case 'svg':
            return cardSheet(contents, scene, { paper });
        case 'png':
            return pixels(cardSheet(contents, scene, { paper }), dpi);
    }
    return pdf(cardPages(contents, scene, { paper }), aboutCard(contents, plan.plan));
}

const strangeLetters =
    'Print has no face for some letters of the plan: they are counted, as in [5 letters]. --as html and layback brief have them.';

/** What writes PDF is read only here. */
async function pdf(pages: readonly string[], about: ReturnType<typeof aboutCard>): Promise<Uint8Array> {
    const { faces, pdfPress } = await import('./press.ts');
    return pdfPress().pdfOf(pages, { ...about, faces: faces() });
}

function dotsPerInch(text: string): number {
    const dpi = Number(text);
    if (!(dpi >= 20 && dpi <= 600)) throw new InvalidArgumentError('It takes 20 to 600.');
    return dpi;
}
