import { type FSWatcher, statSync, watch as watchFolder } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import { type Asked, fromPaths } from './asking.ts';
import { Refusal, reasonOf } from './refusal.ts';
import { terminal } from './terminal.ts';
import { showPath } from './walk.ts';

/** Editors save in several steps; what changes within this time is one change. */
const settled = 80;

/** Checks, and again after every change of a plan, until it is interrupted; that ends with 0. */
export async function watch(
    paths: readonly string[],
    check: (asked: Asked) => Promise<unknown>,
): Promise<void> {
    const cwd = process.cwd();
    const tops = (paths.length === 0 ? ['.'] : paths).map((path) => resolve(cwd, path));
    const watchers = foldersOf(tops).map((folder) => watcherOf(folder, cwd));

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
            await checkOnce(paths, cwd, check);
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
    for (const watcher of watchers) {
        watcher.on('change', (_, name) => changed(name === null ? null : String(name)));
        // A folder that goes away takes its watcher along; the others go on.
        watcher.on('error', (error) => terminal.log(`layback: a watched folder ${reasonOf(error)}.`));
    }
    await run();
    await interrupted;
    clearTimeout(timer);
    for (const watcher of watchers) watcher.close();
    process.exitCode = 0;
}

async function checkOnce(
    paths: readonly string[],
    cwd: string,
    check: (asked: Asked) => Promise<unknown>,
): Promise<void> {
    try {
        await check(fromPaths(paths, cwd));
    } catch (error) {
        // Nothing to look at just now: a file may be on its way.
        if (!(error instanceof Refusal)) throw error;
        terminal.log(`layback: ${error.message}`);
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

function watcherOf(folder: string, cwd: string): FSWatcher {
    try {
        return watchFolder(folder, { recursive: true });
    } catch (error) {
        throw new Refusal(`${showPath(folder, cwd)} cannot be watched: it ${reasonOf(error)}.`);
    }
}

function isPassedOver(name: string): boolean {
    return name.split(/[\\/]/).some((part) => part.startsWith('.') || part === 'node_modules');
}
