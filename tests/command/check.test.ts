import { chmodSync, mkdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderOf, layback, misspelt, sound } from './layback.ts';

const check = (cwd: string, ...args: string[]) => layback(['check', ...args], { cwd });
const paths = (stdout: string) => JSON.parse(stdout).files.map((file: { path: string }) => file.path);

describe('how it ends', () => {
    test('0 where nothing was found, 1 where something was, 2 where it could not look', () => {
        const folder = folderOf({ 'a.spread': sound, 'b.spread': misspelt });
        expect(check(folder, 'a.spread')).toEqual({
            status: 0,
            stdout: '1 file checked, nothing found.\n',
            stderr: '',
        });
        expect(check(folder, 'b.spread').status).toBe(1);
        expect(check(folder, 'c.spread').status).toBe(2);
    });

    test.each([
        ['error', 0],
        ['warning', 1],
        ['hint', 1],
        ['never', 0],
    ])('a warning counts from --fail-on warning on (%s)', (threshold, status) => {
        const warning = 'use "a.spread"\nboat heron {\n    length 9.8 m\n}\n';
        const folder = folderOf({ 'a.spread': warning });
        const { stdout } = check(folder, '-f', 'json', '--fail-on', 'never');
        expect(JSON.parse(stdout).summary).toMatchObject({ errors: 0, warnings: 1, hints: 0 });
        expect(check(folder, '--fail-on', threshold).status).toBe(status);
    });

    test('a file that cannot be read does not keep the others from being checked', () => {
        const folder = folderOf({ 'b.spread': misspelt });
        const { status, stdout, stderr } = check(folder, 'a.spread', 'b.spread');
        expect(status).toBe(2);
        expect(stdout).toContain('b.spread\n  2:5 error unknown-word');
        expect(stderr).toBe('layback: a.spread is not there. Did you mean b.spread?\n');
    });

    test('quiet leaves only what makes it end with 1', () => {
        const folder = folderOf({ 'a.spread': sound, 'b.spread': misspelt });
        expect(check(folder, '-q', 'a.spread').stdout).toBe('');
        const { stdout } = check(folder, '-q', '--fail-on', 'never');
        expect(stdout).toBe('');
        expect(check(folder, '-q').stdout).not.toContain(' in 1 of ');
    });
});

describe('what goes where', () => {
    test.each(['text', 'lines', 'json', 'sarif', 'github'])(
        '%s: what was found to stdout, what could not be done to stderr',
        (format) => {
            const folder = folderOf({ 'b.spread': misspelt });
            const { stdout, stderr } = check(folder, '-f', format, 'b.spread', 'c.spread');
            expect(stdout).toContain('unknown-word');
            expect(stderr).toMatch(/^layback: c\.spread is not there\..*\n$/);
            if (format === 'json' || format === 'sarif') expect(() => JSON.parse(stdout)).not.toThrow();
        },
    );

    test('colours only where asked: never by themselves in a pipe, and NO_COLOR wins', () => {
        const folder = folderOf({ 'b.spread': misspelt });
        const run = (env: Record<string, string>) => layback(['check'], { cwd: folder, env }).stdout;
        expect(run({})).not.toContain('\x1b');
        expect(run({ FORCE_COLOR: '1' })).toContain('\x1b[31merror');
        expect(run({ FORCE_COLOR: '1', NO_COLOR: '1' })).not.toContain('\x1b');
    });

    test('a finding stands where the text is, in every format the same', () => {
        const folder = folderOf({ 'plans/b.spread': `// 🐟 é\n${misspelt}` });
        const [file] = JSON.parse(check(folder, '-f', 'json').stdout).files;
        expect(file.findings[0].at).toEqual({
            path: 'plans/b.spread',
            start: { line: 3, column: 5, offset: 25 },
            end: { line: 3, column: 11, offset: 31 },
        });
        const { results } = JSON.parse(check(folder, '-f', 'sarif').stdout).runs[0];
        expect(results[0].locations[0].physicalLocation).toEqual({
            artifactLocation: { uri: 'plans/b.spread', uriBaseId: '%SRCROOT%' },
            region: { startLine: 3, startColumn: 5, endLine: 3, endColumn: 11 },
        });
        expect(check(folder, '-f', 'github').stdout).toContain(
            'file=plans/b.spread,line=3,endLine=3,col=5,endColumn=11::',
        );
        expect(check(folder, '-f', 'lines').stdout).toMatch(
            /^plans\/b\.spread:3:5: error unknown-word: .*\n$/,
        );
    });

    test('SARIF lists every rule with its page', () => {
        const folder = folderOf({ 'a.spread': sound });
        const { rules } = JSON.parse(check(folder, '-f', 'sarif').stdout).runs[0].tool.driver;
        const stagger = rules.find((rule: { id: string }) => rule.id === 'stagger');
        expect(stagger.help.markdown).toContain('## Why');
        expect(stagger.properties.standing).toMatch(/^Physics/);
    });
});

describe('which files', () => {
    const names = (cwd: string, ...args: string[]) => paths(check(cwd, '-f', 'json', ...args).stdout);

    test('a folder means every .spread file below it, by name, the same each time', () => {
        const folder = folderOf({
            'z.spread': sound,
            'a.spread': sound,
            'b/c.spread': sound,
            'b/a/x.spread': sound,
            'B.spread': sound,
            'notes.txt': 'no plan',
            'node_modules/x.spread': misspelt,
            '.git/x.spread': misspelt,
            'b/.hidden/x.spread': misspelt,
        });
        const expected = ['B.spread', 'a.spread', 'z.spread', 'b/c.spread', 'b/a/x.spread'];
        expect(names(folder)).toEqual(expected);
        expect(names(folder, '.')).toEqual(expected);
        expect(names(folder, 'b', 'a.spread', 'b')).toEqual(['b/c.spread', 'b/a/x.spread', 'a.spread']);
        expect(names(folder, '.git')).toEqual(['.git/x.spread']);
    });

    test('links that lead back up end there, and a file reached twice counts once', () => {
        const folder = folderOf({ 'a.spread': sound, 'sub/b.spread': sound });
        symlinkSync('..', join(folder, 'sub/up'));
        symlinkSync('sub', join(folder, 'twice'));
        symlinkSync('a.spread', join(folder, 'z.spread'));
        symlinkSync('nowhere.spread', join(folder, 'dangling.spread'));
        expect(names(folder)).toEqual(['a.spread', 'sub/b.spread']);
    });

    test('a file elsewhere is reported by its way from here', () => {
        const folder = folderOf({ 'a/x.spread': sound, 'b/y.spread': misspelt });
        expect(names(join(folder, 'a'), '../b/y.spread')).toEqual(['../b/y.spread']);
    });

    test.each([
        ['nothing.spread', 'nothing.spread is not there.'],
        ['notes.txt', 'notes.txt does not end in .spread, so it is not taken for a plan.'],
        ['ring.spread', 'ring.spread is a link that leads back to itself.'],
        ['dangling.spread', 'dangling.spread is a link that leads nowhere.'],
        ['latin1.spread', 'latin1.spread is not UTF-8: line 2 holds other bytes; save it as UTF-8.'],
        ['utf16.spread', 'utf16.spread is written in UTF-16; save it as UTF-8.'],
        ['binary.spread', 'binary.spread is not text: it holds zero bytes.'],
        [`${'x'.repeat(10_000)}.spread`, 'has a longer name than this system allows.'],
        ['notes.txt/a.spread', 'notes.txt/a.spread is not there.'],
        ['bin', 'There is no .spread file in bin or below. layback new <folder> starts one.'],
    ])('what cannot be looked at is named with its reason: %s', (path, reason) => {
        const folder = folderOf({
            'notes.txt': 'no plan',
            'latin1.spread': Buffer.from('// one\nboat z\xe9ro { }', 'latin1'),
            'utf16.spread': Buffer.from('\ufeffboat a { }', 'utf16le'),
            'binary.spread': Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0, 0, 1]),
        });
        mkdirSync(join(folder, 'bin'));
        symlinkSync('ring.spread', join(folder, 'ring.spread'));
        symlinkSync('gone.spread', join(folder, 'dangling.spread'));
        const { status, stdout, stderr } = check(folder, path);
        expect(status).toBe(2);
        expect(stdout).toBe('');
        expect(stderr).toMatch(/^layback: .*\n$/);
        expect(stderr).toContain(reason);
    });

    test.skipIf(process.getuid?.() === 0)('a file that may not be read', () => {
        const folder = folderOf({ 'a.spread': sound });
        chmodSync(join(folder, 'a.spread'), 0);
        expect(check(folder, 'a.spread').stderr).toContain('may not be read');
    });

    test('a file over 2 MB is a finding about that file, and what uses it says why', () => {
        const folder = folderOf({
            'big.spread': `//${'x'.repeat(2_000_000)}`,
            'a.spread': 'use "big.spread"\n',
        });
        const { status, stdout } = check(folder);
        expect(status).toBe(1);
        expect(stdout).toContain(
            '1:1 error file-size\n    The file has 2.0 MB, and no plan over 2 MB is read.',
        );
        expect(stdout).toContain('a.spread\n  1:5 error use\n    `big.spread` has 2.0 MB');
    });
});

describe('the standard input', () => {
    const files = { 'boat.spread': sound, 'plans/x.spread': misspelt };
    const draft = 'use "../boat.spread"\nboat other like heron {\n    beam 3 m\n}\n';

    test('is checked as if it stood at its path, so that its use lines lead somewhere', () => {
        const folder = folderOf(files);
        const at = (path: string) =>
            layback(['check', '--stdin', '--stdin-path', path, '-f', 'json'], { cwd: folder, input: draft });
        expect(at('plans/x.spread').status).toBe(0);
        expect(paths(at('plans/x.spread').stdout)).toEqual(['plans/x.spread']);
        expect(at('plans/deeper/x.spread').status).toBe(1);
    });

    test('needs no path, and takes no others beside it', () => {
        expect(layback(['check', '--stdin'], { input: misspelt }).stdout).toContain(
            'stdin.spread\n  2:5 error',
        );
        expect(layback(['check', '--stdin', 'a.spread'], { input: sound })).toMatchObject({
            status: 2,
            stderr: 'layback: Either paths or --stdin, not both.\n',
        });
        expect(layback(['check', '--stdin-path', 'a.spread']).status).toBe(2);
    });

    test('is refused where it is no text', () => {
        const { status, stderr } = layback(['check', '--stdin'], {
            input: Buffer.from([0xff, 0xfe, 0x41, 0]),
        });
        expect(status).toBe(2);
        expect(stderr).toBe('layback: stdin.spread is written in UTF-16; save it as UTF-8.\n');
    });
});

describe('what a use line may reach', () => {
    test('inside a repository nothing outside of it, through links neither', () => {
        const folder = folderOf({
            'secret.spread': 'boat secret {\n    length 9 m\n}\n',
            'team/.git/HEAD': '',
            'team/plans/a.spread': 'use "../../secret.spread"\nuse "link.spread"\n',
        });
        symlinkSync('../../secret.spread', join(folder, 'team/plans/link.spread'));
        const { status, stdout } = check(join(folder, 'team'), '-f', 'json', 'plans/a.spread');
        expect(status).toBe(1);
        const { findings } = JSON.parse(stdout).files[0];
        expect(findings.map((one: { rule: string }) => one.rule)).toEqual(['use', 'use']);
        expect(findings[0].what).toBe('`../../secret.spread` lies outside the folder `team`.');
        expect(findings[1].what).toBe('`link.spread` is a link that leads out of the folder `team`.');
        expect(stdout).not.toContain('boat secret');
    });

    test('from a folder below, the rest of the repository', () => {
        const folder = folderOf({
            '.git/HEAD': '',
            'boat.spread': sound,
            'plans/a.spread': 'use "../boat.spread"\n',
        });
        expect(check(join(folder, 'plans')).status).toBe(0);
    });

    test('without a repository, the folder that the command was started in or was given, and nothing above', () => {
        const folder = folderOf({
            'secret.spread': 'boat secret {\n    length 9 m\n}\n',
            'team/boat.spread': sound,
            'team/plans/a.spread': 'use "../boat.spread"\n',
            'team/plans/b.spread': 'use "../../secret.spread"\nuse "link.spread"\n',
        });
        symlinkSync('../../secret.spread', join(folder, 'team/plans/link.spread'));
        const team = join(folder, 'team');
        expect(check(team, 'plans/a.spread').status).toBe(0);
        expect(check(folder, 'team').stdout).not.toContain('plans/a.spread');
        expect(check(join(team, 'plans'), '..').stdout).not.toContain('a.spread');
        for (const [cwd, ...paths] of [
            [team],
            [join(team, 'plans'), '..'],
            [team, 'plans/b.spread'],
        ] as const) {
            const { status, stdout } = check(cwd, ...paths, '-f', 'json');
            expect(status).toBe(paths[0] === 'plans/b.spread' ? 1 : 2);
            expect(stdout).toContain('`../../secret.spread` lies outside the folder `team`.');
            expect(stdout).toContain('`link.spread` is a link that leads out of the folder `team`.');
            expect(stdout).not.toContain('boat secret');
        }
        expect(check(team).stderr).toBe(
            'layback: plans/link.spread is a link that leads out of the folder team: name it if it is meant.\n',
        );
        expect(check(team, 'plans/link.spread').status).toBe(0);
        const alone = check(join(team, 'plans'), 'a.spread');
        expect(alone.status).toBe(1);
        expect(alone.stdout).toContain('`../boat.spread` lies outside the folder `plans`.');
    });

    test.each(['figures', 'draw', 'brief'])('%s keeps to it as well', (verb) => {
        const folder = folderOf({
            'secret.spread': 'boat secret "Nobody" {\n    length 9 m\n}\n',
            'plans/a.spread': 'use "../secret.spread"\nspread a {\n    boat secret\n}\n',
        });
        const out = verb === 'draw' ? ['-o', '-'] : [];
        const { stdout } = layback([verb, 'a.spread', ...out], { cwd: join(folder, 'plans') });
        expect(stdout).not.toBe('');
        expect(stdout).not.toContain('Nobody');
    });

    test('a file of another folder may use what lies in the folder that was named', () => {
        const folder = folderOf({
            'here/.git/HEAD': '',
            'there/boat.spread': sound,
            'there/plans/a.spread': 'use "../boat.spread"\nboat other like heron {\n    beam 3 m\n}\n',
        });
        expect(check(join(folder, 'here'), '../there').status).toBe(0);
        expect(check(join(folder, 'here'), '../there/plans/a.spread', '../there/boat.spread').status).toBe(0);
        expect(check(join(folder, 'here'), '../there/plans/a.spread').status).toBe(1);
    });

    test('plans only: no other file is ever read', () => {
        const folder = folderOf({ 'a.spread': 'use "key.pem"\n', 'key.pem': 'SECRET' });
        const { status, stdout } = check(folder);
        expect(status).toBe(1);
        expect(stdout).toContain('does not end in .spread');
        expect(stdout).not.toContain('SECRET');
    });
});

describe('files that change while they are read', () => {
    test('a file that goes away between the walk and the reading is named, and the rest is checked', async () => {
        const files = Object.fromEntries(Array.from({ length: 300 }, (_, n) => [`${n}.spread`, sound]));
        const folder = folderOf(files);
        const { spawn } = await import('node:child_process');
        const { command, expectNoInsides } = await import('./layback.ts');
        const child = spawn(process.execPath, [command, 'check', '-q'], { cwd: folder });
        let stderr = '';
        child.stderr.on('data', (piece) => {
            stderr += piece;
        });
        const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
        for (let n = 299; n >= 0; n--) {
            if (n % 3 === 0) rmSync(join(folder, `${n}.spread`));
            else renameSync(join(folder, `${n}.spread`), join(folder, `${n}.moved`));
            writeFileSync(join(folder, `${n}.spread.new`), misspelt);
            if (n % 20 === 0) await new Promise((resolve) => setTimeout(resolve, 5));
        }
        const status = await ended;
        expectNoInsides({ status, stdout: '', stderr });
        expect([0, 2]).toContain(status);
        if (status === 2) expect(stderr).toMatch(/is not there|There is no \.spread file/);
    });
});
