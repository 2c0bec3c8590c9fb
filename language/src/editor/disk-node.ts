import type { Dirent } from 'node:fs';
import { open, readdir, readFile, realpath, stat } from 'node:fs/promises';
import { basename, join, relative, sep } from 'node:path';
import { URI } from 'langium';
import { tooLarge } from '../plan/fit.ts';
import { LINKED_OUT, notInPackage, type Package, packageOf, versionIn } from '../plan/names/packages.ts';
import { planEnding } from '../plan/names/uses.ts';
import { type Disk, isPassedOver } from './disk.ts';
import { decode, type Reading, stranger, unread } from './reading.ts';

/** Files of the `file` scheme as Node reads them. Links are followed as long as they stay inside; a folder that loops is walked once. */
export const diskOfNode: Disk = {
    async read(uri, roots, links) {
        const path = uri.fsPath;
        const own = packageOf(uri);
        try {
            const out = own && links === 'allowed' ? undefined : await leadsOut(path, roots);
            // Its own file is nobody's but its user's concern.
            if (out && own) return stranger(`${LINKED_OUT} \`${out}\``);
            if (out) return unread(`is a link that leads out of the folder \`${out}\``);
            const reading = await readPlan(path);
            return own && reading.kind === 'text' ? { ...reading, ...(await versionOf(own)) } : reading;
        } catch (error) {
            const { code } = error as NodeJS.ErrnoException;
            if (code === 'ENOENT' || code === 'ENOTDIR')
                return (own && (await missingIn(own))) ?? { kind: 'missing' };
            return unread(`cannot be read (${code ?? 'unknown fault'})`);
        }
    },

    async plansIn(folder) {
        const found = new Map<string, URI>();
        const seen = new Set<string>();
        const waiting = [folder.fsPath];
        for (const path of waiting) {
            const entries = await entriesOf(path, seen);
            for (const entry of entries) {
                const below = join(path, entry.name);
                const kind = await kindOfEntry(entry, below);
                if (kind === 'folder' && !isPassedOver(entry.name)) waiting.push(below);
                if (kind !== 'file' || !entry.name.endsWith(planEnding)) continue;
                const real = entry.isSymbolicLink() ? await realpath(below).catch(() => below) : below;
                if (!found.has(real)) found.set(real, URI.file(below));
            }
        }
        return [...found.values()];
    },

    async kindOf(uri) {
        const stats = await stat(uri.fsPath).catch(() => undefined);
        if (!stats) return 'nothing';
        return stats.isDirectory() ? 'folder' : stats.isFile() ? 'file' : 'nothing';
    },
};

async function readPlan(path: string): Promise<Reading> {
    const handle = await open(path, 'r');
    try {
        const stats = await handle.stat();
        if (!stats.isFile()) return unread('is not a file');
        // Before it is read: it may be larger than the memory.
        const unfit = tooLarge(stats.size);
        if (unfit) return { kind: 'refused', ...unfit };
        return decode(await handle.readFile());
    } finally {
        await handle.close();
    }
}

async function versionOf({ folder }: Package): Promise<{ readonly version?: string }> {
    const path = join(folder.fsPath, 'package.json');
    const { size } = await stat(path).catch(() => ({ size: Number.POSITIVE_INFINITY }));
    const version = size > 1_000_000 ? undefined : versionIn(await readFile(path, 'utf8'));
    return version === undefined ? {} : { version };
}

/** Of a file that is not there, what its package has instead. */
async function missingIn(own: Package): Promise<Reading | undefined> {
    const names = await readdir(own.folder.fsPath).catch(() => undefined);
    return names && stranger(notInPackage(own, names.filter((name) => name.endsWith(planEnding)).sort()));
}

/** The name of the root that a link leads out of. */
async function leadsOut(path: string, roots: readonly URI[]): Promise<string | undefined> {
    const around = roots.filter((root) => root.scheme === 'file' && isBelow(path, root.fsPath));
    if (around.length === 0) return undefined;
    const real = await realpath(path);
    for (const root of around) if (isBelow(real, await realpath(root.fsPath))) return undefined;
    return basename(around[0]!.fsPath) || around[0]!.fsPath;
}

function isBelow(path: string, folder: string): boolean {
    const below = relative(folder, path);
    return below !== '..' && !below.startsWith(`..${sep}`) && !/^([A-Za-z]:|[\\/])/.test(below);
}

async function entriesOf(path: string, seen: Set<string>): Promise<Dirent[]> {
    try {
        const real = await realpath(path);
        if (seen.has(real)) return [];
        seen.add(real);
        const entries = await readdir(path, { withFileTypes: true });
        return entries.sort((a, b) => (a.name < b.name ? -1 : 1));
    } catch {
        return [];
    }
}

async function kindOfEntry(entry: Dirent, path: string): Promise<'file' | 'folder' | undefined> {
    if (entry.isFile()) return 'file';
    if (entry.isDirectory()) return 'folder';
    const stats = entry.isSymbolicLink() ? await stat(path).catch(() => undefined) : undefined;
    return stats?.isFile() ? 'file' : stats?.isDirectory() ? 'folder' : undefined;
}
