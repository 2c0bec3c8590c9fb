// Runs the command over this folder as its team would, and keeps the pictures in artefacts/demo/.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { basename, join, relative } from 'node:path';

const folder = import.meta.dirname;
const layback = join(folder, '../dist/layback.mjs');
const pictures = join(folder, '../artefacts/demo');
if (!existsSync(layback)) throw new Error('dist/layback.mjs is not built: npm run build');

// Two plans went wrong on purpose, so that findings have something to show.
show(['check', '--fail-on', 'never']);
show(['figures', 'plans/blue-marlin.spread']);
show(['explain', 'stagger']);

rmSync(pictures, { recursive: true, force: true });
mkdirSync(pictures, { recursive: true });
for (const plan of readdirSync(join(folder, 'plans')).filter((name) => name.endsWith('.spread'))) {
    for (const { name } of spreadsOf(`plans/${plan}`)) {
        const picture = join(pictures, `${basename(plan, '.spread')}-${name}`);
        run(['draw', `plans/${plan}`, '--plan', name, '-o', `${picture}.svg`]);
        run(['draw', `plans/${plan}`, '--plan', name, '-o', `${picture}.png`]);
        run(['draw', `plans/${plan}`, '--plan', name, '--view', 'side', '-o', `${picture}-side.svg`]);
    }
}
console.log(`\n${readdirSync(pictures).length} pictures in ${relative(process.cwd(), pictures) || '.'}:`);
for (const name of readdirSync(pictures)) console.log(`  ${name}`);

function show(args) {
    console.log(`\n$ layback ${args.join(' ')}\n`);
    console.log(run(args));
}

function spreadsOf(path) {
    return JSON.parse(run(['figures', path, '--json'])).plans;
}

function run(args) {
    const { status, stdout, stderr } = spawnSync(process.execPath, [layback, ...args], {
        cwd: folder,
        encoding: 'utf8',
        maxBuffer: 2 ** 28,
        env: { ...process.env, FORCE_COLOR: process.stdout.isTTY ? '1' : '' },
    });
    if (status !== 0) throw new Error(`layback ${args.join(' ')} ended with ${status}:\n${stderr}`);
    return stdout;
}
