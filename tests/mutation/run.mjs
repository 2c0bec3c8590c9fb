/*
 * How much of the rules, and of the physics that they lean on, the tests really hold: each small change to the code
 * should make a test of its own part fail. What other tests would notice beside does not count, so the score is a
 * lower bound. Slow, and no part of `npm test`:
 *
 *     npm run mutation                    everything
 *     npm run mutation -- stagger clip    the parts with these words in their names
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { partsOf } from './parts.mjs';

const root = join(import.meta.dirname, '../..');
const results = join(root, 'artefacts/mutation');
const least = 85;

const parts = partsOf(root, process.argv.slice(2));
mkdirSync(results, { recursive: true });
const done = parts.map(tried);
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
    const { files } = JSON.parse(readFileSync(report, 'utf8'));
    const mutants = Object.entries(files).flatMap(([path, { source, mutants }]) =>
        mutants.map((mutant) => ({ ...mutant, path, was: wordsAt(source, mutant.location) })),
    );
    // A change that never ends is noticed as well; one that cannot be loaded at all says nothing.
    const counted = mutants.filter(({ status }) =>
        ['Killed', 'Timeout', 'Survived', 'NoCoverage'].includes(status),
    );
    const missed = counted.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
    const part = {
        found: counted.length - missed.length,
        all: counted.length,
        survivors: missed.map(asLine),
    };
    console.log(`${name}: ${scoreOf(part)} % of ${part.all}`);
    return part;
}

function asLine({ path, location, status, mutatorName, was, replacement }) {
    const what = status === 'NoCoverage' ? `${mutatorName}, reached by no test` : mutatorName;
    return `${path}:${location.start.line}:${location.start.column} ${what}: ${short(was)} → ${short(replacement ?? '')}`;
}

function wordsAt(source, { start, end }) {
    const lines = source.split('\n').slice(start.line - 1, end.line);
    lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
    lines[0] = lines[0].slice(start.column - 1);
    return lines.join(' ');
}

function short(text) {
    const flat = text.replace(/\s+/g, ' ');
    return flat.length > 90 ? `${flat.slice(0, 87)}...` : flat;
}

function scoreOf({ found, all }) {
    return all === 0 ? 100 : Math.floor((1000 * found) / all) / 10;
}
