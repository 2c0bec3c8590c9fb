import { type FSWatcher, statSync, watch as watchFolder } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import { type Asked, fromPaths } from './asking.ts';
import { Refusal, reasonOf } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';

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
    const tops = (paths.length === 0 ? ['.'] : paths).map((path) => resolve(cwd, path));
    const watched = foldersOf(tops);
    const watchers: FSWatcher[] = [];

    let timer: NodeJS.Timeout | undefined;
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
            terminal.log(`── ${new Date().toLocaleTimeString()} ──`);
            for (const path of await checkOnce(paths, cwd, check)) watchAlso(dirname(path));
        } while (again);
        busy = false;
        terminal.log('Watching for changes; Ctrl+C ends.');
    };
    const changed = (name: string | null) => {
        if (name !== null && (!name.endsWith('.spread') || isPassedOver(name))) return;
        clearTimeout(timer);
        timer = setTimeout(() => void run(), settled);
    };

    const interrupted = new Promise<void>((end) => {
        for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end());
    });
    const start = (folder: string, recursive: boolean) => {
        const watcher = watcherOf(folder, cwd, recursive);
        watcher.on('change', (_, name) => changed(name === null ? null : String(name)));
        // A folder that goes away takes its watcher along; the others go on.
        watcher.on('error', (error) => terminal.log(`layback: a watched folder ${reasonOf(error)}.`));
        watchers.push(watcher);
    };
    const watchAlso = (folder: string) => {
        if (watched.some((other) => folder === other || folder.startsWith(other + sep))) return;
        watched.push(folder);
        start(folder, false);
    };
    for (const folder of watched) start(folder, true);
    await run();
    await interrupted;
    clearTimeout(timer);
    for (const watcher of watchers) watcher.close();
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

/** Folders to watch: those named, and those that named files are in, since editors replace files. */
function foldersOf(tops: readonly string[]): string[] {
    const folders = new Set<string>();
    for (const top of tops) {
        try {
            folders.add(statSync(top).isDirectory() ? top : dirname(top));
        } catch (error) {
            throw new Refusal(`${top} ${reasonOf(error)}.`);
        }
    }
    return [...folders].filter((folder) => ![...folders].some((other) => folder.startsWith(other + sep)));
}

function watcherOf(folder: string, cwd: string, recursive: boolean): FSWatcher {
    try {
        return watchFolder(folder, { recursive });
    } catch (error) {
        throw new Refusal(`${showPath(folder, cwd)} cannot be watched: it ${reasonOf(error)}.`);
    }
}

function isPassedOver(name: string): boolean {
    return name.split(/[\\/]/).some((part) => part.startsWith('.') || part === 'node_modules');
}
