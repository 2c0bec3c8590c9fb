import { type Dirent, readdirSync, realpathSync, type Stats, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { planEnding } from '../plan/names/uses.ts';
import { nearest } from '../units/nearest.ts';
import { reasonOf } from './refusal.ts';

export interface Found {
    /** Absolute paths, each file once, in the order in which they were named; within a folder by name. */
    readonly files: readonly string[];
    /** Those that were met on the way and are really elsewhere; a file that was named was meant. */
    readonly links: readonly string[];
    /** Absolute paths of those that were looked into. */
    readonly folders: readonly string[];
    readonly refusals: readonly string[];
}

/**
 * The plans that these paths mean: files as named, folders with everything below them. Folders whose name
 * begins with a dot, and `node_modules`, are passed over unless they are named. Links are followed; a file
 * or folder that is reached twice counts once, so a link that leads back up ends there.
 */
export function walk(paths: readonly string[], cwd: string): Found {
    const files = new Map<string, string>();
    const links: string[] = [];
    const folders: string[] = [];
    const refusals: string[] = [];
    const foldersSeen = new Set<string>();

    for (const path of paths) {
        const absolute = resolve(cwd, path);
        const shown = showPath(absolute, cwd);
        let stats: Stats;
        try {
            stats = statSync(absolute);
        } catch (error) {
            refusals.push(`${shown} ${missingReason(absolute, error)}`);
            continue;
        }
        if (stats.isDirectory()) walkFolder(absolute);
        else if (!stats.isFile()) refusals.push(`${shown} is neither a file nor a folder.`);
        else if (!absolute.endsWith(planEnding)) {
            refusals.push(`${shown} does not end in ${planEnding}, so it is not taken for a plan.`);
        } else add(absolute);
    }
    return { files: [...files.values()], links, folders, refusals };

    function walkFolder(top: string): void {
        const waiting = [top];
        while (waiting.length > 0) {
            const folder = waiting.pop()!;
            let entries: Dirent[];
            try {
                const real = realpathSync.native(folder);
                if (foldersSeen.has(real)) continue;
                foldersSeen.add(real);
                entries = readdirSync(folder, { withFileTypes: true });
                folders.push(folder);
            } catch (error) {
                refusals.push(`${showPath(folder, cwd)} ${reasonOf(error)}.`);
                continue;
            }
            // Files first, then the folders, both by name: what belongs together is reported together.
            const below: string[] = [];
            for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
                const path = join(folder, entry.name);
                const kind = kindOf(entry, path);
                if (kind === 'folder' && !isPassedOver(entry.name)) below.push(path);
                else if (kind === 'file' && entry.name.endsWith(planEnding) && add(path) !== path)
                    links.push(path);
            }
            waiting.push(...below.reverse());
        }
    }

    function add(path: string): string {
        try {
            const real = realpathSync.native(path);
            if (!files.has(real)) files.set(real, path);
            return real;
        } catch (error) {
            refusals.push(`${showPath(path, cwd)} ${reasonOf(error)}.`);
            return path;
        }
    }
}

/** As reports print it: relative to the folder that the command runs in, with forward slashes. */
export function showPath(path: string, cwd: string): string {
    const shown = relative(cwd, path) || '.';
    return sep === '/' ? shown : shown.replaceAll(sep, '/');
}

/** Of a folder that was not named, but met on the way. */
export function isPassedOver(name: string): boolean {
    return name.startsWith('.') || name === 'node_modules';
}

function kindOf(entry: Dirent, path: string): 'file' | 'folder' | 'other' {
    if (entry.isFile()) return 'file';
    if (entry.isDirectory()) return 'folder';
    if (!entry.isSymbolicLink()) return 'other';
    try {
        const stats = statSync(path);
        return stats.isFile() ? 'file' : stats.isDirectory() ? 'folder' : 'other';
    } catch {
        // A link that leads nowhere: an editor's lock file, as a rule. Named outright it would be refused.
        return 'other';
    }
}

function missingReason(path: string, error: unknown): string {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') return `${reasonOf(error)}.`;
    const name = basename(path);
    const beside = namesBeside(path);
    if (beside.includes(name)) return 'is a link that leads nowhere.';
    const meant = nearest(name, beside);
    return `${reasonOf(error)}.${meant ? ` Did you mean ${meant}?` : ''}`;
}

function namesBeside(path: string): string[] {
    try {
        return readdirSync(dirname(path)).filter((name) => name.endsWith(planEnding));
    } catch {
        return [];
    }
}
