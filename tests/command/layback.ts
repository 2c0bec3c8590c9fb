import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, vi } from 'vitest';

// Each run starts a process, and the machine may be busy.
vi.setConfig({ testTimeout: 60_000 });

export const command = join(import.meta.dirname, '../../dist/layback.mjs');

export interface Ended {
    readonly status: number | null;
    readonly stdout: string;
    readonly stderr: string;
}

/** Runs the built command as a shell would. However it ends, it never shows its insides. */
export function layback(
    args: readonly string[],
    { cwd, input, env }: { cwd?: string; input?: string | Uint8Array; env?: Record<string, string> } = {},
): Ended {
    const { status, stdout, stderr, error } = spawnSync(process.execPath, [command, ...args], {
        cwd,
        input: input ?? '',
        encoding: 'utf8',
        maxBuffer: 2 ** 28,
        env: { ...process.env, NO_COLOR: '', FORCE_COLOR: '', ...env },
    });
    if (error) throw error;
    expectNoInsides({ status, stdout, stderr });
    return { status, stdout, stderr };
}

export function expectNoInsides({ status, stderr, stdout }: Ended): void {
    expect(stderr).not.toMatch(/fault of its own|^\s+at .*:\d+:\d+|node:internal|Warning:/m);
    expect(stdout).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m);
    expect([0, 1, 2]).toContain(status);
}

/** A folder with these files, gone after the test. */
export function folderOf(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
    const folder = mkdtempSync(join(tmpdir(), 'layback-test-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    for (const [path, content] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), content);
    }
    return folder;
}

/** A plan in which one word is misspelt: one error, and nothing else wrong. */
export const misspelt = 'boat heron {\n    lenght 9.8 m\n}\n';
export const sound = 'boat heron {\n    length 9.8 m\n}\n';
