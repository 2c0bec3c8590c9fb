// How long a whole process takes that prints a deck card, beside bare node, in one interleaved run.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');
const layback = join(root, 'dist/layback.mjs');
if (!existsSync(layback)) throw new Error('dist/layback.mjs is not built: npm run build');

const folder = mkdtempSync(join(tmpdir(), 'layback-card-'));
try {
    const team = join(folder, 'team');
    run([layback, 'new', team]);
    const first = join(team, 'plans/first.spread');
    const marlin = [join(root, 'examples/plans/blue-marlin.spread'), '-p', 'bank-settled'];
    const card = (plan, name) => [layback, 'card', ...plan, '-o', join(folder, name)];
    const rows = [
        ['node -e 0', ['-e', '0']],
        ['layback brief, a first plan', [layback, 'brief', first]],
        ['layback card, html', card([first], 'card.html')],
        ['layback card, pdf', card([first], 'card.pdf')],
        ['the same, one of three plans', card(marlin, 'marlin.pdf')],
    ];
    const times = rows.map(() => []);
    for (let round = 0; round < 15; round++) {
        for (const [index, [, args]] of rows.entries()) times[index].push(run(args));
    }
    const base = median(times[0]);
    console.log('Deck card: median of 15, and beyond bare node (a PDF should take at most 400 ms beyond it)');
    for (const [index, [name]] of rows.entries()) {
        const time = median(times[index]);
        const beyond = (time - base).toFixed(0).padStart(5);
        console.log(`  ${name.padEnd(30)} ${time.toFixed(0).padStart(5)} ms  ${beyond} ms`);
    }
} finally {
    rmSync(folder, { recursive: true, force: true });
}

function run(args) {
    const start = performance.now();
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}\n${stderr}`);
    return performance.now() - start;
}

function median(values) {
    return values.toSorted((a, b) => a - b)[values.length >> 1];
}
