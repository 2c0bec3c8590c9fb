// Prints ratios, each measured in one interleaved run on this machine. No test decides anything by them.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundled } from './bundled.mjs';
import { writeCorpus } from './corpus.mjs';

const layback = join(import.meta.dirname, '../../dist/layback.mjs');
if (!existsSync(layback)) throw new Error('dist/layback.mjs is not built: npm run build');

const folder = mkdtempSync(join(tmpdir(), 'layback-benchmark-'));
try {
    console.log(`Node ${process.version}, ${process.platform} ${process.arch}\n`);
    start(folder);
    await volume(folder);
} finally {
    rmSync(folder, { recursive: true, force: true });
}
console.log('\nEditor');
await import('./editor.mjs');

/** How long a whole process takes that checks one plan with its tackle, against one that does nothing. */
function start(folder) {
    const team = join(folder, 'team');
    run([layback, 'new', team]);
    const plan = join(team, 'plans/first.spread');
    const [straight, faulty] = ['straight', 'faulty'].map((name) => join(team, `plans/${name}.spread`));
    writeFileSync(straight, readFileSync(plan, 'utf8').replace(/^ *turn within .*\n/m, ''));
    writeFileSync(faulty, readFileSync(straight, 'utf8').replace('speed 8 kn', 'speed'));
    const bare = ['-e', '0'];
    const check = [layback, 'check', '--fail-on', 'never'];
    const rows = [
        ['node -e 0', bare],
        ['layback --version', [layback, '--version']],
        ['layback check, one plan', [...check, straight]],
        ['the same, as SARIF', [...check, '-f', 'sarif', straight]],
        ['the same, with a fault', [...check, faulty]],
        ['the same, with a turn', [...check, plan]],
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

/** How a thousand files behave, beside the toolkit's own services over the same grammar, names and checks. */
async function volume(folder) {
    const many = join(folder, 'many');
    const { files, lines } = writeCorpus(many, 998);
    const plain = join(folder, 'default-check.mjs');
    await bundled('default-check.ts', plain);
    const rows = [
        ['layback check', [layback, 'check', '--fail-on', 'never', '-f', 'json', many]],
        ['default services', [plain, many]],
    ];
    console.log(`\nVolume: ${files} files, ${lines} lines; median of 3`);
    const runs = rows.map(() => []);
    for (let round = 0; round < 3; round++)
        for (const [index, [, args]] of rows.entries()) runs[index].push(run(args, true));
    for (const [index, [name]] of rows.entries()) {
        const [time, processor] = ['milliseconds', 'processor'].map((of) =>
            median(runs[index].map((one) => one[of])),
        );
        const most = Math.max(...runs[index].map(({ memory }) => memory));
        const told = [time, processor].map((each) => `${(each / 1000).toFixed(2)} s`);
        console.log(
            `  ${name.padEnd(26)} ${told[0]}, ${told[1]} of the processor, ${(most / 1024).toFixed(0)} MB at most`,
        );
    }
}

function run(args, measured = false) {
    // The child tells its own peak memory when it ends.
    const tell =
        'data:text/javascript,process.on("exit",()=>{const{maxRSS,userCPUTime,systemCPUTime}=process.resourceUsage();process.stderr.write("\\nUSED "+maxRSS+" "+(userCPUTime+systemCPUTime))})';
    const began = process.hrtime.bigint();
    const { status, stderr } = spawnSync(process.execPath, measured ? ['--import', tell, ...args] : args, {
        encoding: 'utf8',
        maxBuffer: 2 ** 30,
    });
    const milliseconds = Number(process.hrtime.bigint() - began) / 1e6;
    if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}:\n${stderr}`);
    const [, memory = 0, micros = 0] = /USED (\d+) (\d+)/.exec(stderr) ?? [];
    return { milliseconds, memory: Number(memory), processor: Number(micros) / 1000 };
}

function median(numbers) {
    return [...numbers].sort((a, b) => a - b)[numbers.length >> 1];
}
