import { defineConfig } from 'vitest/config';

export default defineConfig({
    test: {
        include: ['tests/**/*.test.ts', 'language/src/rules/**/*.test.ts'],
        // Two cores: one worker leaves the other free for the servers and browsers that tests start.
        maxWorkers: 2,
        reporters: ['default', './tests/closing-line.ts'],
    },
});
