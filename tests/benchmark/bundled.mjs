import { join } from 'node:path';
import { build } from 'esbuild';

/** Bundles a file of this folder as what ships is bundled, so that it can be measured beside it. */
export async function bundled(name, outfile) {
    const isModule = outfile.endsWith('.mjs');
    await build({
        entryPoints: [join(import.meta.dirname, name)],
        outfile,
        bundle: true,
        minify: true,
        platform: 'node',
        format: isModule ? 'esm' : 'cjs',
        target: 'node20.20',
        loader: { '.spread': 'text', '.md': 'text' },
        // Some of the packages underneath ask for the machine's own modules in the old way.
        ...(isModule && {
            banner: {
                js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
            },
        }),
        logLevel: 'error',
    });
    return outfile;
}
