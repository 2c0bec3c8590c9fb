import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
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

test('what was compiled for a card and its PDF serves the next card, which is the same, until the press is another', () => {
    const copy = join(scratch, 'printing');
    cpSync(join(command, '..'), copy, { recursive: true, filter: (path) => !path.endsWith('.cache') });
    const plan = join(import.meta.dirname, '../../examples/plans/blue-marlin.spread');
    const card = () => {
        const { status, stdout } = spawnSync(
            process.execPath,
            [join(copy, 'layback.mjs'), 'card', plan, '-p', 'bank-rough', '-o', '-'],
            { cwd: scratch },
        );
        expect(status).toBe(0);
        return stdout;
    };
    const kept = () =>
        readdirSync(join(copy, 'layback'))
            .filter((name) => name.endsWith('.cache'))
            .map((name) => [name, statSync(join(copy, 'layback', name)).mtimeMs]);
    const first = card();
    expect(first.subarray(0, 5).toString()).toBe('%PDF-');
    const [forCommand, forPress] = kept();
    expect([forCommand?.[0], forPress?.[0]]).toEqual([
        expect.stringMatching(/^command-/),
        expect.stringMatching(/^pdf-/),
    ]);
    expect(card().equals(first)).toBe(true);
    expect(kept()).toEqual([forCommand, forPress]);

    // As long as it was, which is all that the engine itself would look at.
    const press = join(copy, 'press/pdf.cjs');
    writeFileSync(press, readFileSync(press, 'latin1').replace('Layback', 'Laydown'), 'latin1');
    expect(card().includes('Laydown')).toBe(true);
    expect(kept()).toHaveLength(3);
});
