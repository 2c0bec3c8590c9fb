import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** Tests of the command start what a user starts: builds it first where it is missing or older than its sources. */
export default function buildCommand(): void {
    const built = join(root, 'dist/layback.mjs');
    if (
        !wantsCommand(process.argv) ||
        (existsSync(built) && statSync(built).mtimeMs > newest(join(root, 'language')))
    )
        return;
    const { status, stderr } = spawnSync(process.execPath, ['build.mjs', 'command'], {
        cwd: root,
        encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`The command does not build:\n${stderr}`);
}

/** A run of named files that have nothing to do with the command need not wait for it. */
function wantsCommand(args: readonly string[]): boolean {
    const named = args.slice(2).filter((arg) => arg.startsWith('tests/') || arg.startsWith('language/'));
    return named.length === 0 || named.some((arg) => arg.startsWith('tests/command'));
}

function newest(folder: string): number {
    let latest = 0;
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
        const path = join(folder, entry.name);
        latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
    }
    return latest;
}
