import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { baselineOf, readBaseline, sift } from '../../language/src/reports/baseline.ts';
import type { Checked } from '../../language/src/reports/checked.ts';
import { folderOf, layback, misspelt } from './layback.ts';
import { fileOf, finding, runOf } from './report-example.ts';

/** A plan with two lines for no hands, of which the crew knows. */
const short = (speed: string, more = '') => `spread friday {
    speed ${speed}
    crew 0
    rule crew { lines 1 }
    rule incomplete { severity off }
    shotgun { }
    port short corner { }
    ${more}
}
`;
const check = (cwd: string, ...args: string[]) => layback(['check', ...args], { cwd });

describe('layback check --write-baseline, then --baseline', () => {
    test('what was found before is not said again, wherever it stands and whatever its numbers', () => {
        const folder = folderOf({ 'plans/a.spread': short('8 kn') });
        expect(check(folder).status).toBe(1);
        const written = check(folder, '--write-baseline');
        expect(written).toMatchObject({ status: 0, stdout: '' });
        expect(written.stderr).toBe('layback-baseline.json: 1 known finding written down.\n');
        writeFileSync(
            join(folder, 'plans/a.spread'),
            `\n// moved\n${short('7 kn').replace('shotgun { }', 'shotgun { }\n    port long corner { }')}`,
        );
        const { status, stdout } = check(folder, '--baseline', 'layback-baseline.json');
        // Three lines now: another line is another finding.
        expect(status).toBe(1);
        expect(stdout).toContain('3 lines for one who is out alone');
        writeFileSync(join(folder, 'plans/a.spread'), `\n// moved\n${short('7 kn')}`);
        expect(check(folder, '--baseline', 'layback-baseline.json')).toMatchObject({
            status: 0,
            stdout: '1 file checked, nothing found.\n',
        });
    });

    test('what was mended is said once, and is gone when the baseline is written anew', () => {
        const folder = folderOf({ 'a.spread': short('8 kn') });
        check(folder, '--write-baseline', '--baseline', 'known.json');
        writeFileSync(join(folder, 'a.spread'), short('8 kn').replace('crew 0', 'crew 2'));
        const { status, stdout } = check(folder, '--baseline', 'known.json');
        expect(status).toBe(1);
        expect(stdout).toContain(
            'The baseline still holds crew at shotgun and port short corner in friday, and it is gone.',
        );
        expect(stdout).toContain('baseline-stale');
        expect(check(folder, '--write-baseline', '--baseline', 'known.json').stderr).toBe(
            'known.json: 0 known findings written down.\n',
        );
        expect(check(folder, '--baseline', 'known.json').status).toBe(0);
    });

    test('paths are from the baseline’s folder, wherever the check is run', () => {
        const folder = folderOf({ 'team/plans/a.spread': short('8 kn') });
        check(folder, '--write-baseline', '--baseline', 'team/known.json');
        expect(JSON.parse(readFileSync(join(folder, 'team/known.json'), 'utf8')).findings).toEqual([
            {
                rule: 'crew',
                path: 'plans/a.spread',
                plan: 'friday',
                positions: ['shotgun', 'port short corner'],
                severity: 'warning',
            },
        ]);
        expect(check(join(folder, 'team/plans'), '--baseline', '../known.json').status).toBe(0);
    });

    test('what has become graver is said, though it was known as something milder', () => {
        const over = (drag: string) => `lure bell "Bell" pusher { length 330 mm }
outfit own "Own" { line nylon { class 37 kg }  drag { set 4 kg  hooked ${drag} } }
spread friday { port short corner { outfit own  lure bell  back 12 m } }
`;
        const folder = folderOf({ 'a.spread': over('13 kg') });
        expect(check(folder, '--rule', 'drag-over-class').stdout).toContain('warning drag-over-class');
        check(folder, '--write-baseline');
        const known = () =>
            check(folder, '--baseline', 'layback-baseline.json', '--rule', 'drag-over-class').stdout;
        expect(known()).toContain('nothing found');
        writeFileSync(join(folder, 'a.spread'), over('14 kg'));
        expect(known()).toContain('nothing found');
        writeFileSync(join(folder, 'a.spread'), over('38 kg'));
        expect(known()).toContain('error drag-over-class');
    });

    test('what is known of a file that is gone is said at the baseline, and gone when it is written anew', () => {
        const folder = folderOf({ 'a.spread': short('8 kn'), 'b.spread': short('8 kn') });
        check(folder, '--write-baseline');
        renameSync(join(folder, 'b.spread'), join(folder, 'c.spread'));
        const { status, stdout } = check(folder, '--baseline', 'layback-baseline.json', 'a.spread');
        expect(status).toBe(1);
        expect(stdout).toMatch(/^layback-baseline\.json\n {2}\d+:\d+ warning baseline-stale/m);
        expect(stdout).toContain('The baseline still holds 1 finding in b.spread, and that file is gone.');
        expect(stdout).toContain('"path": "b.spread"');
        expect(check(folder, '--write-baseline').stderr).toContain('2 known findings');
        expect(check(folder, '--baseline', 'layback-baseline.json').status).toBe(0);
    });

    test('a fault of the text is never known: it has to be mended', () => {
        const folder = folderOf({ 'b.spread': misspelt });
        expect(check(folder, '--write-baseline').stderr).toContain('1 fault in the text itself was left out');
        expect(check(folder, '--baseline', 'layback-baseline.json').status).toBe(1);
    });

    test('writing it for some files keeps what is known of the others', () => {
        const folder = folderOf({ 'a.spread': short('8 kn'), 'b.spread': short('8 kn') });
        check(folder, '--write-baseline');
        expect(check(folder, '--write-baseline', 'a.spread').stderr).toContain('2 known findings');
    });

    test.each([
        ['nothing there', undefined, 'known.json is not there. layback check --write-baseline makes one.'],
        ['no JSON', '{', 'known.json is no JSON.'],
        ['something else', '{}', 'known.json is no baseline.'],
        ['of a later tool', '{"format":"layback-baseline","version":2}', 'and this tool reads 1.'],
        [
            'with odd entries',
            '{"format":"layback-baseline","version":1,"findings":[{"rule":1}]}',
            'holds entries that are none.',
        ],
    ])('refuses a baseline that is not one: %s', (_, text, reason) => {
        const folder = folderOf({ 'a.spread': short('8 kn'), ...(text && { 'known.json': text }) });
        const { status, stdout, stderr } = check(folder, '--baseline', 'known.json');
        expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
        expect(stderr).toContain(reason);
        // Nor is it written over: it may be somebody's.
        if (text) {
            expect(check(folder, '--write-baseline', '--baseline', 'known.json').status).toBe(2);
            expect(readFileSync(join(folder, 'known.json'), 'utf8')).toBe(text);
        }
    });

    test.each([['--rule', 'crew'], ['--watch'], ['--stdin']])(
        'writes down all that is found in files, so not with %s',
        (...more) => {
            const { status, stderr } = check(folderOf({ 'a.spread': '' }), '--write-baseline', ...more);
            expect({ status, stderr }).toEqual({
                status: 2,
                stderr: 'layback: --write-baseline writes down all that is found in files: leave the rest out.\n',
            });
        },
    );
});

describe('a baseline', () => {
    const path = (uri: string) => uri.replace('file:///team/', '');
    const all = () => true;
    const twice = fileOf('a.spread', 'one two three', (file) => [
        finding(file, 'one', { plan: 'p', positions: ['shotgun'] }),
        finding(file, 'two', { plan: 'p', positions: ['shotgun'] }),
    ]);

    test('counts what is alike: one more of it is new, one fewer is gone', () => {
        const baseline = baselineOf(runOf([twice]), path, all);
        expect(baseline.findings).toEqual([
            {
                rule: 'stagger',
                path: 'a.spread',
                plan: 'p',
                positions: ['shotgun'],
                severity: 'warning',
                times: 2,
            },
        ]);
        const found = (file: Checked) => sift(runOf([file]), baseline, path).files[0]!.findings;
        expect(found(twice)).toEqual([]);
        const third = finding(twice, 'three', { plan: 'p', positions: ['shotgun'] });
        expect(found({ ...twice, findings: [...twice.findings, third] })).toEqual([third]);
        expect(found({ ...twice, findings: twice.findings.slice(1) }).map(({ rule }) => rule)).toEqual([
            'baseline-stale',
        ]);
    });

    test('says nothing of files that were not looked at', () => {
        const baseline = baselineOf(runOf([twice]), path, all);
        const other = fileOf('b.spread', 'b');
        expect(sift(runOf([other]), baseline, path).files[0]!.findings).toEqual([]);
    });

    test('reads back as it was written, the same text for the same findings', () => {
        const baseline = baselineOf(runOf([twice, fileOf('b.spread', 'b')]), path, all);
        expect(readBaseline(JSON.stringify(baseline))).toEqual(baseline);
        expect(baselineOf(runOf([fileOf('b.spread', 'b'), twice]), path, all)).toEqual(baseline);
    });
});
