/*
 * How much of the rules, and of the physics that they lean on, the tests really hold: each small change to the code
 * should make a test of its own part fail. What other tests would notice beside does not count, so the score is a
 * lower bound. What went unnoticed is listed in SURVIVORS.md. Slow, and no part of `npm test`:
 *
 *     npm run mutation                    everything
 *     npm run mutation -- stagger clip    the parts with these words in their names
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { filesIn, listAll } from './listed.mjs';
import { partsOf } from './parts.mjs';

const root = join(import.meta.dirname, '../..');
const results = join(root, 'artefacts/mutation');
const least = 85;

const parts = partsOf(root, process.argv.slice(2));
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });
const done = parts.map((part) => {
    const found = tried(part);
    // Hours may be spent: what was found stays found, however the rest of it ends.
    listAll(root, results);
    return found;
});
const total = done.reduce(
    (sum, part) => (part ? { found: sum.found + part.found, all: sum.all + part.all } : sum),
    { found: 0, all: 0 },
);
console.log(`all: ${scoreOf(total)} % of ${total.all} changes noticed`);
const untried = parts.filter((_, index) => !done[index]);
process.exitCode = untried.length > 0 ? 2 : scoreOf(total) < least ? 1 : 0;

function tried({ name, word, mutate, tests }) {
    const report = join(results, `${name.replace(/\W+/g, '-')}.json`);
    const { status, signal, stdout, stderr } = spawnSync(
        join(root, 'node_modules/.bin/stryker'),
        ['run', 'tests/mutation/stryker.config.mjs', '--mutate', mutate.join(',')],
        {
            cwd: root,
            encoding: 'utf8',
            maxBuffer: 2 ** 28,
            env: {
                ...process.env,
                MUTATION_TESTS: tests.join(' '),
                MUTATION_WORD: word ?? '',
                MUTATION_REPORT: report,
            },
        },
    );
    if (status !== 0) {
        console.log(`${name} could not be tried (${signal ?? status}):\n${stdout}${stderr}`);
        return undefined;
    }
    const files = Object.values(filesIn(report));
    const sum = (key) => files.reduce((total, file) => total + file[key], 0);
    const part = { found: sum('noticed'), all: sum('changes') };
    console.log(`${name}: ${scoreOf(part)} % of ${part.all}`);
    return part;
}

function scoreOf({ found, all }) {
    return all === 0 ? 100 : Math.floor((1000 * found) / all) / 10;
}
