import { existsSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, parse, relative, resolve, sep } from 'node:path';
import type { Asked } from './asking.ts';

/**
 * The folders that no `use` may leave: the repositories that the files are in. A file in none of them keeps to the
 * folder that the command was started in, or else to the one that was named, and never goes above it.
 */
export function rootsOf(
    paths: readonly string[],
    { cwd, folders }: Pick<Asked, 'cwd' | 'folders'>,
): string[] {
    const known = new Map<string, string | undefined>();
    const repositoryOf = (folder: string): string | undefined => {
        if (!known.has(folder)) {
            const above = dirname(folder);
            const here = existsSync(join(folder, '.git')) ? folder : undefined;
            known.set(folder, here ?? (above === folder ? undefined : repositoryOf(above)));
        }
        return known.get(folder);
    };
    const repositories = paths.map((path) => repositoryOf(dirname(path)));
    const own = repositories.includes(undefined) ? [cwd, ...folders] : [];
    const roots = new Set([...repositories.filter((each) => each !== undefined), ...own]);
    // The widest first: that one is named where a path leaves it.
    return [...roots].sort((a, b) => a.length - b.length);
}

/**
 * The folder that all of these paths lie in, a folder in itself and a file in its own; theirs each where they have
 * nothing in common.
 */
export function foldersNamed(paths: readonly string[], cwd: string): string[] {
    const folders = paths.map((path) => folderOf(resolve(cwd, path)));
    const [first, ...rest] = folders;
    if (first === undefined) return [];
    let shared = first;
    while (!rest.every((folder) => isInside(folder, shared))) shared = dirname(shared);
    return shared === parse(shared).root ? [...new Set(folders)] : [shared];
}

function folderOf(path: string): string {
    try {
        return statSync(path).isDirectory() ? path : dirname(path);
    } catch {
        return dirname(path);
    }
}

let linksAllowed = false;

/** Lets packages be read that are linked from outside the folder, for as long as this command runs. */
export function allowLinks(): void {
    linksAllowed = true;
}

export function areLinksAllowed(): boolean {
    return linksAllowed;
}

/** The name of the folder that a link leads out of; undefined where it stays inside. */
export function folderLeft(path: string, roots: readonly string[]): string | undefined {
    const around = roots.filter((root) => isInside(path, root));
    if (around.length === 0 || around.some((root) => isReallyInside(path, root))) return undefined;
    return basename(around[0]!) || around[0];
}

function isInside(path: string, folder: string): boolean {
    const way = relative(folder, path);
    return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

function isReallyInside(path: string, folder: string): boolean {
    try {
        return isInside(realpathSync.native(path), realpathSync.native(folder));
    } catch {
        return true;
    }
}
