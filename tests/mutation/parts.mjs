import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

const rules = 'language/src/rules';
const physics = 'language/src/physics';
const aloud = 'tests/rules/read-aloud.test.ts';
const bare = 'tests/rules/bare-plans.test.ts';
const limits = 'tests/rules/at-the-limit.test.ts';

/** Every rule with the tests beside it, its page and row in the index, and its findings as they are read aloud. */
function rulesOf(root) {
    return readdirSync(join(root, rules), { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && entry.name !== 'the-text')
        .map(({ name }) => ({
            name,
            word: name,
            mutate: [`${rules}/${name}/${name}.ts`],
            tests: [`${rules}/${name}/${name}.test.ts`, `${rules}/registry.test.ts`, limits, aloud, bare],
        }));
}

/** What the rules share, with the tests of what they share and of a few rules that use most of it. */
function sharedBy(root) {
    const own = testsIn(root, rules).filter((file) => !file.endsWith('sources.test.ts'));
    const users = [
        'stagger',
        'clip-stiff',
        'turn-foul',
        'leader-length',
        'wave-band',
        'size-order',
        'waiver-idle',
    ];
    return {
        name: 'shared by the rules',
        mutate: [`${rules}/*.ts`, `!${rules}/*.test.ts`],
        tests: [
            ...own,
            ...users.map((name) => `${rules}/${name}/${name}.test.ts`),
            ...testsIn(root, 'tests/language').filter((file) => /waive|rules|check/.test(file)),
            aloud,
            bare,
        ],
    };
}

/** The physics that the rules lean on, each part with the tests that are named for it; no rule reads how a strike goes. */
function physicsOf(root) {
    const single = [
        ['clip'],
        ['weakest-link'],
        ['drag'],
        ['remedy', 'sway'],
        ['triangles', 'segments'],
        ['line', 'line-load'],
        ['sag'],
        ['lure-drag', 'lure-weight', 'coefficients'],
        ['tow-points', 'towed'],
        ['climb', 'root', 'vector'],
    ].map((names) => ({
        name: `physics: ${names.join(', ')}`,
        mutate: names.map((name) => `${physics}/${name}.ts`),
        tests: testsIn(root, 'tests/physics').filter((file) => names.some((name) => isAbout(file, name))),
    }));
    const folders = ['order', 'waves', 'turn', 'chain'].map((name) => ({
        name: `physics: ${name}/`,
        mutate: [`${physics}/${name}/*.ts`],
        tests: testsIn(root, `tests/physics/${name}`),
    }));
    return [...single, ...folders];
}

/** `sway.test.ts` and `sway-at-its-limits.test.ts` are about sway. */
function isAbout(file, name) {
    const title = file.split('/').at(-1).replace('.test.ts', '');
    return title === name || title.startsWith(`${name}-at-`);
}

function testsIn(root, folder) {
    const here = join(root, folder);
    if (!existsSync(here)) return [];
    return readdirSync(here)
        .filter((file) => file.endsWith('.test.ts'))
        .map((file) => `${folder}/${file}`);
}

/** All parts, or those whose name contains a word. */
export function partsOf(root, words) {
    const all = [...rulesOf(root), sharedBy(root), ...physicsOf(root)];
    return words.length === 0 ? all : all.filter(({ name }) => words.some((word) => name.includes(word)));
}
