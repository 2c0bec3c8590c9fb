import { statSync } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import { planEnding } from '../plan/names/uses.ts';
import { type Asked, fromPaths } from './asking.ts';
import { Refusal, reasonOf } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath, walk } from './walk.ts';
import { watchFolders } from './watched-folders.ts';

type Check = (asked: Asked) => Promise<readonly string[]>;

/** Editors save in several steps; what changes within this time is one change. */
const settled = 80;

/**
 * Checks, and again after every change of a plan or of what it uses, until it is interrupted; that ends with 0.
 *
 * @param check  gives the paths of all the files that it reached
 */
export async function watch(paths: readonly string[], check: Check): Promise<void> {
    const cwd = process.cwd();
    const tops = (paths.length === 0 ? ['.'] : paths).map((path) => ({
        path: resolve(cwd, path),
        shown: path,
    }));
    const folders = tops.filter(isFolder).map(({ path }) => path);
    const reached = new Set(tops.map(({ path }) => path).filter((path) => !folders.includes(path)));

    let timer: NodeJS.Timeout | undefined;
    const changed = (path: string) => {
        const below = folders.some((folder) => path === folder || path.startsWith(folder + sep));
        if (!reached.has(path) && !(below && (path.endsWith(planEnding) || hasNewFolder()))) return;
        clearTimeout(timer);
        timer = setTimeout(() => void run(), settled);
    };
    const unwatched = new Set<string>();
    const watched = watchFolders(changed, (folder, error) => {
        if (unwatched.has(folder)) return;
        unwatched.add(folder);
        terminal.log(`layback: ${showPath(folder, cwd)} is not watched: ${whyUnwatched(error)}.`);
    });
    /** Watches what there is now, and says whether some of it is new. */
    const hasNewFolder = (): boolean => {
        const below = walk(folders, cwd).folders;
        return watched.set(new Set([...below, ...[...reached].map(dirname)])).length > 0;
    };

    let busy = false;
    let again = false;
    const run = async () => {
        if (busy) {
            again = true;
            return;
        }
        busy = true;
        do {
            again = false;
            hasNewFolder();
            const since = Date.now();
            terminal.log(`── ${new Date(since).toLocaleTimeString()} ──`);
            const files = await checkOnce(paths, cwd, check);
            for (const file of files) reached.add(file);
            // A folder that is watched only from now on may have changed since its file was read.
            if (hasNewFolder() && files.some((file) => hasChanged(file, since))) again = true;
        } while (again);
        busy = false;
        terminal.log('Watching for changes; Ctrl+C ends.');
    };
    const interrupted = new Promise<void>((end) => {
        for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end());
    });
    await run();
    await interrupted;
    clearTimeout(timer);
    watched.close();
    process.exitCode = 0;
}

async function checkOnce(paths: readonly string[], cwd: string, check: Check): Promise<readonly string[]> {
    try {
        return await check(fromPaths(paths, cwd));
    } catch (error) {
        // Nothing to look at just now: a file may be on its way.
        if (!(error instanceof Refusal)) throw error;
        terminal.log(`layback: ${error.message}`);
        return [];
    }
}

function isFolder({ path, shown }: { path: string; shown: string }): boolean {
    try {
        return statSync(path).isDirectory();
    } catch (error) {
        throw new Refusal(`${shown} ${reasonOf(error)}.`);
    }
}

/** @param since  in ms of the system's clock */
function hasChanged(file: string, since: number): boolean {
    return (statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? Number.POSITIVE_INFINITY) >= since;
}

function whyUnwatched(error: unknown): string {
    // The same code as that of a full disk; here it counts watches.
    return (error as NodeJS.ErrnoException).code === 'ENOSPC'
        ? 'this system watches no more folders for you'
        : `it ${reasonOf(error)}`;
}
