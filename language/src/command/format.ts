import type { Command } from 'commander';
import { format as layOut } from '../editor/format.ts';
import { createServices } from '../plan/services.ts';
import { type Asked, type AskedFile, fromInput, fromPaths } from './asking.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { writeWhole } from './writing.ts';

interface Options {
    readonly write?: true;
    readonly check?: true;
    readonly stdin?: true;
}

const help = `
Only white space changes: one property a line, short blocks on one line, four spaces a level. The order
and the comments stay. A definition that cannot be read stays as it is.

Without --write or --check, one file is printed as it would be.

Examples:
  layback format --write             every .spread file in this folder and below
  layback format --check             name those that would change, end with 1 if there are any
  layback format --stdin < draft.spread`;

export function declare(command: Command): void {
    command
        .description('Lays out plans in the one way, so that a change shows what was changed.')
        .argument(
            '[paths...]',
            'files, and folders that are searched for .spread files (default: this folder)',
        )
        .option('-w, --write', 'write the files')
        .option('-c, --check', 'write nothing, name the files that would change')
        .option('--stdin', 'lay out what comes in on the standard input')
        .addHelpText('after', help)
        .action(format);
}

async function format(paths: string[], options: Options): Promise<void> {
    if (options.write && options.check) throw new Refusal('Either --write or --check, not both.');
    if (options.stdin && options.write) throw new Refusal('--stdin is no file to write: leave out --write.');
    if (options.stdin && paths.length > 0) throw new Refusal('Either paths or --stdin, not both.');
    const asked = options.stdin ? await fromInput(undefined, process.cwd()) : fromPaths(paths, process.cwd());
    for (const refusal of asked.refusals) terminal.log(`layback: ${refusal}`);
    if (!options.write && !options.check && asked.files.length > 1) {
        throw new Refusal(
            `There are ${asked.files.length} files: --write writes them, --check names those that would change.`,
        );
    }
    const differing = laidOut(asked, options);
    if (asked.refusals.length > 0 || asked.files.some((file) => file.unfit)) process.exitCode = 2;
    else if (options.check && differing > 0) process.exitCode = 1;
}

/** @returns how many files differ from how they should be laid out */
function laidOut({ files }: Asked, { write, check }: Options): number {
    const services = createServices();
    let differing = 0;
    for (const file of files) {
        if (file.unfit) {
            terminal.log(`layback: ${file.shown} ${file.unfit.reason}.`);
            continue;
        }
        const text = layOut(file.text, services);
        const differs = text !== file.text;
        if (differs) differing++;
        if (write) {
            if (differs) writeWhole(file.path, withMark(file, text));
        } else if (!check) terminal.out(withMark(file, text));
        if (differs && (write || check)) terminal.out(`${file.shown}\n`);
    }
    return differing;
}

function withMark({ byteOrderMark }: AskedFile, text: string): string {
    return byteOrderMark ? `\ufeff${text}` : text;
}
