import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vitest/config';

/** What the bundler does for these endings: the file's text is the module's value. */
export const textModules: Plugin = {
    name: 'text modules',
    enforce: 'pre',
    load(id) {
        if (!/\.(spread|md)$/.test(id)) return undefined;
        return `export default ${JSON.stringify(readFileSync(id, 'utf8'))};`;
    },
};

export default defineConfig({
    plugins: [textModules],
    test: {
        globalSetup: ['tests/command/built.ts'],
        // Two cores: one worker leaves the other free for the servers and browsers that tests start.
        maxWorkers: 2,
        reporters: ['default', './tests/closing-line.ts'],
        // Half of these start programs or settle long computations, on machines that may be busy with other things.
        testTimeout: 30_000,
        hookTimeout: 60_000,
        expect: { poll: { timeout: 15_000 } },
        projects: [
            {
                extends: true,
                test: {
                    name: 'house',
                    include: ['tests/**/*.test.ts', 'language/src/rules/**/*.test.ts'],
                    exclude: ['tests/workbench/**'],
                },
            },
            {
                // One browser at a time, and nothing beside it: what waits for a picture must not wait for a prover.
                extends: true,
                test: {
                    name: 'workbench',
                    include: ['tests/workbench/**/*.test.ts'],
                    fileParallelism: false,
                    sequence: { groupOrder: 1 },
                },
            },
        ],
    },
});
