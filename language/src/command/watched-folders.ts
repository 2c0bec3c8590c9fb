import { type FSWatcher, watch } from 'node:fs';
import { join } from 'node:path';

export interface WatchedFolders {
    /** Watches these folders, each alone, and no others any more; gives those that were not watched before. */
    readonly set: (folders: ReadonlySet<string>) => readonly string[];
    readonly close: () => void;
}

/**
 * Folders, each watched on its own. Watching a tree at once misses files that go and come back quickly, where
 * the system has no such watch and node builds it from single ones.
 *
 * @param changed  is told of what changed in a folder: a path, or the folder where the system gives no name
 * @param failed   is told why a folder cannot be watched; the others are
 */
export function watchFolders(
    changed: (path: string) => void,
    failed: (folder: string, error: unknown) => void,
): WatchedFolders {
    const watchers = new Map<string, FSWatcher>();
    const end = (folder: string) => {
        watchers.get(folder)?.close();
        watchers.delete(folder);
    };
    const start = (folder: string): boolean => {
        try {
            const watcher = watch(folder);
            watcher.on('change', (_, name) => changed(name === null ? folder : join(folder, String(name))));
            // Some systems say so when the folder itself goes away; the folder above tells of that, too.
            watcher.on('error', () => {
                end(folder);
                changed(folder);
            });
            watchers.set(folder, watcher);
            return true;
        } catch (error) {
            failed(folder, error);
            return false;
        }
    };
    return {
        set: (folders) => {
            for (const folder of watchers.keys()) if (!folders.has(folder)) end(folder);
            return [...folders].filter((folder) => !watchers.has(folder) && start(folder));
        },
        close: () => {
            for (const folder of [...watchers.keys()]) end(folder);
        },
    };
}
