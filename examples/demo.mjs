// Runs the command over a copy of this folder as its team would, and keeps what it draws in artefacts/demo/.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';

const root = join(import.meta.dirname, '..');
const layback = join(root, 'dist/layback.mjs');
const team = join(root, 'artefacts/demo');
if (!existsSync(layback)) throw new Error('dist/layback.mjs is not built: npm run build');

rmSync(team, { recursive: true, force: true });
cpSync(import.meta.dirname, team, { recursive: true, filter: (path) => !/\.(mjs|svg)$/.test(path) });

// Two plans went wrong on purpose, so that findings have something to show.
show('check', '--fail-on', 'never');
show('figures', 'plans/blue-marlin.spread', '--plan', 'bank-settled');
show('brief', 'plans/blue-marlin.spread', '--plan', 'bank-settled');

const plans = readdirSync(join(team, 'plans')).filter((name) => name.endsWith('.spread'));
for (const plan of plans) {
    run('draw', `plans/${plan}`);
    run('draw', `plans/${plan}`, '--view', 'side');
}
run('draw', 'plans/blue-marlin.spread', '--plan', 'bank-settled', '-o', 'plans/bank-settled.png');
run('card', 'plans/blue-marlin.spread', '--plan', 'bank-settled', '-o', 'plans/bank-settled-card.pdf');

const made = readdirSync(join(team, 'plans')).filter((name) => !name.endsWith('.spread'));
const folder = relative(process.cwd(), join(team, 'plans')) || '.';
console.log(`\nDrawn from above and from the side, and one deck card: ${made.length} files in ${folder}/`);
for (const name of made) console.log(`  ${join(folder, name)}`);

function show(...args) {
    console.log(`\n$ layback ${args.join(' ')}\n`);
    console.log(run(...args));
}

function run(...args) {
    const { status, stdout, stderr } = spawnSync(process.execPath, [layback, ...args], {
        cwd: team,
        encoding: 'utf8',
        maxBuffer: 2 ** 28,
        env: { ...process.env, FORCE_COLOR: process.stdout.isTTY ? '1' : '' },
    });
    if (status !== 0) throw new Error(`layback ${args.join(' ')} ended with ${status}:\n${stderr}`);
    return stdout;
}
