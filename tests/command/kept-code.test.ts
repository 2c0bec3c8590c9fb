import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { command } from './layback.ts';

const scratch = mkdtempSync(join(tmpdir(), 'layback-kept-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

test('what the engine compiled for a check of very many files serves the next check', () => {
    const copy = join(scratch, 'dist');
    cpSync(join(command, '..'), copy, { recursive: true, filter: (path) => !path.endsWith('.cache') });
    for (let n = 0; n < 30; n++) writeFileSync(join(scratch, `${n}.spread`), `use "${n + 1}.spread"\n`);
    const check = (path: string) =>
        spawnSync(process.execPath, [join(copy, 'layback.mjs'), 'check', path], { cwd: scratch });
    expect(check('.').status).toBe(1);
    const kept = readdirSync(join(copy, 'layback')).filter((name) => name.endsWith('.cache'));
    expect(kept).toHaveLength(1);
    const written = () => statSync(join(copy, 'layback', kept[0]!)).mtimeMs;
    const before = written();
    expect(check('.').status).toBe(1);
    expect(check('0.spread').status).toBe(0);
    expect(written()).toBe(before);
});
