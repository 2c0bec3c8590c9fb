// How long the page is busy in a frame while a lure is dragged through the diagram, in a browser; the editor around it
// and the server answer as they do for users. No test decides anything by it.
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const outfile = fileURLToPath(new URL('../../node_modules/.cache/drag.mjs', import.meta.url));
await build({
    absWorkingDir: fileURLToPath(new URL('../..', import.meta.url)),
    entryPoints: ['tests/benchmark/drag.ts'],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
});
await import(outfile);
