import { readdirSync } from 'node:fs';
import { join } from 'node:path';

const rules = 'language/src/rules';
const physics = 'language/src/physics';
const plans = 'tests/rules/{plans,read-aloud}.test.ts';

/** Every rule with the tests beside it, its page, and the plans that it finds something in. */
function rulesOf(root) {
    return readdirSync(join(root, rules), { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && entry.name !== 'the-text')
        .map(({ name }) => ({
            name,
            mutate: [`${rules}/${name}/${name}.ts`],
            tests: [`${rules}/${name}/*.test.ts`, `${rules}/registry.test.ts`, plans],
        }));
}

/** What the rules share. */
const shared = {
    name: 'shared by the rules',
    mutate: [`${rules}/*.ts`, `!${rules}/*.test.ts`],
    tests: [`${rules}/*.test.ts`, `${rules}/{stagger,clip-*,turn-*,leader-length,wave-*}/*.test.ts`, plans],
};

/** The physics that the rules lean on, each part with the tests that are named for it. */
const leanedOn = [
    ['clip', 'weakest-link'],
    ['drag'],
    ['sway', 'triangles', 'segments'],
    ['line', 'sag'],
    ['lure-drag'],
    ['tow-points'],
].map((names) => ({
    name: `physics: ${names.join(', ')}`,
    mutate: names.map((name) => `${physics}/${name}.ts`),
    tests: names.map((name) => `tests/physics/${name}.test.ts`),
}));

const folders = ['order', 'turn', 'waves'].map((name) => ({
    name: `physics: ${name}`,
    mutate: [`${physics}/${name}/*.ts`],
    tests: [`tests/physics/${name}/*.test.ts`],
}));

/** All parts, or those whose name contains a word. */
export function partsOf(root, words) {
    const all = [...rulesOf(root), shared, ...leanedOn, ...folders];
    return words.length === 0 ? all : all.filter(({ name }) => words.some((word) => name.includes(word)));
}
