import { join, relative, resolve, sep } from 'node:path';
import type { FileText } from '../plan/load.ts';
import { planEnding } from '../plan/names/uses.ts';
import { type Asked, type AskedFile, askedFile } from './asking.ts';
import { git as ask } from './git.ts';
import { decode } from './reading.ts';
import { Refusal } from './refusal.ts';
import { isPassedOver, showPath } from './walk.ts';

/** Every plan of a repository as it was at a revision: what was asked for, and what that may use. */
export interface Revision {
    readonly asked: Asked;
    /** What the revision holds at a path, the disk notwithstanding. */
    readonly read: (path: string) => FileText;
}

/**
 * Reads plans out of the repository that the folder is in, through the git that is installed. Nothing is checked out
 * and nothing of the repository is run: no hook, no filter, no driver.
 *
 * @param paths  only what lies at or below these; all of the repository for none
 * @throws Refusal where there is no git, no repository or no such revision
 */
export function plansAt(revision: string, paths: readonly string[], cwd: string): Revision {
    const top = git(['rev-parse', '--show-toplevel'], cwd).toString().trimEnd();
    const commit = commitOf(revision, cwd);
    const entries = git(['ls-tree', '-r', '-z', '--full-tree', commit], top).toString().split('\0');
    const held = new Map(
        entries.flatMap((entry): [string, string][] => {
            const [, mode, blob, path] = /^(\d+) blob (\w+)\t(.*)$/s.exec(entry) ?? [];
            // 120000 is a link: where it leads to is not part of the revision.
            if (mode === undefined || mode === '120000' || !path!.endsWith(planEnding)) return [];
            return [[join(top, ...path!.split('/')), blob!]];
        }),
    );
    const wanted = paths.length === 0 ? [top] : paths.map((path) => inRepository(resolve(cwd, path), top));
    const files = [...held.keys()].sort().filter((path) => wanted.some((each) => isMeant(path, each)));
    const texts = textsOf([...new Set(held.values())], top);
    const readingAt = (path: string) => decode(texts.get(held.get(path)!)!);
    return {
        asked: {
            cwd,
            folders: [top],
            files: files.flatMap((path): AskedFile[] => {
                const file = askedFile(path, showPath(path, cwd), readingAt(path));
                return typeof file === 'string' ? [] : [file];
            }),
            refusals: files.flatMap((path) => {
                const file = askedFile(path, `${revision}:${showPath(path, cwd)}`, readingAt(path));
                return typeof file === 'string' ? [file] : [];
            }),
        },
        read: (path) => {
            if (!held.has(path)) return { kind: 'missing' };
            const reading = readingAt(path);
            switch (reading.kind) {
                case 'text':
                    return { kind: 'text', text: reading.text };
                case 'unfit':
                    return { kind: 'unread', reason: reading.unfit.reason };
                case 'refused':
                    return { kind: 'unread', reason: reading.reason };
            }
        },
    };
}

/** Whether that is a revision of the repository that this folder is in. */
export function isRevision(name: string, cwd: string): boolean {
    try {
        commitOf(name, cwd);
        return true;
    } catch {
        return false;
    }
}

function commitOf(revision: string, cwd: string): string {
    try {
        return git(['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`], cwd)
            .toString()
            .trimEnd();
    } catch {
        throw new Refusal(
            `${revision} is no revision of this repository. git log names those that there are.`,
        );
    }
}

function isMeant(path: string, wanted: string): boolean {
    if (path === wanted) return true;
    if (!path.startsWith(wanted + sep)) return false;
    return !relative(wanted, path).split(sep).some(isPassedOver);
}

function inRepository(path: string, top: string): string {
    if (path !== top && !path.startsWith(top + sep))
        throw new Refusal(`${path} is not in the repository ${top}.`);
    return path;
}

/** The texts of these blobs, all in one go. */
function textsOf(blobs: readonly string[], top: string): Map<string, Buffer> {
    const texts = new Map<string, Buffer>();
    if (blobs.length === 0) return texts;
    const all = git(['cat-file', '--batch'], top, `${blobs.join('\n')}\n`);
    let at = 0;
    for (const blob of blobs) {
        const end = all.indexOf(0x0a, at);
        const size = Number(all.subarray(at, end).toString().split(' ')[2]);
        texts.set(blob, all.subarray(end + 1, end + 1 + size));
        at = end + 1 + size + 1;
    }
    return texts;
}

/** What a commit really holds: nothing that somebody has put in its place here. */
function git(args: readonly string[], cwd: string, input?: string): Buffer {
    return ask(['--no-replace-objects', ...args], cwd, input);
}
