import { pathToFileURL } from 'node:url';
import { version } from '../../../package.json';
import type { Run } from '../reports/checked.ts';
import { sarifReport } from '../reports/sarif.ts';
import { ruleEntries } from './rule-entries.ts';

export function sarif(run: Run, cwd: string): string {
    const root = pathToFileURL(cwd).href;
    return sarifReport(run, { version, rules: ruleEntries(), root: root.endsWith('/') ? root : `${root}/` });
}
