import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vitest/config';

/** What the bundler does for these endings: the file's text is the module's value. */
const textModules: Plugin = {
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
        include: ['tests/**/*.test.ts', 'language/src/rules/**/*.test.ts'],
        globalSetup: ['tests/command/built.ts'],
        // Two cores: one worker leaves the other free for the servers and browsers that tests start.
        maxWorkers: 2,
        reporters: ['default', './tests/closing-line.ts'],
    },
});
