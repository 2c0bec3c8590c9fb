import { spawnSync } from 'node:child_process';
import {
    cpSync,
    existsSync,
    lstatSync,
    mkdirSync,
    readdirSync,
    readFileSync,
    statSync,
    symlinkSync,
    writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { version } from '../../package.json' with { type: 'json' };
import { command, folderOf, layback, misspelt, sound } from './layback.ts';

const verbs = ['check', 'format', 'figures', 'draw', 'card', 'brief', 'explain', 'new', 'language-server'];

describe('help', () => {
    test('names every verb and shows how to begin', () => {
        const { status, stdout } = layback(['--help']);
        expect(status).toBe(0);
        for (const verb of verbs) expect(stdout).toMatch(new RegExp(`^  ${verb}\\b`, 'm'));
        expect(stdout).toContain('layback new our-boat');
        expect(stdout).toContain('The skipper, local law and your event');
    });

    test.each(verbs)('%s --help has examples, and `help` says the same', (verb) => {
        const { status, stdout } = layback([verb, '--help']);
        expect(status).toBe(0);
        expect(stdout).toMatch(new RegExp(`Examples?:\n(  .*\n)*  layback ${verb}`));
        expect(layback(['help', verb]).stdout).toBe(stdout);
        for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(104);
    });

    test('the version is the package’s', () => {
        expect(layback(['--version'])).toEqual({ status: 0, stdout: `${version}\n`, stderr: '' });
    });

    test.each([
        [[], /First steps/],
        [['chekc'], /Did you mean check\?/],
        [['plans/friday.spread'], /unknown command/],
        [['check', '--fial-on', 'error'], /Did you mean --fail-on\?/],
        [['check', '--format', 'xml'], /Allowed choices are text, lines, json, sarif, github/],
        [['check', '--fail-on'], /argument missing/],
        [['draw'], /missing required argument 'file'/],
        [['draw', 'a.spread', '--dpi', '9000'], /20 to 600/],
        [['new', 'a', 'b'], /too many arguments/],
    ])('what it does not understand ends with 2 and nothing on stdout: %j', (args, said) => {
        const { status, stdout, stderr } = layback(args);
        expect(status).toBe(2);
        expect(stdout).toBe('');
        expect(stderr).toMatch(said);
    });
});

describe('new', () => {
    test('starts a folder that checks clean to the last hint, is laid out, and has figures and a picture', () => {
        const cwd = folderOf();
        const { status, stdout } = layback(['new', 'our-boat'], { cwd });
        expect(status).toBe(0);
        expect(stdout.trim().split('\n')).toContain('our-boat/plans/first.spread');
        const team = join(cwd, 'our-boat');
        expect(layback(['check', '--fail-on', 'hint'], { cwd: team })).toEqual({
            status: 0,
            stdout: '5 files checked, nothing found.\n',
            stderr: '',
        });
        expect(layback(['check', '..'], { cwd: join(team, 'plans') }).status).toBe(0);
        expect(layback(['format', '--check'], { cwd: team }).status).toBe(0);
        expect(layback(['draw', 'plans/first.spread'], { cwd: team }).stdout).toBe('plans/first.svg\n');
    });

    test('shows on its first plan what the README promises, word for word and nothing else', () => {
        const cwd = folderOf();
        layback(['new', 'our-boat'], { cwd });
        const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
        const [, from, plan, to] = /Change `(.+?)` in `(.+?)` to `(.+?)`/.exec(readme)!;
        const promised = /```\n( +Port [\s\S]*?)```/.exec(readme)![1]!.match(/\S.*/g)!;
        const file = join(cwd, plan!);
        const text = readFileSync(file, 'utf8');
        expect(text.split(from!)).toHaveLength(2);
        writeFileSync(file, text.replace(from!, to!));
        const { findings } = JSON.parse(
            layback(['check', 'our-boat', '-f', 'json'], { cwd }).stdout,
        ).files.find(({ path }: { path: string }) => path === plan);
        expect(findings.map(({ message }: { message: string }) => message)).toEqual([promised.join(' ')]);
    });

    test('every command in its README runs', () => {
        const cwd = folderOf();
        layback(['new', '.'], { cwd });
        const readme = readFileSync(join(cwd, 'README.md'), 'utf8');
        const lines = [...readme.matchAll(/^layback (\S.*?)(?: {2,}.*)?$/gm)].map(([, line]) =>
            line!.split(' '),
        );
        expect(lines.length).toBeGreaterThan(2);
        for (const args of lines) expect(layback(args, { cwd }).status, args.join(' ')).toBe(0);
    });

    test('never overwrites', () => {
        const cwd = folderOf({ 'taken/boat.spread': 'mine', file: '' });
        expect(layback(['new', 'taken'], { cwd })).toEqual({
            status: 2,
            stdout: '',
            stderr: 'layback: taken holds something already. Name a new folder.\n',
        });
        expect(readdirSync(join(cwd, 'taken'))).toEqual(['boat.spread']);
        expect(readFileSync(join(cwd, 'taken/boat.spread'), 'utf8')).toBe('mine');
        expect(layback(['new', 'file'], { cwd }).status).toBe(2);
        expect(layback(['new', 'file/deeper'], { cwd }).status).toBe(2);
    });
});

describe('format', () => {
    const loose = 'boat heron { length   9.8 m\n\n\n\n beam 3 m  }\n';
    const tidy = layback(['format', '--stdin'], { input: loose }).stdout;

    test('prints one file as it would be, and the standard input', () => {
        expect(tidy).not.toBe(loose);
        expect(tidy.replace(/\s/g, '')).toBe(loose.replace(/\s/g, ''));
        const cwd = folderOf({ 'a.spread': loose });
        expect(layback(['format', 'a.spread'], { cwd })).toEqual({ status: 0, stdout: tidy, stderr: '' });
        expect(readFileSync(join(cwd, 'a.spread'), 'utf8')).toBe(loose);
    });

    test('--check names what would change and ends with 1, --write writes it, then --check ends with 0', () => {
        const cwd = folderOf({ 'a.spread': loose, 'b.spread': tidy });
        expect(layback(['format', '--check'], { cwd })).toEqual({
            status: 1,
            stdout: 'a.spread\n',
            stderr: '',
        });
        const before = statSync(join(cwd, 'b.spread')).mtimeMs;
        expect(layback(['format', '--write'], { cwd })).toEqual({
            status: 0,
            stdout: 'a.spread\n',
            stderr: '',
        });
        expect(readFileSync(join(cwd, 'a.spread'), 'utf8')).toBe(tidy);
        expect(statSync(join(cwd, 'b.spread')).mtimeMs).toBe(before);
        expect(layback(['format', '--check'], { cwd })).toEqual({ status: 0, stdout: '', stderr: '' });
        expect(readdirSync(cwd).sort()).toEqual(['a.spread', 'b.spread']);
    });

    test('keeps a byte order mark, line ends, permissions and links', () => {
        const crlf = `\ufeff${loose.replaceAll('\n', '\r\n')}`;
        const cwd = folderOf({ 'real/a.spread': crlf });
        symlinkSync('real/a.spread', join(cwd, 'link.spread'));
        const mode = statSync(join(cwd, 'real/a.spread')).mode;
        expect(layback(['format', '-w', 'link.spread'], { cwd }).status).toBe(0);
        expect(lstatSync(join(cwd, 'link.spread')).isSymbolicLink()).toBe(true);
        expect(readFileSync(join(cwd, 'real/a.spread'), 'utf8')).toBe(
            `\ufeff${tidy.replaceAll('\n', '\r\n')}`,
        );
        expect(statSync(join(cwd, 'real/a.spread')).mode).toBe(mode);
    });

    test.each([
        [['format'], /There are 2 files: --write writes them, --check names/],
        [['format', '--write', '--check'], /Either --write or --check/],
        [['format', '--stdin', '--write'], /leave out --write/],
        [['format', '--stdin', 'a.spread'], /Either paths or --stdin/],
    ])('says what it needs to know: %j', (args, said) => {
        const { status, stdout, stderr } = layback(args, {
            cwd: folderOf({ 'a.spread': loose, 'b.spread': loose }),
        });
        expect([status, stdout]).toEqual([2, '']);
        expect(stderr).toMatch(said);
    });

    test('a file that may not be written is named', () => {
        const cwd = folderOf({ 'a.spread': loose });
        mkdirSync(join(cwd, `.layback-taken`));
        const before = readFileSync(join(cwd, 'a.spread'), 'utf8');
        expect(layback(['format', 'missing.spread', '--write'], { cwd }).status).toBe(2);
        expect(readFileSync(join(cwd, 'a.spread'), 'utf8')).toBe(before);
    });
});

describe('figures', () => {
    const team = () => {
        const cwd = folderOf();
        layback(['new', '.'], { cwd });
        return cwd;
    };

    test('as JSON follow their own schema, which describes every one of them', () => {
        const { status, stdout } = layback(['figures', 'plans/first.spread', '--json'], { cwd: team() });
        expect(status).toBe(0);
        const report = JSON.parse(stdout);
        expect(report.plans[0].lines).toHaveLength(4);
        expect(report.plans[0].turns.known).toBe(true);
        const described = closed(JSON.parse(readFileSync(join(command, '../figures.schema.json'), 'utf8')));
        const valid = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(described);
        expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
        const [line] = report.plans[0].lines;
        for (const broken of [
            { ...line, astern: 12.8 },
            { ...line, undescribed: 1 },
        ]) {
            expect(valid({ ...report, plans: [{ ...report.plans[0], lines: [broken] }] })).toBe(false);
        }
    });

    test('as a table speak in the units of the plan', () => {
        const cwd = team();
        const plan = readFileSync(join(cwd, 'plans/first.spread'), 'utf8');
        writeFileSync(
            join(cwd, 'plans/feet.spread'),
            plan.replace('back wave 2', 'back 42 ft').replace('spread first', 'spread feet'),
        );
        const { stdout } = layback(['figures', 'plans/feet.spread'], { cwd });
        expect(stdout).toMatch(/^port short corner .* 42 ft /m);
        expect(stdout).not.toMatch(/^(?:port|starboard) .*\d m /m);
        expect(layback(['figures', 'plans/first.spread'], { cwd }).stdout).toMatch(
            /^port short corner .* \d+(\.\d)? m /m,
        );
    });

    test('of one spread by its name, or a word on which there are', () => {
        const cwd = team();
        const { status, stderr } = layback(['figures', 'plans/first.spread', '-p', 'frist'], { cwd });
        expect(status).toBe(2);
        expect(stderr).toBe('layback: There is no spread frist in plans/first.spread. Did you mean first?\n');
        expect(layback(['figures', 'boat.spread'], { cwd }).stderr).toBe(
            'layback: There is no spread in boat.spread.\n',
        );
    });
});

describe('draw', () => {
    const team = () => {
        const cwd = folderOf();
        layback(['new', '.'], { cwd });
        return cwd;
    };

    test.each(['above', 'side'])('from %s: an SVG file that names the plan and its positions', (view) => {
        const { stdout } = layback(['draw', 'plans/first.spread', '--view', view, '-o', '-'], {
            cwd: team(),
        });
        const words: string[] = [];
        const parser = new SaxesParser({ xmlns: true });
        parser.on('text', (text) => words.push(text));
        parser.on('error', (error) => {
            throw error;
        });
        parser.write(stdout).close();
        expect(words.join(' ')).toContain('First spread');
        expect(words.join(' ')).toContain('Port long rigger');
    });

    test('a .png is one, as wide as its paper at the resolution asked for', () => {
        const cwd = team();
        const widthOf = (...args: string[]) => {
            expect(layback(['draw', 'plans/first.spread', '-o', 'x.png', ...args], { cwd }).status).toBe(0);
            const bytes = readFileSync(join(cwd, 'x.png'));
            expect(bytes.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
            return bytes.readUInt32BE(16);
        };
        expect(widthOf('--dpi', '120') / widthOf('--dpi', '40')).toBeCloseTo(3, 2);
    });

    test('in a file of several each gets its own picture, and one name takes one of them', () => {
        const cwd = team();
        const plan = readFileSync(join(cwd, 'plans/first.spread'), 'utf8');
        writeFileSync(
            join(cwd, 'plans/first.spread'),
            `${plan}\nspread second like first {\n    speed 7 kn\n}\n`,
        );
        expect(layback(['draw', 'plans/first.spread'], { cwd }).stdout).toBe(
            'plans/first-first.svg\nplans/first-second.svg\n',
        );
        const { status, stderr } = layback(['draw', 'plans/first.spread', '-o', 'x.svg'], { cwd });
        expect(status).toBe(2);
        expect(stderr).toContain('--plan names one of first, second');
        expect(existsSync(join(cwd, 'x.svg'))).toBe(false);
        expect(layback(['draw', 'plans/first.spread', '-p', 'second', '-o', 'x.svg'], { cwd }).stdout).toBe(
            'x.svg\n',
        );
    });

    test.each([
        ['x.pdf', 'x.pdf should end in .svg or .png'],
        ['plans/first.spread', 'should end in .svg or .png'],
        ['nowhere/x.svg', 'nowhere/x.svg cannot be written: its folder is not there.'],
    ])('never writes %s', (output, said) => {
        const cwd = team();
        const before = readFileSync(join(cwd, 'plans/first.spread'), 'utf8');
        const { status, stderr } = layback(['draw', 'plans/first.spread', '-o', output], { cwd });
        expect(status).toBe(2);
        expect(stderr).toContain(said);
        expect(readFileSync(join(cwd, 'plans/first.spread'), 'utf8')).toBe(before);
    });

    test('a plan with errors is drawn as far as it can be, and that is said', () => {
        const cwd = folderOf({ 'a.spread': `${misspelt}spread a {\n    boat heron\n}\n` });
        const { status, stderr } = layback(['draw', 'a.spread'], { cwd });
        expect(status).toBe(0);
        expect(stderr).toContain('a.spread has an error: layback check a.spread says which.');
    });
});

describe('explain', () => {
    const listed = layback(['explain']).stdout;
    const names = [...listed.matchAll(/^([a-z][\w-]+) +(?:error|warning|hint|off) /gm)].map(
        ([, name]) => name!,
    );

    test('lists every rule', () => {
        expect(names.length).toBeGreaterThan(20);
        expect(names).toContain('stagger');
        expect(names).toContain('syntax');
    });

    test('has a page for each, in plain words and lines that fit', () => {
        const { stdout } = layback(['explain', 'stagger']);
        expect(stdout).toContain('When to waive it');
        expect(stdout).not.toMatch(/^#|\*\*|`/m);
        for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(110);
    });

    test('of a name that there is not, the nearest', () => {
        const { status, stderr } = layback(['explain', 'stager']);
        expect(status).toBe(2);
        expect(stderr).toBe('layback: There is no rule stager. Did you mean stagger?\n');
    });
});

describe('the process', () => {
    test('the V8 flags that it sets still exist, and nothing complains about them', () => {
        const { stdout } = spawnSync(process.execPath, ['--v8-options'], { encoding: 'utf8' });
        const flags = ['--interrupt-budget ', '--semi-space-growth-factor ', '--heap-growing-percent '];
        for (const flag of flags) expect(stdout).toContain(flag);
        expect(layback(['--version']).stderr).toBe('');
    });

    test('what the engine compiled is kept after a check, used, and made anew where it is damaged', () => {
        const copy = folderOf();
        cpSync(join(command, '..'), copy, { recursive: true, filter: (path) => !path.endsWith('.cache') });
        const cwd = folderOf({ 'a.spread': misspelt });
        const run = () =>
            spawnSync(process.execPath, [join(copy, 'layback.mjs'), 'check'], { cwd, encoding: 'utf8' });
        const kept = () => readdirSync(join(copy, 'layback')).filter((name) => name.endsWith('.cache'));
        const first = run();
        expect(first.status).toBe(1);
        expect(kept()).toHaveLength(1);
        const path = join(copy, 'layback', kept()[0]!);
        const written = statSync(path).mtimeMs;
        expect(run().stdout).toBe(first.stdout);
        expect(statSync(path).mtimeMs).toBe(written);
        const whole = readFileSync(path);
        for (const at of [0, 100, 5000, 1_000_000, -1]) {
            const damaged = Buffer.from(whole);
            if (at >= 0) damaged.fill(0xff, at, at + 4);
            writeFileSync(path, at >= 0 ? damaged : damaged.subarray(0, 3));
            expect(run()).toMatchObject({ status: 1, stdout: first.stdout, stderr: '' });
            expect(statSync(path).size).toBeGreaterThan(100_000);
            expect(readFileSync(path).equals(damaged)).toBe(false);
        }
    });

    test('a command that is not whole says so', () => {
        const copy = folderOf();
        cpSync(command, join(copy, 'layback.mjs'));
        const { status, stdout, stderr } = spawnSync(process.execPath, [join(copy, 'layback.mjs'), 'check'], {
            encoding: 'utf8',
        });
        expect([status, stdout]).toEqual([2, '']);
        expect(stderr).toMatch(/^layback is not whole \(ENOENT: .*\)\. Install it again\.\n$/);
    });

    test('a reader that has seen enough is no fault', () => {
        const cwd = folderOf(
            Object.fromEntries(Array.from({ length: 400 }, (_, n) => [`${n}.spread`, misspelt])),
        );
        const { status, stdout, stderr } = spawnSync(
            'bash',
            ['-c', `set -o pipefail; '${process.execPath}' '${command}' check -f json | head -c 100`],
            { cwd, encoding: 'utf8' },
        );
        expect(stdout).toHaveLength(100);
        expect(stderr).toBe('');
        expect([0, 1]).toContain(status);
    });

    test('a whole report arrives, however long it is and however slowly it is read', () => {
        const cwd = folderOf(
            Object.fromEntries(Array.from({ length: 400 }, (_, n) => [`${n}.spread`, misspelt])),
        );
        const { stdout } = spawnSync(
            'bash',
            ['-c', `'${process.execPath}' '${command}' check -f json | (sleep 1; cat)`],
            { cwd, encoding: 'utf8', maxBuffer: 2 ** 28 },
        );
        expect(JSON.parse(stdout).files).toHaveLength(400);
    });

    test('the file is executable and knows its interpreter', () => {
        expect(readFileSync(command, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
        expect(statSync(command).mode & 0o111).toBe(0o111);
        const cwd = folderOf({ 'a.spread': sound });
        expect(spawnSync(command, ['check'], { cwd, encoding: 'utf8' }).stdout).toContain('nothing found');
    });
});

/** The schema with nothing let through that it does not describe. */
function closed(schema: unknown): object {
    if (Array.isArray(schema)) return schema.map(closed);
    if (typeof schema !== 'object' || schema === null) return schema as never;
    const inner = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
    return 'properties' in inner ? { ...inner, additionalProperties: false } : inner;
}
