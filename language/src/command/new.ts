import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Command } from 'commander';
import { Refusal, reasonOf } from './refusal.ts';
import boat from './starter/boat.spread';
import first from './starter/first.spread';
import methods from './starter/methods.spread';
import readme from './starter/README.md';
import rules from './starter/rules.spread';
import tackle from './starter/tackle.spread';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';

const files: Readonly<Record<string, string>> = {
    'README.md': readme,
    'boat.spread': boat,
    'tackle.spread': tackle,
    'methods.spread': methods,
    'rules.spread': rules,
    'plans/first.spread': first,
};

const help = `
The boat, the lures and the figures in it are made up: put your own in their place. Nothing that is
there already is overwritten.

Example:
  layback new our-boat && cd our-boat && layback check`;

export function declare(command: Command): void {
    command
        .description(
            'Starts a team folder: a boat, tackle, a method, rules and a first plan that checks clean.',
        )
        .argument('<folder>', 'made where it is not there; otherwise it must be empty')
        .addHelpText('after', help)
        .action(startFolder);
}

function startFolder(folder: string): void {
    const top = resolve(folder);
    const shown = showPath(top, process.cwd());
    try {
        if (existsSync(top) && readdirSync(top).some((name) => name !== '.git')) {
            throw new Refusal(`${shown} holds something already. Name a new folder.`);
        }
        for (const [path, text] of Object.entries(files)) {
            makeFolder(dirname(join(top, path)));
            // Whatever came there meanwhile stays.
            writeFileSync(join(top, path), text, { flag: 'wx' });
        }
    } catch (error) {
        if (error instanceof Refusal) throw error;
        throw new Refusal(`${shown} ${writeReasonOf(error)}.`);
    }
    terminal.out(
        `${Object.keys(files)
            .map((path) => `${shown}/${path}\n`)
            .join('')}`,
    );
    terminal.log(`Read ${shown}/README.md first, then: cd ${shown} && layback check`);
}

/** One folder at a time: asked for all at once, the system's own way never ends where none can be made, as in /proc. */
function makeFolder(path: string): void {
    if (existsSync(path)) return;
    makeFolder(dirname(path));
    mkdirSync(path);
}

function writeReasonOf(error: unknown): string {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOTDIR') return 'would lie inside something that is no folder';
    if (code === 'EEXIST') return 'holds something already';
    return reasonOf(error);
}
