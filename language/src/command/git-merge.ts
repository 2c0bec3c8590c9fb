import { execFileSync } from 'node:child_process';
import type { Command } from 'commander';
import { mergeTexts } from '../plan/merge/texts.ts';
import { createServices } from '../plan/services.ts';
import { readPlan } from './reading.ts';
import { Refusal } from './refusal.ts';
import { terminal } from './terminal.ts';
import { writeWhole } from './writing.ts';

export function declare(command: Command): void {
    command
        .description('Merges two versions of a file position by position: for `git merge`, see git-setup.')
        .argument('<base>', 'what both come from (%O)')
        .argument('<ours>', 'our version, which is written over (%A)')
        .argument('<theirs>', 'their version (%B)')
        .argument('[path]', 'what the file is called (%P)')
        .action(merge);
}

function merge(base: string, ours: string, theirs: string, path = ours): void {
    const texts = [base, ours, theirs].map((file) => readPlan(file));
    const merged = texts.every((reading) => reading.kind === 'text')
        ? mergeTexts(texts.map(({ text }) => text) as [string, string, string], createServices())
        : undefined;
    if (!merged) {
        terminal.log(`layback: ${path} cannot be read on one of the sides, so it is merged line by line.`);
        process.exitCode = mergeLines(base, ours, theirs);
        return;
    }
    const [, our] = texts;
    const mark = our?.kind === 'text' && our.byteOrderMark ? '\ufeff' : '';
    writeWhole(ours, mark + merged.text);
    if (merged.conflicts === 0) return;
    const times = merged.conflicts === 1 ? 'One thing was' : `${merged.conflicts} things were`;
    terminal.log(`layback: ${path}: ${times} changed on both sides: look for "<<<<<<<" in its comments.`);
    process.exitCode = 1;
}

/** As git does it by itself, into our file; gives what it ends with, which a driver passes on. */
function mergeLines(base: string, ours: string, theirs: string): number {
    try {
        execFileSync('git', ['merge-file', '--', ours, base, theirs], { stdio: 'ignore' });
        return 0;
    } catch (error) {
        const { status } = error as { status?: number | null };
        if (status === undefined || status === null || status > 127)
            throw new Refusal(`${ours} could not be merged line by line either.`);
        return 1;
    }
}
