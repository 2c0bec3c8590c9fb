// Runs the workbench server on plain Node, which does not read TypeScript: bundled first, then started.
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

await build({
    absWorkingDir: fileURLToPath(new URL('../..', import.meta.url)),
    entryPoints: ['tests/workbench/serve.ts'],
    outfile: 'node_modules/.cache/workbench.mjs',
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
});
await import('../../node_modules/.cache/workbench.mjs');
