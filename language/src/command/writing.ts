import { realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Refusal, reasonOf } from './refusal.ts';
import { showPath } from './walk.ts';

/**
 * Writes a file whole or not at all: nobody finds half a plan after a full disk or a pulled plug. A link stays a
 * link, and a file that is there keeps its permissions.
 *
 * @throws Refusal with the reason
 */
export function writeWhole(path: string, content: string | Uint8Array): void {
    const real = realPathOf(path);
    const draft = join(dirname(real), `.layback-${process.pid}.tmp`);
    try {
        writeFileSync(draft, content, { flag: 'wx', mode: modeOf(real) });
        renameSync(draft, real);
    } catch (error) {
        rmSync(draft, { force: true });
        throw new Refusal(`${showPath(path, process.cwd())} ${writeReason(error)}.`);
    }
}

function realPathOf(path: string): string {
    try {
        return realpathSync.native(path);
    } catch {
        return path;
    }
}

function modeOf(path: string): number {
    try {
        return statSync(path).mode & 0o777;
    } catch {
        return 0o666;
    }
}

function writeReason(error: unknown): string {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') return 'cannot be written: its folder is not there';
    return reasonOf(error);
}
