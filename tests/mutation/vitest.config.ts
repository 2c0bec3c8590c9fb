import { defineConfig } from 'vitest/config';
import { textModules } from '../../vitest.config.ts';

const asked = process.env.MUTATION_TESTS?.split(' ') ?? ['language/src/rules/**/*.test.ts'];

/** The tests that hold one part, and no others: each is run again for every change that it might notice. */
export default defineConfig({
    plugins: [textModules],
    test: {
        include: asked,
        // Two of these at once, beside whatever else the machine does.
        testTimeout: 60_000,
        // Reads the text of the rules, which is another one while it is being changed.
        exclude: ['language/src/rules/sources.test.ts'],
    },
});
