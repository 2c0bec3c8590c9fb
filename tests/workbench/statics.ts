import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { confine } from './confine.ts';
import { Refusal } from './refusal.ts';

/**
 * Answers with a file of a folder that is only read.
 *
 * @param parts  files and folders directly named; everything else of the folder does not exist. All of it if left out.
 * @throws Refusal  or a file-system error, for `refusalOf`
 */
export async function answerFromFolder(
    root: string,
    encoded: string,
    request: IncomingMessage,
    response: ServerResponse,
    parts?: readonly string[],
): Promise<void> {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
        response.setHeader('Allow', 'GET, HEAD');
        throw new Refusal(405, 'NoPermissions', `${request.method} changes nothing here.`);
    }
    const place = await confine(root, encoded);
    const named = path
        .relative(await confine(root, ''), place)
        .split(path.sep)
        .join('/');
    if (parts && !parts.some((part) => named === part || named.startsWith(`${part}/`))) {
        throw new Refusal(404, 'FileNotFound', `${named} is not served.`);
    }
    const seen = await stat(place);
    if (!seen.isFile()) throw new Refusal(404, 'FileNotFound', `${named} is no file.`);

    // A browser that has the file asks only whether it still holds: a rebuilt extension is never a stale one.
    const mark = `"${seen.mtimeMs}-${seen.size}"`;
    response.setHeader('Cache-Control', 'no-cache');
    response.setHeader('ETag', mark);
    response.setHeader('Content-Type', contentTypes[path.extname(place)] ?? 'application/octet-stream');
    if (request.headers['if-none-match'] === mark) {
        response.writeHead(304).end();
        return;
    }
    response.setHeader('Content-Length', seen.size);
    if (request.method === 'HEAD') response.end();
    else await pipeline(createReadStream(place), response);
}

const contentTypes: Readonly<Record<string, string>> = {
    '.css': 'text/css; charset=utf-8',
    '.html': 'text/html; charset=utf-8',
    '.ico': 'image/x-icon',
    '.js': 'text/javascript; charset=utf-8',
    '.json': 'application/json; charset=utf-8',
    '.map': 'application/json; charset=utf-8',
    '.md': 'text/markdown; charset=utf-8',
    '.mjs': 'text/javascript; charset=utf-8',
    '.png': 'image/png',
    '.svg': 'image/svg+xml',
    '.ttf': 'font/ttf',
    '.wasm': 'application/wasm',
    '.woff': 'font/woff',
    '.woff2': 'font/woff2',
};
