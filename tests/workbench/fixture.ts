import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { project } from './project.ts';

/** The small extension that the driver is tried on; with other words in its manifest if given. */
export function fixture(manifest?: Readonly<Record<string, unknown>>): { folder: string } {
    const folder = path.join(project, 'tests/workbench/fixtures/extension');
    if (!manifest) return { folder };
    const changed = mkdtempSync(path.join(tmpdir(), 'extension-'));
    onTestFinished(() => rmSync(changed, { recursive: true }));
    cpSync(folder, changed, { recursive: true });
    const file = path.join(changed, 'package.json');
    writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), ...manifest }));
    return { folder: changed };
}
