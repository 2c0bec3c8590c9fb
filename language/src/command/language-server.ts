import { createRequire } from 'node:module';
import type { Command } from 'commander';
import { serve } from './pace.ts';
import { Refusal } from './refusal.ts';

const help = `
Example:
  layback language-server --stdio      what an editor is told to start for .spread files`;

export function declare(command: Command): void {
    command
        .description(
            'Serves an editor: findings, completion and all the rest, over the language server protocol.\nIt is started by an editor and ends with it.',
        )
        .option('--stdio', 'talk over standard input and output, which is the one way there is')
        .addHelpText('after', help)
        .action(start);
}

function start({ stdio }: { stdio?: true }): void {
    if (!stdio) throw new Refusal('A language server talks to an editor: layback language-server --stdio');
    serve();
    // A bundle of its own, which the extension starts too.
    createRequire(import.meta.url)('../server-node.cjs');
}
