// Writes tabulated/table.ts: the grammar as a text without faults is read by it. Beside generated/, whose tool asks
// what to do about files that are not its own.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = import.meta.dirname;
const out = join(here, 'tabulated');
mkdirSync(out, { recursive: true });
const scratch = mkdtempSync(join(out, 'making-'));
try {
    const outfile = join(scratch, 'tabulated.mjs');
    await build({
        entryPoints: [join(here, '../src/plan/syntax/fluent/tabulated.ts')],
        outfile,
        bundle: true,
        platform: 'node',
        format: 'esm',
        target: 'node20.20',
        logLevel: 'warning',
    });
    const { tabulated } = await import(pathToFileURL(outfile).href);
    // As a text: the engine reads that faster than the same thing as code. Pure: a bundle that never reads by it, as the
    // server's, is built without it.
    const json = JSON.stringify(JSON.stringify(tabulated()));
    const module = [
        `import type { Table } from '../../src/plan/syntax/fluent/table.ts';`,
        `export const table: Table = /* @__PURE__ */ JSON.parse(${json});`,
    ];
    writeFileSync(join(out, 'table.ts'), `${module.join('\n\n')}\n`);
} finally {
    rmSync(scratch, { recursive: true, force: true });
}
