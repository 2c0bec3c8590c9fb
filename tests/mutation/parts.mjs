import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const rules = 'language/src/rules';
const physics = 'language/src/physics';
const aloud = 'tests/rules/read-aloud.test.ts';
const limits = 'tests/rules/at-the-limit';
const bare = 'tests/rules/bare-plans.test.ts';

/** Every rule with the tests beside it, its page and row in the index, and its findings as they are read aloud. */
function rulesOf(root) {
    return readdirSync(join(root, rules), { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && entry.name !== 'the-text')
        .map(({ name }) => ({
            name,
            word: name,
            mutate: [`${rules}/${name}/${name}.ts`],
            tests: [
                `${rules}/${name}/${name}.test.ts`,
                `${rules}/registry.test.ts`,
                ...naming(root, limits, name),
                aloud,
                bare,
            ],
        }));
}

/** What the rules share, file by file, each with its own tests and those of a few rules that use most of it. */
const users = {
    check: ['waiver-idle', 'log-mismatch'],
    clips: ['used-twice', 'clip-stiff', 'clip-false-release', 'lateral-gap', 'clip-on-double'],
    cures: ['stagger', 'teaser-foul'],
    distances: ['shotgun-inside', 'position-mismatch'],
    fixes: ['wave-band', 'method-mismatch', 'size-order', 'set-order', 'drag-over-class', 'drag-under-tow'],
    gear: ['hook-kind', 'clip-on-double', 'entry-angle', 'lift', 'inspection-due', 'method-mismatch'],
    judge: ['waiver-idle', 'event', 'unused'],
    lengths: ['leader-length', 'combined-length', 'double-length'],
    neighbours: ['stagger', 'lateral-gap', 'size-order', 'line-count', 'turn-tight', 'thin-inside-thick'],
    people: ['crew', 'angler-lines'],
    placing: ['stagger', 'hook-kind', 'waiver-idle'],
    settings: ['stagger', 'crew'],
    together: ['drag-over-class', 'turn-foul', 'stagger'],
    turning: ['turn-foul', 'turn-stall'],
    waivers: ['waiver-idle'],
    waves: ['wave-face', 'wave-band'],
    written: ['hook-count', 'hook-spacing', 'double-length', 'line-class', 'rod-length', 'wire-line'],
};

/** Which of the tests at a limit are about what is shared, */
const limited = {
    clips: ['strain', 'places'],
    fixes: ['hooks', 'strain'],
    gear: ['hooks', 'strain'],
    lengths: ['strain'],
    neighbours: ['places', 'meetings'],
    together: ['said-once'],
    turning: ['meetings'],
    waves: ['said-once'],
};

/** what every finding goes through, */
const judged = new Set('check judge memory placing rule settings severities together waivers'.split(' '));

/** what a team writes of a rule in its plan, */
const worded = new Set('registry settings severities'.split(' '));

/** and what the pages of the rules say. */
const printed = new Set('page registry rule-words settings standing text-codes written'.split(' '));

function sharedBy(root) {
    const files = readdirSync(join(root, rules)).filter((file) => /^[\w-]+\.ts$/.test(file));
    return files.map((file) => {
        const name = file.replace('.ts', '');
        const titles = [
            name,
            ...(worded.has(name) ? ['rule-words'] : []),
            ...(name === 'judge' ? ['finding'] : []),
        ];
        const own = testsIn(root, rules).filter((test) =>
            titles.some((each) => test.endsWith(`/${each}.test.ts`)),
        );
        return {
            name: `shared: ${name}`,
            mutate: [`${rules}/${file}`],
            tests: [
                ...own,
                ...(users[name] ?? []).map((rule) => `${rules}/${rule}/${rule}.test.ts`),
                ...testsIn(root, limits).filter((test) => limited[name]?.some((each) => test.includes(each))),
                ...(judged.has(name) ? [`${rules}/judge.test.ts`, `${rules}/giving-way.test.ts`] : []),
                ...(printed.has(name) ? [`${rules}/registry.test.ts`] : []),
            ].filter((test, index, all) => all.indexOf(test) === index),
        };
    });
}

/** The physics that the rules lean on, each file with the tests that are about it; no rule reads how a strike goes. */
const about = {
    climb: ['line'],
    remedy: ['sway'],
    sound: ['clip', 'towed', 'weakest-link', 'drag'],
    steps: ['turn/pairs'],
    'line-load': ['line'],
    root: ['line', 'root'],
    vector: ['vector', 'tow-points', 'segments', 'triangles'],
    'order/clearing': ['order/handling'],
    'order/crossing': ['order/handling'],
    'order/setting': ['order/handling'],
    'turn/manoeuvre': ['turn/course', 'turn/taut'],
    'turn/course': ['turn/manoeuvre', 'turn/pairs', 'turn/bounds', 'chain/model'],
    'turn/meeting': ['turn/pairs', 'turn/bounds'],
    'turn/model': ['turn/taut', 'turn/pairs'],
    'turn/passing': ['turn/pairs', 'turn/bounds'],
    'turn/sensitivity': ['turn/envelope'],
    'turn/swept': ['turn/pairs', 'turn/bounds'],
    'turn/tightest': ['turn/envelope', 'turn/bounds'],
    'turn/tractrix': ['turn/course', 'turn/taut'],
    'turn/trail': ['turn/course', 'turn/taut'],
    'turn/working': ['turn/envelope', 'turn/taut'],
    'chain/chain': ['chain/rest', 'chain/model'],
    'chain/fluid-load': ['chain/balance', 'chain/rest'],
    'chain/links': ['chain/balance', 'chain/rest'],
    'chain/lure-load': ['chain/balance', 'chain/rest'],
    'chain/motion': ['chain/balance', 'chain/rest', 'chain/turn'],
    'chain/rest': ['chain/model'],
    'chain/run': ['chain/turn', 'chain/model'],
    'chain/surface': ['chain/balance', 'chain/rest'],
};

function physicsOf(root) {
    const files = ['', 'order/', 'turn/', 'chain/', 'waves/'].flatMap((folder) =>
        readdirSync(join(root, physics, folder))
            .filter((file) => file.endsWith('.ts') && !/^(strike|constants)\.ts$/.test(file))
            .map((file) => folder + file.replace('.ts', '')),
    );
    return files.map((file) => {
        const titles = [file, ...(about[file] ?? [])];
        return {
            name: `physics: ${file}`,
            mutate: [`${physics}/${file}.ts`],
            tests: file.startsWith('waves/')
                ? testsOf(root, file)
                : titles.flatMap((title) => testsOf(root, title).filter((test) => isAbout(test, title))),
        };
    });
}

/** `sway.test.ts` and `sway-at-its-limits.test.ts` are about sway. */
function isAbout(file, name) {
    const title = file.split('/').at(-1).replace('.test.ts', '');
    return [name, name.split('/').at(-1)].some((each) => title === each || title.startsWith(`${each}-at-`));
}

/** The tests of physics in the folder of a file, */
function testsOf(root, title) {
    return testsIn(root, join('tests/physics', dirname(title)));
}

/** Those of a folder's tests that name a rule. */
function naming(root, folder, rule) {
    const said = new RegExp(`'[^']*\\b${rule}\\b[^']*: `);
    return testsIn(root, folder).filter((file) => said.test(readFileSync(join(root, file), 'utf8')));
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
    const all = [...rulesOf(root), ...sharedBy(root), ...physicsOf(root)].filter(
        ({ tests }) => tests.length > 0,
    );
    return words.length === 0 ? all : all.filter(({ name }) => words.some((word) => name.includes(word)));
}
