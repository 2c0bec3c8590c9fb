import type { Reporter, TestModule } from 'vitest/node';

/**
 * Ends a run with `N passed, N failed` on a line of its own, which scripts and people can both read.
 * A file that could not be collected counts as one failure: it hides the tests that it holds.
 */
export default class ClosingLine implements Reporter {
    onTestRunEnd(modules: ReadonlyArray<TestModule>, unhandledErrors: ReadonlyArray<unknown>): void {
        let passed = 0;
        let failed = unhandledErrors.length;
        let skipped = 0;
        for (const module of modules) {
            const state = { passed: 0, failed: 0, skipped: 0, pending: 0 };
            for (const test of module.children.allTests()) state[test.result().state]++;
            passed += state.passed;
            failed += state.failed + state.pending;
            skipped += state.skipped;
            if (module.state() === 'failed' && state.failed === 0) failed++;
        }
        const line = `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
        // The default reporter writes its summary after this hook; the last word waits for it.
        process.once('exit', () => process.stdout.write(`${line}\n`));
    }
}
