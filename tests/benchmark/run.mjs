// Prints ratios, each measured in one interleaved run on this machine. No test decides anything by them.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeCorpus } from './corpus.mjs';

const layback = join(import.meta.dirname, '../../dist/layback.mjs');
if (!existsSync(layback)) throw new Error('dist/layback.mjs is not built: npm run build');

const folder = mkdtempSync(join(tmpdir(), 'layback-benchmark-'));
try {
    console.log(`Node ${process.version}, ${process.platform} ${process.arch}\n`);
    start(folder);
    volume(folder);
} finally {
    rmSync(folder, { recursive: true, force: true });
}

/** How long a whole process takes that checks one plan with its tackle, against one that does nothing. */
function start(folder) {
    const team = join(folder, 'team');
    run([layback, 'new', team]);
    const bare = ['-e', '0'];
    const rows = [
        ['node -e 0', bare],
        ['layback --version', [layback, '--version']],
        [
            'layback check, one plan',
            [layback, 'check', '--fail-on', 'never', join(team, 'plans/first.spread')],
        ],
        [
            'layback check, as SARIF',
            [layback, 'check', '--fail-on', 'never', '-f', 'sarif', join(team, 'plans/first.spread')],
        ],
    ];
    const times = rows.map(() => []);
    for (let round = 0; round < 30; round++) {
        for (const [index, [, args]] of rows.entries()) times[index].push(run(args).milliseconds);
    }
    const base = median(times[0]);
    console.log('Start: median of 30, as a multiple of bare node');
    for (const [index, [name]] of rows.entries()) {
        const time = median(times[index]);
        console.log(`  ${name.padEnd(26)} ${time.toFixed(0).padStart(5)} ms  ${(time / base).toFixed(2)}`);
    }
}

/** How a thousand files behave. */
function volume(folder) {
    const many = join(folder, 'many');
    const { files, lines } = writeCorpus(many, 998);
    const { milliseconds, memory } = run([layback, 'check', '--fail-on', 'never', '-f', 'json', many]);
    console.log(`\nVolume: ${files} files, ${lines} lines`);
    console.log(`  ${(milliseconds / 1000).toFixed(2)} s, ${(memory / 1024).toFixed(0)} MB at most`);
}

function run(args) {
    // The child tells its own peak memory when it ends.
    const tell =
        'data:text/javascript,process.on("exit",()=>process.stderr.write("\\nRSS "+process.resourceUsage().maxRSS))';
    const began = process.hrtime.bigint();
    const measured = args[0] === '-e' ? args : ['--import', tell, ...args];
    const { status, stderr } = spawnSync(process.execPath, args.includes('json') ? measured : args, {
        encoding: 'utf8',
        maxBuffer: 2 ** 30,
    });
    const milliseconds = Number(process.hrtime.bigint() - began) / 1e6;
    if (status !== 0) throw new Error(`layback ${args.slice(1).join(' ')} ended with ${status}:\n${stderr}`);
    return { milliseconds, memory: Number(/RSS (\d+)/.exec(stderr)?.[1] ?? 0) };
}

function median(numbers) {
    return [...numbers].sort((a, b) => a - b)[numbers.length >> 1];
}
