import type { Stats } from 'node:fs';
import { lstat, realpath } from 'node:fs/promises';
import path from 'node:path';
import { Refusal } from './refusal.ts';

/**
 * The place on disk that a path from an address names, and nothing outside `root`.
 *
 * Every segment is decoded once and judged by itself, then walked from the root, so that neither `..`, nor an encoded
 * separator, nor a link on the way leads out. A segment that does not exist yet ends the walk: nothing below it can be
 * a link.
 *
 * @param root  absolute folder
 * @param encoded  percent-encoded, separated by `/`, with or without one in front
 * @param last  `'follow'` resolves a link that the path ends in; `'keep'` names the link itself (to delete or move it)
 * @throws Refusal  400 for what cannot be a path, 403 for what leads outside
 *
 * Someone who can already change the folder while a request runs could still swap a folder for a link: this guards a
 * development server on loopback, not a hostile machine.
 */
export async function confine(
    root: string,
    encoded: string,
    last: 'follow' | 'keep' = 'follow',
): Promise<string> {
    const names = encoded
        .split('/')
        .filter((segment) => segment !== '')
        .map(plainName);
    const home = await realpath(root);
    let place = home;
    for (const [index, name] of names.entries()) {
        const next = path.join(place, name);
        const seen = await look(next);
        if (!seen) return path.join(place, ...names.slice(index));
        const kept = last === 'keep' && index === names.length - 1;
        place = seen.isSymbolicLink() && !kept ? await destination(next, home) : next;
    }
    return place;
}

function plainName(segment: string): string {
    let name: string;
    try {
        name = decodeURIComponent(segment);
    } catch {
        throw new Refusal(400, 'NoPermissions', `"${segment}" is not a readable path segment.`);
    }
    if (name === '..') throw new Refusal(403, 'NoPermissions', 'A path must not climb out with "..".');
    if (name === '.' || /[/\\\0]/.test(name) || (process.platform === 'win32' && /[:*?"<>|]/.test(name))) {
        throw new Refusal(400, 'NoPermissions', `"${segment}" is not a file name.`);
    }
    return name;
}

async function look(place: string): Promise<Stats | undefined> {
    try {
        return await lstat(place);
    } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
        throw error;
    }
}

/**
 * Where a link leads.
 *
 * @param home  absolute folder without links in its own path
 * @throws Refusal  403 where that is nowhere, or outside `home`
 */
export async function destination(link: string, home: string): Promise<string> {
    let place: string;
    try {
        place = await realpath(link);
    } catch {
        // Writing through a broken link would create its target, wherever that is.
        throw new Refusal(403, 'NoPermissions', `${path.basename(link)} is a broken link.`);
    }
    if (place !== home && !place.startsWith(home + path.sep)) {
        throw new Refusal(403, 'NoPermissions', `${path.basename(link)} is a link out of the folder.`);
    }
    return place;
}
