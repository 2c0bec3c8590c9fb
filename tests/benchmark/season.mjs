// How long a season takes, and a comparison, beyond the process that takes it. No test decides anything by them.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const layback = join(import.meta.dirname, '../../dist/layback.mjs');
const examples = join(import.meta.dirname, '../../examples');
const folder = mkdtempSync(join(tmpdir(), 'layback-season-'));

/** Events that a season's logs hold, over a hundred days. */
const events = 5000;

try {
    // What belongs to one repository may be used from any folder of it.
    mkdirSync(join(folder, '.git'));
    writeSeason();
    const [before, after] = writeVersions();
    const rows = [
        ['layback --version', ['--version']],
        [`layback season, ${events} events`, ['season', join(folder, 'logs')]],
        ['layback compare, seven lines', ['compare', before, after]],
    ];
    const times = rows.map(() => []);
    for (let round = 0; round < 9; round++)
        for (const [index, [, args]] of rows.entries()) times[index].push(run(args));
    const [start] = times.map(median);
    console.log('Season and comparison: median of 9, beyond the start of the command');
    for (const [index, [name]] of rows.entries()) {
        const time = median(times[index]);
        console.log(
            `  ${name.padEnd(30)} ${time.toFixed(0).padStart(5)} ms  ${(time - start).toFixed(0).padStart(5)}`,
        );
    }
} finally {
    rmSync(folder, { recursive: true, force: true });
}

function writeSeason() {
    mkdirSync(join(folder, 'logs'));
    writeFileSync(
        join(folder, 'plans.spread'),
        `lure bell "Bell" pusher { length 330 mm }
species drake "Drake" { speed 6 kn to 9 kn }
spread day "Day" { speed 8 kn  port short corner { lure bell  back 12 m }  shotgun { lure bell  back 60 m } }
`,
    );
    const outcomes = ['raise', 'bite', 'bite hooked', 'bite hooked released', 'bite lost "came off"'];
    const positions = ['port short corner', 'shotgun'];
    for (let day = 0; day < 100; day++) {
        const lines = Array.from({ length: events / 100 }, (_, index) => {
            const minutes = 420 + 9 * index;
            const clock = [Math.floor(minutes / 60), minutes % 60]
                .map((part) => String(part).padStart(2, '0'))
                .join(':');
            const [outcome, position] = [outcomes[(day + index) % 5], positions[(day * index) % 2]];
            return `    at ${clock} ${outcome} ${position} drake ${5 + (index % 30)} kg by "Wren"`;
        });
        const date = new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10);
        writeFileSync(
            join(folder, `logs/${date}.spread`),
            `use "../plans.spread"\nlog ${date} {\n    using day from 07:00\n${lines.join('\n')}\n}\n`,
        );
    }
}

/** The first plan of the example team with one lure elsewhere. */
function writeVersions() {
    const team = join(folder, 'team');
    mkdirSync(join(team, 'plans'), { recursive: true });
    mkdirSync(join(team, 'rules'));
    for (const path of [
        'boats',
        'lures',
        'tackle',
        'methods',
        'baits',
        'rules/house',
        'rules/lantern-bank-open',
    ])
        writeFileSync(join(team, `${path}.spread`), readFileSync(join(examples, `${path}.spread`)));
    const text = readFileSync(join(examples, 'plans/blue-marlin.spread'), 'utf8');
    const plan = text
        .slice(0, text.indexOf('\nspread ', text.indexOf('\nspread ') + 1))
        .replace(/\/\*\*[^*]*\*\/\s*$/, '');
    const paths = ['before', 'after'].map((name) => join(team, `plans/${name}.spread`));
    writeFileSync(paths[0], plan);
    writeFileSync(paths[1], plan.replace('back wave 4', 'back 36 m'));
    return paths;
}

function run(args) {
    const began = process.hrtime.bigint();
    const { status, stderr } = spawnSync(process.execPath, [layback, ...args], { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}:\n${stderr}`);
    return Number(process.hrtime.bigint() - began) / 1e6;
}

function median(numbers) {
    return [...numbers].sort((a, b) => a - b)[numbers.length >> 1];
}
