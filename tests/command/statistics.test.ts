import { describe, expect, test } from 'vitest';
import { noColours } from '../../language/src/reports/ink.ts';
import { statisticsJson, statisticsOf, statisticsTable } from '../../language/src/reports/statistics.ts';
import { folderOf, layback, misspelt } from './layback.ts';
import { fileOf, finding, runOf } from './report-example.ts';

const fix = { title: 'Mend it', edits: [] };
const a = fileOf('a.spread', 'one two', (file) => [
    finding(file, 'one', { rule: 'wash', severity: 'hint' }),
    finding(file, 'two', { rule: 'stagger', fixes: [fix] }),
]);
const b = fileOf('b.spread', 'one two', (file) => [
    finding(file, 'one', { rule: 'stagger', severity: 'error' }),
    finding(file, 'two', { rule: 'stagger' }),
]);
const run = runOf([a, b, fileOf('c.spread', 'c')]);

test('how often each rule spoke, how gravely, in how many files, and how much a quick fix mends', () => {
    expect(statisticsOf(run)).toEqual([
        { rule: 'stagger', errors: 1, warnings: 2, hints: 0, files: 2, mendable: 1 },
        { rule: 'wash', errors: 0, warnings: 0, hints: 1, files: 1, mendable: 0 },
    ]);
});

test('as a table that sums up', async () => {
    expect(await statisticsTable(run, noColours)).toBe(
        [
            'rule     errors  warnings  hints  files  quick fixes',
            'stagger       1         2      0      2            1',
            'wash          0         0      1      1            0',
            'all           1         2      1      2            1',
            '',
        ].join('\n'),
    );
    expect(await statisticsTable(runOf([]), noColours)).toBe('Nothing found.\n');
});

test('as JSON', () => {
    expect(JSON.parse(statisticsJson(run, '9.9.9'))).toMatchObject({
        format: 'layback-statistics',
        version: 1,
        files: 3,
        rules: [{ rule: 'stagger' }, { rule: 'wash' }],
    });
});

const unhelped =
    'spread friday {\n    crew 0\n    rule incomplete { severity off }\n    rule crew { lines 0.5 }\n    shotgun { }\n}\n';
const check = (cwd: string, ...args: string[]) => layback(['check', ...args], { cwd });

describe('layback check', () => {
    test('--statistics ends as the check would', () => {
        const folder = folderOf({ 'a.spread': unhelped, 'b.spread': misspelt });
        const { status, stdout } = check(folder, '--statistics');
        expect(status).toBe(1);
        expect(stdout).toMatch(/^crew +0 +1 +0 +1 +0$/m);
        expect(stdout).toMatch(/^unknown-word +1 +0 +0 +1 +1$/m);
        expect(stdout).toMatch(/^all +1 +1 +0 +2 +1$/m);
        expect(check(folder, '--statistics', '--fail-on', 'never').status).toBe(0);
        expect(JSON.parse(check(folder, '--statistics', '-f', 'json').stdout).rules).toHaveLength(2);
        expect(check(folder, '--statistics', '-f', 'sarif')).toMatchObject({ status: 2, stdout: '' });
    });

    test('--rule leaves only what that rule finds, and ends by it', () => {
        const folder = folderOf({ 'a.spread': unhelped, 'b.spread': misspelt });
        const one = check(folder, '--rule', 'crew');
        expect(one.status).toBe(1);
        expect(one.stdout).toContain('crew');
        expect(one.stdout).not.toContain('unknown-word');
        expect(check(folder, '--rule', 'stagger')).toMatchObject({ status: 0 });
        const both = check(folder, '--rule', 'crew', '--rule', 'unknown-word', '--statistics').stdout;
        expect(both).toMatch(/^all +1 +1 +0 +2 +1$/m);
    });

    test('--rule knows its rules, and what a slip in a name means', () => {
        const { status, stdout, stderr } = check(folderOf({ 'a.spread': '' }), '--rule', 'stager');
        expect({ status, stdout, stderr }).toEqual({
            status: 2,
            stdout: '',
            stderr: 'layback: There is no rule stager. Did you mean stagger?\n',
        });
    });
});

describe('layback explain', () => {
    test.each(['quantity', 'unknown-name', 'baseline-stale'])('has a page for the code %s too', (code) => {
        const { status, stdout } = layback(['explain', code]);
        expect(status).toBe(0);
        expect(stdout).toMatch(new RegExp(`^${code}\n`));
        for (const part of ['Why', 'What to do']) expect(stdout).toContain(`\n${part}\n`);
    });
});
