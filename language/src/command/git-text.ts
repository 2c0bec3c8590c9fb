import type { Command } from 'commander';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { plainText } from '../plan/compare/plain.ts';
import { createServices } from '../plan/services.ts';
import { readPlan } from './reading.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';

export function declare(command: Command): void {
    command
        .description('Prints what a file says, alike however it is laid out: for `git diff`, see git-setup.')
        .argument('<file>', 'a file that git hands over; its name need not end in .spread')
        .action(print);
}

function print(path: string): void {
    const reading = readPlan(path);
    if (reading.kind === 'refused') throw new Refusal(`${path} ${reading.reason}.`);
    if (reading.kind === 'unfit') throw new Refusal(`${path} ${reading.unfit.reason}.`);
    const { value, lexerErrors, parserErrors } = createServices().parser.LangiumParser.parse<Sheet>(
        reading.text,
    );
    // What cannot be read is shown as it is: a change of it must not hide.
    terminal.out(lexerErrors.length + parserErrors.length > 0 ? reading.text : plainText(value));
}
