import { existsSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import type { Command } from 'commander';
import { git } from './git.ts';
import { Refusal, reasonOf } from './refusal.ts';
import { terminal } from './terminal.ts';
import { writeWhole } from './writing.ts';

interface Options {
    readonly merge?: true;
    readonly undo?: true;
}

const help = `
It writes two things, both of this repository only. A line of .gitattributes, which is committed and tells
every clone that plans are compared by what they say; and this clone's own configuration, which tells it how.
Everyone who clones the repository runs git-setup once; without it git compares lines, as ever.

With --merge, git also puts two branches' changes of a plan together position by position. What both changed
stays twice: ours in force, theirs in comments that open with "// <<<<<<<", and git says that there is a conflict.

Examples:
  layback git-setup
  layback git-setup --merge
  layback git-setup --undo`;

export function declare(command: Command): void {
    command
        .description('Lets `git diff` show what changed in a plan, and `git merge` merge it by position.')
        .option('--merge', 'merge plans by position, too')
        .option('--undo', 'take out all that git-setup wrote')
        .addHelpText('after', help)
        .action(setUp);
}

function setUp({ merge, undo }: Options): void {
    if (merge && undo) throw new Refusal('Either --merge or --undo, not both.');
    const top = git(['rev-parse', '--show-toplevel'], process.cwd()).toString().trimEnd();
    const attributes = join(top, '.gitattributes');
    for (const section of sections) removeSection(section, top);
    if (undo) {
        const left = withoutOurs(read(attributes));
        if (left.trim() === '' && existsSync(attributes)) rmSync(attributes);
        else if (left !== read(attributes)) writeWhole(attributes, left);
        terminal.out('git compares and merges plans line by line again.\n');
        return;
    }
    const line = `*.spread diff=layback${merge ? ' merge=layback' : ''} ${OURS}`;
    const others = withoutOurs(read(attributes));
    writeWhole(attributes, `${others}${others === '' || others.endsWith('\n') ? '' : '\n'}${line}\n`);
    const config = (key: string, value: string) => git(['config', '--local', key, value], top);
    config('diff.layback.textconv', `${commandWords()} git-text`);
    config('diff.layback.xfuncname', '^([a-z]+ .*[{]?)$');
    if (merge) {
        config('merge.layback.name', 'plans, position by position');
        config('merge.layback.driver', `${commandWords()} git-merge %O %A %B %P`);
    }
    terminal.out(
        `.gitattributes has the line "${line}": commit it.\n` +
            `git diff shows what a plan says${merge ? ', and git merge merges it by position' : ''}, in this clone; ` +
            'others run layback git-setup once.\n',
    );
}

const sections = ['diff.layback', 'merge.layback'] as const;

/** Marks our line; attributes have no comment behind them, but may have more attributes. */
const OURS = 'layback-git-setup';

function withoutOurs(text: string): string {
    return text
        .split(/(?<=\n)/)
        .filter((line) => !line.trimEnd().endsWith(` ${OURS}`))
        .join('');
}

function read(path: string): string {
    try {
        return readFileSync(path, 'utf8');
    } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return '';
        throw new Refusal(`.gitattributes ${reasonOf(error)}.`);
    }
}

/** How a shell starts this command: by its name where that means this very program, or else by its path. */
function commandWords(): string {
    const own = realpathSync(process.argv[1]!);
    const named = (process.env.PATH ?? '')
        .split(delimiter)
        .map((folder) => join(folder, 'layback'))
        .find((path) => existsSync(path));
    if (named !== undefined && realpathSync(named) === own) return 'layback';
    return [process.execPath, own].map(quoted).join(' ');
}

/** git starts drivers through a POSIX shell on every system. */
function quoted(path: string): string {
    return `'${path.replaceAll('\\', '/').replaceAll("'", `'\\''`)}'`;
}

function removeSection(section: string, top: string): void {
    try {
        git(['config', '--local', '--remove-section', section], top);
    } catch {
        // There was none.
    }
}
