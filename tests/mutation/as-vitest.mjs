import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import * as matchers from '@vitest/expect';

/** What the tests of rules and physics use of the test runner, in a form that can be run again. */
const tests = [];
let file;
let above = [];

/** @returns the tests of some files: what each is called, and what it does */
export async function collected(files) {
    tests.length = 0;
    for (const [path, load] of files) {
        file = path;
        await load();
    }
    return tests;
}

export const test = Object.assign(
    (name, ...more) => {
        const inside = { file, name: [...above, name].join(' › ') };
        if (inside.name.includes(process.env.MUTATION_WORD ?? '') || !shared(file))
            tests.push({ ...inside, id: `${file}#${tests.length}`, run: () => running(inside, more) });
    },
    { each: each((...args) => test(...args)), skip: () => undefined },
);

export const describe = Object.assign(
    (name, inside) => {
        above.push(name);
        inside();
        above = above.slice(0, -1);
    },
    { each: each((...args) => describe(...args)) },
);

/** Files with a test for every rule. */
const shared = (path) => /\bread-aloud\.|\bat-the-limit\//.test(path) || path.endsWith('registry.test.ts');

let current;

async function running(inside, more) {
    current = inside;
    await more.find((one) => typeof one === 'function')();
}

/** `%s` and `$name` in the title of a test that is run for each row. */
function each(declare) {
    return (table) =>
        (title, ...more) => {
            for (const row of table) {
                const given = Array.isArray(row) ? row : [row];
                let next = 0;
                const name = title
                    .replace(/%[sdifjo]/g, () => String(given[next++]))
                    .replace(/\$(\w+)/g, (_, key) => String(row?.[key]));
                declare(name, ...more.map((one) => (typeof one === 'function' ? () => one(...given) : one)));
            }
        };
}

const { chai } = matchers;
for (const plugin of [matchers.JestExtend, matchers.JestChaiExpect, matchers.JestAsymmetricMatchers])
    chai.use(plugin);
chai.use(({ Assertion }) => {
    Assertion.addMethod('toMatchFileSnapshot', function (path) {
        const whole = readFileSync(resolve(dirname(current.file), path), 'utf8');
        this.assert(this._obj === whole, 'differs from its file', 'is as in its file', whole, this._obj);
    });
});

export const expect = Object.assign(
    (value, message) => chai.expect(value, message),
    chai.expect,
    globalThis[matchers.ASYMMETRIC_MATCHERS_OBJECT],
);
Object.defineProperty(globalThis, matchers.GLOBAL_EXPECT, {
    value: expect,
    writable: true,
    configurable: true,
});
matchers.setState({ assertionCalls: 0, currentTestName: '' }, expect);
