// Bundles physics.ts, so that it runs as what ships does, and runs it: `node tests/benchmark/physics.mjs [runs]`.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundled } from './bundled.mjs';

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'layback-benchmark-'));
try {
    const outfile = join(scratch, 'physics.mjs');
    await bundled('physics.ts', outfile);
    const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], {
        cwd: root,
        stdio: 'inherit',
    });
    process.exitCode = status ?? 1;
} finally {
    rmSync(scratch, { recursive: true, force: true });
}
