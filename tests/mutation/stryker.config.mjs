/** One part of what `run.mjs` goes through; it says which files are changed and which tests are to notice. */
export default {
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
    coverageAnalysis: 'perTest',
    ignorePatterns: [
        'dist',
        'artefacts',
        'extension',
        'examples',
        'tests/workbench',
        'tests/benchmark',
        'tests/command',
        '*.vsix',
    ],
    tempDirName: 'artefacts/mutation/sandbox',
    concurrency: Number(process.env.MUTATION_CONCURRENCY ?? 2),
    timeoutMS: 20_000,
    // Nothing here is compiled, and the compiler in use has no programming interface to read its settings with.
    tsconfigFile: 'none',
    warnings: { slow: false },
    reporters: ['json'],
    jsonReporter: { fileName: process.env.MUTATION_REPORT ?? 'artefacts/mutation/report.json' },
    thresholds: { high: 95, low: 90, break: null },
};
