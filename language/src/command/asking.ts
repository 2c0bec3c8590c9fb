import { dirname, resolve } from 'node:path';
import type { Unfit } from '../plan/fit.ts';
import { decode, type Reading, readPlan } from './reading.ts';
import { Refusal } from './refusal.ts';
import { folderLeft, foldersNamed, rootsOf } from './roots.ts';
import { showPath, walk } from './walk.ts';

/** What a command was asked to look at. */
export interface Asked {
    readonly cwd: string;
    /** Folders that were named, or that what was named lies in: what a file uses may lie there. */
    readonly folders: readonly string[];
    readonly files: readonly AskedFile[];
    readonly refusals: readonly string[];
}

export interface AskedFile {
    /** Absolute; also of text from the standard input, which may not be on any disk. */
    readonly path: string;
    /** As reports print it. */
    readonly shown: string;
    readonly text: string;
    readonly byteOrderMark: boolean;
    /** Set where the file is no plan by any measure; then there is no text. */
    readonly unfit?: Unfit;
}

/** Reads what the paths mean. Something to look at must be left. */
export function fromPaths(paths: readonly string[], cwd: string): Asked {
    const found = walk(paths.length === 0 ? ['.'] : paths, cwd);
    const refusals = [...found.refusals];
    if (found.files.length === 0 && refusals.length === 0) {
        const where =
            paths.length === 0
                ? 'this folder'
                : paths.map((path) => showPath(resolve(cwd, path), cwd)).join(', ');
        throw new Refusal(`There is no .spread file in ${where} or below. layback new <folder> starts one.`);
    }
    const files: AskedFile[] = [];
    const folders = foldersNamed(paths, cwd);
    const links = new Set(found.links);
    const roots = links.size > 0 ? rootsOf(found.files, { cwd, folders }) : [];
    for (const path of found.files) {
        const shown = showPath(path, cwd);
        const left = links.has(path) ? folderLeft(path, roots) : undefined;
        if (left !== undefined) {
            refusals.push(`${shown} is a link that leads out of the folder ${left}: name it if it is meant.`);
            continue;
        }
        const reading = readPlan(path);
        const file = askedFile(path, shown, reading);
        if (typeof file === 'string') refusals.push(file);
        else files.push(file);
    }
    return { cwd, folders, files, refusals };
}

/** Reads the standard input, as the text of a file that may or may not be there. */
export async function fromInput(path: string | undefined, cwd: string): Promise<Asked> {
    if (process.stdin.isTTY)
        throw new Refusal('--stdin reads a plan from another program: layback check --stdin < plan.spread');
    const pieces: Buffer[] = [];
    for await (const piece of process.stdin) pieces.push(piece as Buffer);
    const absolute = resolve(cwd, path ?? 'stdin.spread');
    const file = askedFile(
        absolute,
        path === undefined ? 'stdin.spread' : showPath(absolute, cwd),
        decode(Buffer.concat(pieces)),
    );
    const folders = [dirname(absolute)];
    if (typeof file === 'string') return { cwd, folders, files: [], refusals: [file] };
    return { cwd, folders, files: [file], refusals: [] };
}

/** A sentence where it cannot be looked at. */
export function askedFile(path: string, shown: string, reading: Reading): AskedFile | string {
    switch (reading.kind) {
        case 'text':
            return { path, shown, text: reading.text, byteOrderMark: reading.byteOrderMark };
        case 'unfit':
            return { path, shown, text: '', byteOrderMark: false, unfit: reading.unfit };
        case 'refused':
            return `${shown} ${reading.reason}.`;
    }
}
