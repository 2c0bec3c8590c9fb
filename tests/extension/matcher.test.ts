import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const root = path.join(import.meta.dirname, '../..');
const { problemMatchers } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')).contributes;
const [matcher, unread] = problemMatchers;
const pattern = new RegExp(matcher.pattern.regexp);

const team = mkdtempSync(path.join(tmpdir(), 'layback matcher '));
afterAll(() => rmSync(team, { recursive: true }));
const sheets = {
    // An error, a warning of a plan and a hint, in files whose names are not plain.
    'boat, ours.spread': 'boat heron {\n    lenght 9.8 m\n    length 9.8 m\n    beam 3.1 m\n}\n',
    'plans/the week’s: first.spread':
        'use "../boat, ours.spread"\n\nspread friday "Friday" {\n    boat heron\n    speed 8 kn\n' +
        '    port short corner { back 12 m }\n    port long rigger { back 12 m }\n}\nlure idle { length 200 mm }\n',
};
for (const [name, text] of Object.entries(sheets)) {
    mkdirSync(path.dirname(path.join(team, name)), { recursive: true });
    writeFileSync(path.join(team, name), text);
}

/** What the command prints, and what is left of it once an editor has taken its colours off. */
function check(format: string, env: Record<string, string>): { printed: string; lines: string[] } {
    const { stdout } = spawnSync(
        process.execPath,
        [path.join(root, 'dist/layback.mjs'), 'check', '--format', format, '--', '.'],
        { cwd: team, encoding: 'utf8', env: { ...process.env, NO_COLOR: '', FORCE_COLOR: '', ...env } },
    );
    const escapes = new RegExp(`${String.fromCharCode(27)}\\[[\\d;]*m`, 'g');
    return { printed: stdout, lines: stdout.replace(escapes, '').split('\n').slice(0, -1) };
}

/** The rows of the Problems panel that a line of a task's output makes. */
function problemIn(line: string) {
    const found = pattern.exec(line);
    const { file, line: row, column, severity, code, message } = matcher.pattern;
    return (
        found && {
            file: found[file]!.replaceAll('\\', '/'),
            row: Number(found[row]),
            column: Number(found[column]),
            severity: found[severity],
            code: found[code],
            message: found[message],
        }
    );
}

interface Told {
    readonly at: {
        readonly path: string;
        readonly start: { readonly line: number; readonly column: number };
    };
    readonly severity: string;
    readonly rule: string;
    readonly message: string;
}

const colours = { off: { NO_COLOR: '1' }, on: { FORCE_COLOR: '1' } };

describe.each(Object.entries(colours))('with colours %s', (_, env) => {
    test('every line of a task becomes the finding that was meant, and none is lost', () => {
        const { files } = JSON.parse(check('json', env).printed) as {
            readonly files: readonly { readonly findings: readonly Told[] }[];
        };
        const told = files.flatMap(({ findings }) => findings);
        const meant = told.map(({ at, severity, rule, message }) => ({
            file: at.path,
            row: at.start.line,
            column: at.start.column,
            severity,
            code: rule,
            message: message.replace(/\s+/g, ' '),
        }));
        expect(new Set(meant.map(({ severity }) => severity)).size).toBe(3);
        expect(new Set(meant.map(({ file }) => file)).size).toBe(2);
        expect(check('lines', env).lines.map(problemIn)).toEqual(meant);
    });

    test('what is printed for people, with excerpts of the source, is never taken for a finding elsewhere', () => {
        const { printed, lines } = check('text', env);
        expect(printed.includes(String.fromCharCode(27))).toBe('FORCE_COLOR' in env);
        expect(printed).toContain('^^^');
        expect(lines.flatMap((line) => problemIn(line) ?? [])).toEqual([]);
    });
});

test.each(['C:\\our boat', '\\\\club\\plans', '.'])('as Windows writes its paths, below %s', (folder) => {
    for (const line of check('lines', colours.off).lines) {
        const [file] = /^.+?\.spread/.exec(line)!;
        const asThere = `${path.win32.join(folder, file)}${line.slice(file.length)}`;
        expect(problemIn(asThere)).toEqual({
            ...problemIn(line),
            file: path.win32.join(folder, file).replaceAll('\\', '/'),
        });
    }
});

test('a file that could not be looked at is told of too, once', () => {
    const name = 'plans/old, ours.spread';
    writeFileSync(path.join(team, name), Buffer.from('\ufeffboat a { }', 'utf16le'));
    const { stdout, stderr } = spawnSync(
        process.execPath,
        [path.join(root, 'dist/layback.mjs'), 'check', '--format', 'lines', '--', '.'],
        { cwd: team, encoding: 'utf8' },
    );
    const told = new RegExp(unread.pattern.regexp, 'm').exec(stderr)!;
    expect([told[unread.pattern.file], told[unread.pattern.message]]).toEqual([
        name,
        'is written in UTF-16; save it as UTF-8.',
    ]);
    expect(stdout.split('\n').filter((line) => new RegExp(unread.pattern.regexp).test(line))).toEqual([]);
    expect(stderr.split('\n').filter((line) => pattern.test(line))).toEqual([]);
    rmSync(path.join(team, name));
});
