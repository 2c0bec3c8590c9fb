import type { Dirent, Stats } from 'node:fs';
import {
    lstat,
    mkdir,
    readdir,
    readFile,
    realpath,
    rename,
    rm,
    rmdir,
    stat,
    unlink,
    writeFile,
} from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import path from 'node:path';
import { confine, destination } from './confine.ts';
import { Refusal } from './refusal.ts';

/**
 * A folder on disk over HTTP, in the terms of VS Code's file-system provider.
 *
 * | method | query | does |
 * |---|---|---|
 * | GET | | the bytes of a file |
 * | GET | `as=stat` | `{ type, ctime, mtime, size }`, times in ms |
 * | GET | `as=entries` | `[[name, type], …]` of a folder |
 * | PUT | `create`, `overwrite`: `false` to forbid | writes a file |
 * | POST | `make=folder` | makes a folder |
 * | POST | `move=<path in the folder>`, `overwrite=false` | moves or renames |
 * | DELETE | `recursive=true` | deletes a file or an empty folder, or all below it |
 *
 * @throws Refusal  or a file-system error, for `refusalOf`
 */
export async function answerFromDisk(
    root: string,
    encoded: string,
    query: URLSearchParams,
    request: IncomingMessage,
    response: ServerResponse,
): Promise<void> {
    switch (request.method) {
        case 'GET':
            return read(root, await confine(root, encoded), query, response);
        case 'PUT':
            await write(await confine(root, encoded), query, request);
            break;
        case 'POST':
            if (query.get('make') === 'folder') await mkdir(await confine(root, encoded));
            else await move(root, encoded, query);
            break;
        case 'DELETE':
            await remove(await within(root, encoded), query.get('recursive') === 'true');
            break;
        default:
            response.setHeader('Allow', 'GET, PUT, POST, DELETE');
            throw new Refusal(405, 'NoPermissions', `${request.method} is no way to ask for a file.`);
    }
    response.writeHead(204).end();
}

async function read(
    root: string,
    place: string,
    query: URLSearchParams,
    response: ServerResponse,
): Promise<void> {
    switch (query.get('as')) {
        case 'stat':
            return json(response, await status(place));
        case 'entries': {
            const home = await realpath(root);
            const entries = await readdir(place, { withFileTypes: true });
            return json(response, await Promise.all(entries.map((entry) => listed(home, place, entry))));
        }
        case null:
            response.setHeader('Content-Type', 'application/octet-stream');
            response.end(await readFile(place));
            return;
        default:
            throw new Refusal(400, 'Unavailable', 'A file can be asked for as "stat" or "entries".');
    }
}

async function write(place: string, query: URLSearchParams, request: IncomingMessage): Promise<void> {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    const exists = await isThere(place);
    if (exists && query.get('overwrite') === 'false')
        throw new Refusal(409, 'FileExists', 'The file exists.');
    if (!exists && query.get('create') === 'false') throw new Refusal(404, 'FileNotFound', 'No such file.');
    await writeFile(place, Buffer.concat(parts));
}

async function move(root: string, encoded: string, query: URLSearchParams): Promise<void> {
    const destination = query.get('move');
    if (destination === null) throw new Refusal(400, 'Unavailable', 'POST makes a folder or moves a file.');
    const from = await within(root, encoded);
    const to = await within(root, destination);
    await lstat(from);
    if ((await isThere(to)) && query.get('overwrite') === 'false')
        throw new Refusal(409, 'FileExists', 'The name is taken.');
    await rename(from, to);
}

async function remove(place: string, recursive: boolean): Promise<void> {
    const seen = await lstat(place);
    if (!seen.isDirectory()) await unlink(place);
    else if (recursive) await rm(place, { recursive: true });
    else await rmdir(place);
}

/** Where a file stands that is moved or deleted, links left as they are; never the whole folder. */
async function within(root: string, encoded: string): Promise<string> {
    const place = await confine(root, encoded, 'keep');
    if (place === (await confine(root, '')))
        throw new Refusal(403, 'NoPermissions', 'The workspace itself stays.');
    return place;
}

const isThere = (place: string) =>
    lstat(place).then(
        () => true,
        () => false,
    );

// VS Code's FileType; a link carries its own bit besides that of what it leads to.
const file = 1;
const folder = 2;
const link = 64;

const kind = (seen: Stats | Dirent) => (seen.isFile() ? file : seen.isDirectory() ? folder : 0);

async function status(place: string) {
    const seen = await stat(place);
    return {
        type: kind(seen),
        ctime: Math.floor(seen.ctimeMs),
        mtime: Math.floor(seen.mtimeMs),
        size: seen.size,
    };
}

/** A link that leads out or nowhere is listed as a link to nothing known. */
async function listed(home: string, place: string, entry: Dirent): Promise<[name: string, type: number]> {
    if (!entry.isSymbolicLink()) return [entry.name, kind(entry)];
    try {
        return [entry.name, link | kind(await stat(await destination(path.join(place, entry.name), home)))];
    } catch {
        return [entry.name, link];
    }
}

function json(response: ServerResponse, value: unknown): void {
    response.setHeader('Content-Type', 'application/json');
    response.end(JSON.stringify(value));
}
