import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

// In a browser each is fetched before anything is seen. A kB is 1,000 bytes here, the stricter reading.
test.each([
    ['server-node.cjs', 260],
    ['server-browser.js', 260],
    ['preview.js', 120],
])('%s has at most %d kB gzipped', (name, most) => {
    const bundle = readFileSync(join(import.meta.dirname, '../../dist', name));
    expect(gzipSync(bundle, { level: 9 }).length).toBeLessThanOrEqual(most * 1000);
});
