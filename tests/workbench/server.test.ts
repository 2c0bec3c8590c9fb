import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, readlink, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ask } from './ask.ts';
import { fixture } from './fixture.ts';
import { layback, project } from './project.ts';
import { type Server, startServer } from './server.ts';

let outside: string;
let workspace: string;
let server: Server;

beforeEach(async () => {
    outside = await mkdtemp(path.join(tmpdir(), 'server-'));
    workspace = path.join(outside, 'plans');
    await mkdir(path.join(workspace, 'trips'), { recursive: true });
    await writeFile(path.join(workspace, 'a.tally'), 'scad\n');
    await writeFile(path.join(outside, 'secret'), 'secret\n');
    server = await startServer({ workspace, project, extension: fixture() });
});
afterEach(async () => {
    await server.close();
    await rm(outside, { recursive: true });
});

const get = (asked: string, headers?: Record<string, string>) => ask(server.port, asked, { headers });
const fault = ({ status, body }: { status: number; body: string }) => [status, JSON.parse(body).fault];

describe('the folder over HTTP', () => {
    test('is read', async () => {
        expect(await get('/files/a.tally')).toMatchObject({ status: 200, body: 'scad\n' });
        const before = Date.now();
        await utimes(path.join(workspace, 'a.tally'), 1_700_000_000, 1_700_000_000.5);
        const seen = JSON.parse((await get('/files/a.tally?as=stat')).body);
        expect(seen).toMatchObject({ type: 1, size: 5, mtime: 1_700_000_000_500 });
        expect(Math.abs(seen.ctime - before)).toBeLessThan(60_000);
        expect(JSON.parse((await get('/files?as=stat')).body)).toMatchObject({ type: 2 });
        const entries = JSON.parse((await get('/files/?as=entries')).body);
        expect(entries.sort()).toEqual([
            ['a.tally', 1],
            ['trips', 2],
        ]);
        expect(fault(await get('/files/none'))).toEqual([404, 'FileNotFound']);
        expect(fault(await get('/files/trips'))).toEqual([409, 'FileIsADirectory']);
        expect(fault(await get('/files/a.tally/deeper'))).toEqual([409, 'FileNotADirectory']);
        expect(fault(await get('/files/a.tally?as=poem'))).toEqual([400, 'Unavailable']);
    });

    test('is written, with the conditions that an editor sets', async () => {
        const put = (asked: string, body: string) => ask(server.port, asked, { method: 'PUT', body });
        expect((await put('/files/n%C3%A9w.tally?create=true&overwrite=true', 'été\n')).status).toBe(204);
        expect(await readFile(path.join(workspace, 'néw.tally'), 'utf8')).toBe('été\n');
        expect(fault(await put('/files/a.tally?create=true&overwrite=false', 'x'))).toEqual([
            409,
            'FileExists',
        ]);
        expect(fault(await put('/files/b.tally?create=false&overwrite=true', 'x'))).toEqual([
            404,
            'FileNotFound',
        ]);
        expect(fault(await put('/files/none/b.tally', 'x'))).toEqual([404, 'FileNotFound']);
        expect(await readFile(path.join(workspace, 'a.tally'), 'utf8')).toBe('scad\n');
        expect(existsSync(path.join(workspace, 'b.tally'))).toBe(false);
    });

    test('is rearranged, and itself stays', async () => {
        const post = (asked: string) => ask(server.port, asked, { method: 'POST' });
        const remove = (asked: string) => ask(server.port, asked, { method: 'DELETE' });
        expect((await post('/files/new?make=folder')).status).toBe(204);
        expect(fault(await post('/files/new?make=folder'))).toEqual([409, 'FileExists']);
        expect((await post(`/files/a.tally?move=${encodeURIComponent('/new/b%20c.tally')}`)).status).toBe(
            204,
        );
        expect(await readFile(path.join(workspace, 'new/b c.tally'), 'utf8')).toBe('scad\n');
        expect(fault(await post('/files/trips?move=/new&overwrite=false'))).toEqual([409, 'FileExists']);
        expect(fault(await post('/files/none?move=/other'))).toEqual([404, 'FileNotFound']);
        expect(fault(await post('/files/trips'))).toEqual([400, 'Unavailable']);
        expect(fault(await remove('/files/new?recursive=false'))).toEqual([409, 'FileExists']);
        expect((await remove('/files/new?recursive=true')).status).toBe(204);
        expect((await remove('/files/trips')).status).toBe(204);
        expect(fault(await remove('/files/?recursive=true'))).toEqual([403, 'NoPermissions']);
        expect(fault(await post('/files/?move=/inside'))).toEqual([403, 'NoPermissions']);
        expect(JSON.parse((await get('/files?as=entries')).body)).toEqual([]);
    });

    test('does not lead out of itself, whichever way it is asked', async () => {
        await symlink('../secret', path.join(workspace, 'link'));
        await symlink('..', path.join(workspace, 'up'));
        await symlink('../planted', path.join(workspace, 'broken'));
        await symlink('a.tally', path.join(workspace, 'inner'));
        const ways: [method: string, asked: string][] = [
            ['GET', '/files/../secret'],
            ['GET', '/files/%2e%2e/secret'],
            ['GET', '/files/..%2fsecret'],
            ['GET', '/files/link'],
            ['GET', '/files/link?as=stat'],
            ['GET', '/files/up?as=entries'],
            ['GET', '/files/up/secret'],
            ['PUT', '/files/../secret'],
            ['PUT', '/files/link'],
            ['PUT', '/files/up/planted'],
            ['PUT', '/files/broken'],
            ['POST', '/files/up/planted?make=folder'],
            ['POST', `/files/a.tally?move=${encodeURIComponent('/../planted')}`],
            ['POST', '/files/a.tally?move=/up/planted'],
            ['POST', '/files/up/secret?move=/stolen'],
            ['DELETE', '/files/../secret'],
            ['DELETE', '/files/up/secret'],
        ];
        for (const [method, asked] of ways) {
            const answer = await ask(server.port, asked, {
                method,
                body: method === 'PUT' ? 'planted' : undefined,
            });
            expect([asked, answer.status >= 400 && answer.status < 404]).toEqual([asked, true]);
            expect(answer.body).not.toContain('secret\n');
        }
        expect(await readFile(path.join(outside, 'secret'), 'utf8')).toBe('secret\n');
        expect(existsSync(path.join(outside, 'planted'))).toBe(false);
        expect(existsSync(path.join(workspace, 'stolen'))).toBe(false);

        const entries = Object.fromEntries(JSON.parse((await get('/files?as=entries')).body));
        expect(entries).toMatchObject({ link: 64, up: 64, broken: 64, inner: 65 });
        expect((await get('/files/inner')).body).toBe('scad\n');
        // A link is deleted as what it is.
        expect((await ask(server.port, '/files/link', { method: 'DELETE' })).status).toBe(204);
        expect(await readlink(path.join(workspace, 'up'))).toBe('..');
        expect(existsSync(path.join(outside, 'secret'))).toBe(true);
    });
});

describe('what else is served', () => {
    test('is the editor, the extension and the page, to read only', async () => {
        expect((await get('/')).body).toContain('vscode-vfs');
        expect((await get('/build/out/vs/loader.js')).headers['content-type']).toBe(
            'text/javascript; charset=utf-8',
        );
        expect(JSON.parse((await get('/extension/package.json')).body).name).toBe('tally');
        expect((await get('/file-system/extension.js')).status).toBe(200);
        for (const asked of ['/', '/build/out/vs/loader.js', '/extension/package.json', '/changes']) {
            const answer = await ask(server.port, asked, { method: 'PUT', body: 'x' });
            expect([asked, answer.status]).toEqual([asked, 405]);
            expect(answer.headers.allow).toMatch(/^GET/);
        }
        const patched = await ask(server.port, '/files/a.tally', { method: 'PATCH' });
        expect([patched.status, patched.headers.allow]).toEqual([405, 'GET, PUT, POST, DELETE']);
        for (const asked of [
            '/package.json',
            '/constructor/x',
            '/build/',
            '/build',
            '/extension/none.js',
            '/filesa.tally',
        ]) {
            expect([asked, (await get(asked)).status]).toEqual([asked, 404]);
        }
        expect((await get('/build/../package.json')).status).toBe(403);
    });

    test('of this project is what its extension ships, and no more', async () => {
        await server.close();
        server = await startServer({ workspace, project, extension: layback });
        expect(JSON.parse((await get('/extension/package.json')).body).name).toBe('layback');
        for (const asked of [
            'tsconfig.json',
            '.git/config',
            'package-lock.json',
            'tests/workbench/server.ts',
            'distant',
        ]) {
            expect([asked, (await get(`/extension/${asked}`)).status]).toEqual([asked, 404]);
        }
        expect((await get('/extension/dist/../tsconfig.json')).status).toBe(403);
    });

    test('is sent again only when it has changed', async () => {
        const extension = fixture({ version: '1.0.1' });
        await server.close();
        server = await startServer({ workspace, project, extension });
        const { etag = '' } = (await get('/extension/view.js')).headers;
        const headers = { 'If-None-Match': String(etag) };
        expect(await get('/extension/view.js', headers)).toMatchObject({ status: 304, body: '' });
        await writeFile(path.join(extension.folder, 'view.js'), 'rebuilt');
        expect(await get('/extension/view.js', headers)).toMatchObject({ status: 200, body: 'rebuilt' });
    });
});

describe('who is let in', () => {
    test('is who asks by the right name, from one of the own pages', async () => {
        const { port } = server;
        for (const host of [
            `vscode.localhost:${port}`,
            `v--1a.vscode.localhost:${port}`,
            `127.0.0.1:${port}`,
        ]) {
            const answer = await get('/files/a.tally', { Host: host, Origin: `http://${host}` });
            expect([host, answer.status]).toEqual([host, 200]);
            expect(answer.headers['access-control-allow-origin']).toBe(`http://${host}`);
            expect(answer.headers['cross-origin-resource-policy']).toBe('same-site');
        }
        const strangers = [
            'example.com',
            `example.com:${port}`,
            `vscode.localhost:${port + 1}`,
            `vscode.localhost.example.com:${port}`,
        ];
        for (const host of strangers) {
            expect([host, (await get('/files/a.tally', { Host: host })).status]).toEqual([host, 403]);
            const posted = await ask(port, '/files/a.tally', {
                method: 'PUT',
                headers: { Origin: `http://${host}` },
                body: 'planted',
            });
            expect([host, posted.status]).toEqual([host, 403]);
            expect(posted.headers['access-control-allow-origin']).toBeUndefined();
        }
        expect((await get('/files/a.tally', { Origin: 'null' })).status).toBe(403);
        expect(await readFile(path.join(workspace, 'a.tally'), 'utf8')).toBe('scad\n');
    });

    const abroad = Object.values(networkInterfaces())
        .flatMap((addresses) => addresses ?? [])
        .find(({ internal, family }) => !internal && family === 'IPv4');
    test.skipIf(!abroad)('is nobody from another machine', async () => {
        const reached = await new Promise<string>((resolve) => {
            const trying = connect({ host: abroad?.address, port: server.port, timeout: 5000 });
            trying.once('connect', () => resolve('connected'));
            trying.once('error', (error: NodeJS.ErrnoException) => resolve(String(error.code)));
            trying.once('timeout', () => resolve('no answer'));
        });
        expect(reached).not.toBe('connected');
    });
});

describe('changes', () => {
    test('are told as they happen, whoever makes them, and once each', async () => {
        const told: unknown[] = [];
        const listening = await fetch(`http://127.0.0.1:${server.port}/changes`);
        expect(listening.headers.get('content-type')).toBe('text/event-stream');
        const reading = (async () => {
            const decoder = new TextDecoder();
            for await (const part of listening.body as unknown as AsyncIterable<Uint8Array>) {
                const lines = decoder.decode(part).split('\n');
                for (const line of lines)
                    if (line.startsWith('data: ')) told.push(...JSON.parse(line.slice(6)));
            }
        })().catch(() => 'the server has closed');
        const one = (type: string, changed: string) => ({ type, path: changed });

        await writeFile(path.join(workspace, 'trips/b.tally'), 'shark\n');
        await expect.poll(() => told, { timeout: 5000 }).toEqual([one('created', 'trips/b.tally')]);
        await writeFile(path.join(workspace, 'trips/b.tally'), 'shrak\n');
        await expect.poll(() => told.slice(1), { timeout: 5000 }).toEqual([one('changed', 'trips/b.tally')]);
        await ask(server.port, '/files/c.tally', { method: 'PUT', body: 'x' });
        await expect.poll(() => told.slice(2), { timeout: 5000 }).toEqual([one('created', 'c.tally')]);
        await rm(path.join(workspace, 'trips'), { recursive: true });
        await expect
            .poll(() => told.slice(3), { timeout: 5000 })
            .toEqual([one('deleted', 'trips'), one('deleted', 'trips/b.tally')]);
        await new Promise((resolve) => setTimeout(resolve, 700));
        expect(told).toHaveLength(5);

        await server.close();
        expect(await reading).toBe('the server has closed');
    });
});

describe('starting and ending', () => {
    test('a port that is taken, and a workspace that is no folder, are told at once', async () => {
        const again = startServer({ workspace, project, extension: fixture(), port: server.port });
        await expect(again).rejects.toThrow(/EADDRINUSE/);
        const file = path.join(workspace, 'a.tally');
        await expect(startServer({ workspace: file, project, extension: fixture() })).rejects.toThrow(
            'is not a folder',
        );
    });

    test('when it has closed, its port is free', async () => {
        await get('/');
        await server.close();
        await expect(get('/')).rejects.toThrow(/ECONNREFUSED/);
        const { port } = server;
        server = await startServer({ workspace, project, extension: fixture(), port });
        expect(server.port).toBe(port);
    });
});
