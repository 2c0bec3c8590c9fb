/** One part of what `run.mjs` goes through; it says which files are changed and which tests are to notice. */
export default {
    testRunner: 'one-process',
    plugins: ['./tests/mutation/one-process.mjs'],
    coverageAnalysis: 'perTest',
    // The data of a rule (its name, its summary, its settings) is read once, while it loads; `registry.test.ts` holds
    // every one of them to the page and the index that show it.
    ignoreStatic: process.env.MUTATION_STATIC === undefined,
    ignorePatterns: [
        '*',
        '!language',
        '!language/**',
        '!tests',
        'tests/*',
        ...['language', 'rules', 'physics', 'fixtures', 'mutation'].flatMap((name) => [
            `!tests/${name}`,
            `!tests/${name}/**`,
        ]),
    ],
    tempDirName: 'artefacts/mutation/sandbox',
    concurrency: Number(process.env.MUTATION_CONCURRENCY ?? 1),
    // Every text that a test checks stays with the services that read it.
    maxTestRunnerReuse: 150,
    // A solver that goes on for ever is found out sooner than a parser that has much to read.
    timeoutMS: process.env.MUTATION_TESTS?.includes('tests/physics') ? 3_000 : 10_000,
    // Nothing here is compiled, and the compiler in use has no programming interface to read its settings with.
    tsconfigFile: 'none',
    warnings: { slow: false },
    reporters: ['json'],
    jsonReporter: { fileName: process.env.MUTATION_REPORT ?? 'artefacts/mutation/report.json' },
    thresholds: { high: 95, low: 90, break: null },
};
