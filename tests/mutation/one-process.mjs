import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { determineHitLimitReached, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { build } from 'esbuild';

/*
 * Runs the tests of one part again and again inside one process: the parser is built once, and a change is switched
 * on where it stands. A thousand changes take minutes so, and hours where every one of them loads everything anew.
 */
export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'one-process', runner)];

function runner() {
    globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {};
    const switches = globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE];
    let bundle;
    let tests;
    let loaded = 0;

    return {
        capabilities: () => ({ reloadEnvironment: true }),
        async init() {
            bundle = await bundled();
        },
        async dryRun() {
            switches.mutantCoverage = { static: {}, perTest: {} };
            await load();
            // Whatever comes first builds the parser as well.
            if (tests[0]) await ran(tests[0]);
            const short = [];
            const { perTest } = switches.mutantCoverage;
            for (const test of tests) {
                const before = process.cpuUsage();
                const result = await ran(test);
                const { user, system } = process.cpuUsage(before);
                // What takes long would take hours for all changes, and what fails untouched (a bound on time, on a
                // machine that has other things to do) tells nothing: without them the score is a lower bound.
                const isQuick = result.status !== FAILED && user + system < LONGEST;
                if (perTest[test.id] && isQuick) short.push(test);
                else delete perTest[test.id];
            }
            const mutantCoverage = structuredClone(switches.mutantCoverage);
            // What passes once and fails when it is run again would be taken for having noticed a change.
            const results = [];
            for (const test of short) {
                const again = await ran(test);
                if (again.status !== FAILED) results.push(again);
                else delete mutantCoverage.perTest[test.id];
            }
            // A file of nothing but data has no change that a test could be asked about.
            if (results.length === 0 && tests[0]) results.push(await ran(tests[0]));
            switches.currentTestId = undefined;
            return { status: 'complete', tests: results, mutantCoverage };
        },
        async mutantRun({ activeMutant, testFilter, hitLimit, mutantActivation }) {
            switches.hitCount = hitLimit === undefined ? undefined : 0;
            switches.hitLimit = hitLimit;
            // What runs while a module loads is changed only by loading it again.
            const anew = mutantActivation === 'static';
            if (anew) {
                switches.activeMutant = activeMutant.id;
                const failure = await load().catch((error) => error);
                if (failure) return toMutantRunResult({ status: 'error', errorMessage: String(failure) });
            } else if (!tests) {
                switches.activeMutant = undefined;
                await load();
            }
            switches.activeMutant = activeMutant.id;
            const results = [];
            for (const test of tests.filter(({ id }) => !testFilter || testFilter.includes(id))) {
                results.push(await ran(test));
                if (results.at(-1).status === FAILED) break;
            }
            switches.activeMutant = undefined;
            if (anew) tests = undefined;
            const stopped = determineHitLimitReached(switches.hitCount, switches.hitLimit);
            return toMutantRunResult(stopped ?? { status: 'complete', tests: results });
        },
    };

    async function load() {
        const { collect } = await import(`${pathToFileURL(bundle)}?${++loaded}`);
        tests = await collect();
    }

    async function ran({ id, name, file, run }) {
        switches.currentTestId = id;
        const before = performance.now();
        const result = { id, name, fileName: file, status: 0 };
        try {
            await run();
        } catch (error) {
            Object.assign(result, { status: FAILED, failureMessage: String(error?.stack ?? error) });
        }
        return { ...result, timeSpentMs: performance.now() - before };
    }
}

const FAILED = 1;

/** Microseconds of computing that a test may take, the first time. */
const LONGEST = 1e6 * (process.env.MUTATION_TESTS?.includes('tests/physics') ? 1 : 0.7);

/** The tests that are asked for, as one module. */
async function bundled() {
    const root = process.cwd();
    const files = process.env.MUTATION_TESTS.split(' ');
    const outfile = join(root, 'mutation-bundle', `${process.env.STRYKER_MUTATOR_WORKER ?? 0}.mjs`);
    await mkdir(join(root, 'mutation-bundle'), { recursive: true });
    const parts = files.map(
        (file) => `[${JSON.stringify(file)}, () => import(${JSON.stringify(`./${file}`)})]`,
    );
    await build({
        stdin: {
            contents: `import { collected } from 'vitest';\nexport const collect = () => collected([${parts.join(', ')}]);`,
            resolveDir: root,
        },
        outfile,
        bundle: true,
        format: 'esm',
        platform: 'node',
        target: 'node20',
        packages: 'external',
        logLevel: 'silent',
        loader: { '.spread': 'text', '.md': 'text' },
        plugins: [
            {
                name: 'as if each file still stood alone',
                setup({ onLoad, onResolve }) {
                    onResolve({ filter: /^(vitest|fast-check)$/ }, ({ path, importer }) =>
                        importer.endsWith('.mjs')
                            ? undefined
                            : { path: join(import.meta.dirname, `as-${path}.mjs`) },
                    );
                    onLoad({ filter: /\.ts$/ }, ({ path }) => ({
                        contents: readFileSync(path, 'utf8').replaceAll(
                            'import.meta.url',
                            JSON.stringify(pathToFileURL(path).href),
                        ),
                        loader: 'ts',
                    }));
                },
            },
        ],
    });
    return outfile;
}
