import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Ajv } from 'ajv';
import { marked } from 'marked';
import { describe, expect, test } from 'vitest';
import { command, folderOf, layback } from './layback.ts';

const tackle = `
boat dunlin "Dunlin" {
    length 10.8 m  beam 3.6 m
    speed 6 kn to 10 kn
    outriggers { length 6 m  angle out 45 deg  halyard 1 at 6 m }
    flat clips { height 1.2 m  out 0.8 m }
}
lure bell "Bell" pusher { length 330 mm  weight 290 g }
lure rope "Rope" slant { length 210 mm  weight 150 g }
outfit heavy "Heavy" { rod { length 1.7 m }  line nylon { class 37 kg  diameter 0.9 mm }  drag { set 4 kg } }
outfit light "Light" { rod { length 1.7 m }  line nylon { class 24 kg  diameter 0.7 mm }  drag { set 3 kg } }
`;

const plan = (more = '') => `use "tackle.spread"
spread friday "Friday" {
    boat dunlin
    speed 8 kn
    port short corner { outfit heavy  lure bell  back 12 m }
    starboard long corner { outfit light  lure rope  back 24 m }
    ${more}
}
`;

const schema = JSON.parse(readFileSync(join(command, '../comparison.schema.json'), 'utf8')) as object;
const isComparison = new Ajv().compile(schema);

interface Report {
    readonly different: boolean;
    readonly changed: readonly {
        readonly words: readonly string[];
        readonly changes: readonly {
            readonly kind: string;
            readonly before?: string;
            readonly after?: string;
        }[];
        readonly figures: readonly Record<'of' | 'figure' | 'before' | 'after', string>[];
        readonly findings: Record<'new' | 'gone', readonly { readonly rule: string }[]>;
    }[];
    readonly new: readonly { readonly name: string }[];
    readonly gone: readonly { readonly name: string }[];
    readonly same: readonly { readonly name: string }[];
}

function compared(cwd: string, ...args: string[]): Report {
    const { status, stdout, stderr } = layback(['compare', '--format', 'json', ...args], { cwd });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const report = JSON.parse(stdout) as Report;
    expect(isComparison(report), JSON.stringify(isComparison.errors)).toBe(true);
    return report;
}

/** A repository whose commits are these files, one after the other; an empty text takes a file away. */
function repositoryOf(...commits: readonly Record<string, string>[]): string {
    const cwd = folderOf({});
    git(cwd, 'init', '--quiet', '--initial-branch=main');
    for (const [index, files] of commits.entries()) {
        for (const [path, text] of Object.entries(files)) put(cwd, path, text);
        git(cwd, 'add', '--all');
        git(cwd, 'commit', '--quiet', '--message', `Version ${index + 1}`);
    }
    return cwd;
}

function put(cwd: string, path: string, text: string): void {
    const whole = join(cwd, path);
    if (text === '') {
        rmSync(whole);
        return;
    }
    mkdirSync(dirname(whole), { recursive: true });
    writeFileSync(whole, text);
}

function git(cwd: string, ...args: string[]): string {
    const names = ['-c', 'user.name=Wren', '-c', 'user.email=wren@example.org', '-c', 'commit.gpgsign=false'];
    return execFileSync('git', [...names, ...args], { cwd, encoding: 'utf8' });
}

describe('two files', () => {
    const files = {
        'tackle.spread': tackle,
        'a.spread': plan(),
        'b.spread': plan().replace('back 12 m', 'back 40 ft').replace('friday "Friday"', 'gala "Gala"'),
        'same.spread': plan().replace('speed 8 kn', '// calm\n    speed 8kn').replace('24 m', '2400 cm'),
    };
    const twoFiles = () => folderOf(files);

    test('are told apart by what changed, in each author’s words, and by what follows', () => {
        const cwd = twoFiles();
        const { stdout, status } = layback(['compare', 'a.spread', 'b.spread'], { cwd });
        expect(status).toBe(0);
        expect(stdout).toMatch(/^Gala \(friday → gala, b\.spread\)$/m);
        expect(stdout).toContain('Port short corner moved: 12 m → 40 ft.');
        expect(stdout).toMatch(/^ {4}port short corner +astern +39 ft +40 ft$/m);
        expect(stdout).toMatch(/^Of the plans, 1 changed\.$/m);
    });

    test('that differ in layout, comments and the form of numbers only, do not differ', () => {
        const cwd = twoFiles();
        const { stdout, status } = layback(['compare', 'a.spread', 'same.spread', '--exit-code'], { cwd });
        expect(stdout).toBe('No plan changed: 1 is as it was.\n');
        expect(status).toBe(0);
        expect(layback(['compare', 'a.spread', 'b.spread', '--exit-code'], { cwd }).status).toBe(1);
    });

    test('are drawn one over the other, and only as what can be drawn', () => {
        const cwd = twoFiles();
        const { status, stderr } = layback(['compare', 'a.spread', 'b.spread', '--picture', 'c.svg'], {
            cwd,
        });
        expect([status, stderr]).toEqual([0, 'c.svg\n']);
        const svg = readFileSync(join(cwd, 'c.svg'), 'utf8');
        expect(svg).toContain('Gala, against Friday');
        expect(layback(['compare', 'a.spread', 'b.spread', '--picture', 'c.gif'], { cwd }).stderr).toBe(
            'layback: c.gif should end in .svg or .png, to say what to draw.\n',
        );
    });

    test('that are not there, or a file and a folder, are refused', () => {
        const cwd = twoFiles();
        expect(layback(['compare', 'a.spread', '.'], { cwd })).toMatchObject({
            status: 2,
            stderr: 'layback: . is a folder: a file is compared with a file, a folder with a folder.\n',
        });
        expect(layback(['compare', 'a.spread', 'c.spread'], { cwd })).toMatchObject({
            status: 2,
            stderr: 'layback: c.spread is not there, and no revision either.\n',
        });
        expect(layback(['compare', 'a.spread', 'b.spread', '--plan', 'fryday'], { cwd })).toMatchObject({
            status: 2,
            stderr: 'layback: There is no spread fryday in either version. Did you mean friday?\n',
        });
    });
});

describe('two folders', () => {
    test('have plans that are new, gone, moved to another file, renamed, and the same', () => {
        const other = plan().replaceAll('friday "Friday"', 'gull "Gull"').replace('lure rope', 'lure bell');
        const cwd = folderOf({
            'then/tackle.spread': tackle,
            'then/friday.spread': plan(),
            'then/old.spread': `${other.replace('gull "Gull"', 'tern "Tern"')}`,
            'now/tackle.spread': tackle,
            'now/day/friday.spread': plan().replace('tackle', '../tackle').replace('8 kn', '7 kn'),
            'now/new.spread':
                'use "tackle.spread"\nspread skua "Skua" {\n    boat dunlin\n    shotgun { outfit heavy  lure bell  back 60 m }\n}\n',
        });
        const report = compared(cwd, 'then', 'now');
        expect(report.changed.map(({ words }) => words.slice(0, 2))).toEqual([
            ['File: then/friday.spread → now/day/friday.spread.', 'Speed: 8 kn → 7 kn.'],
        ]);
        expect(report.new.map(({ name }) => name)).toEqual(['skua']);
        expect(report.gone.map(({ name }) => name)).toEqual(['tern']);
    });

    test('whose lure has another name have renamed it, and nothing else', () => {
        const cwd = folderOf({
            'then/tackle.spread': tackle,
            'then/friday.spread': plan(),
            'now/tackle.spread': tackle.replace('lure bell "Bell"', 'lure harbour-bell "Harbour Bell"'),
            'now/friday.spread': plan().replace('lure bell', 'lure harbour-bell'),
        });
        expect(compared(cwd, 'then', 'now').changed.map(({ words }) => words)).toEqual([
            ['Lure bell is harbour-bell now, the same under another name.'],
        ]);
    });
});

describe('revisions of a repository', () => {
    const crowded = 'port long corner { outfit light  lure rope  back 12.5 m }';

    test('are compared with each other and with the files as they are', () => {
        const cwd = repositoryOf(
            { 'tackle.spread': tackle, 'plans/friday.spread': plan().replace('tackle', '../tackle') },
            { 'tackle.spread': tackle.replace('290 g', '310 g') },
        );
        put(cwd, 'plans/friday.spread', plan('crew 2').replace('tackle', '../tackle'));
        // What a plan uses is taken from the same revision: here the lure, not the plan, has changed.
        expect(compared(cwd, 'HEAD~1..HEAD').changed.map(({ words }) => words)).toEqual([
            ['Lure bell, weight: 290 g → 310 g.'],
        ]);
        expect(compared(cwd, 'HEAD~1', 'HEAD', '--', 'plans')).toEqual(
            compared(cwd, 'HEAD~1..HEAD', '--', 'plans'),
        );
        expect(compared(cwd, 'plans/friday.spread').changed.map(({ words }) => words)).toEqual([
            ['Crew: 2, new.'],
        ]);
        expect(compared(join(cwd, 'plans')).changed).toHaveLength(1);
        expect(compared(cwd, 'HEAD').changed).toHaveLength(1);
        expect(compared(cwd, 'HEAD..').changed).toHaveLength(1);
    });

    test('tell findings that came and went', () => {
        const cwd = repositoryOf({ 'tackle.spread': tackle, 'friday.spread': plan() });
        put(cwd, 'friday.spread', plan(crowded));
        const came = compared(cwd).changed[0]!.findings;
        expect(came.new.map(({ rule }) => rule)).toContain('used-twice');
        git(cwd, 'commit', '--quiet', '--all', '--message', 'Crowded');
        put(cwd, 'friday.spread', plan());
        const went = compared(cwd).changed[0]!.findings;
        expect(went.gone.map(({ rule }) => rule)).toEqual(came.new.map(({ rule }) => rule));
    });

    test('follow a plan into a file of another name, and miss one that is gone', () => {
        const cwd = repositoryOf({ 'tackle.spread': tackle, 'friday.spread': plan() });
        renameSync(join(cwd, 'friday.spread'), join(cwd, 'gala.spread'));
        expect(compared(cwd).changed.map(({ words }) => words)).toEqual([
            ['File: friday.spread → gala.spread.'],
        ]);
        put(cwd, 'gala.spread', '');
        expect(compared(cwd).gone.map(({ name }) => name)).toEqual(['friday']);
        expect(compared(cwd, 'HEAD', '--', 'friday.spread').gone).toHaveLength(1);
    });

    test('that are none, in no repository, or written like an option, are refused', () => {
        const cwd = repositoryOf({ 'tackle.spread': tackle, 'friday.spread': plan() });
        const refused = (where: string, ...args: string[]) => {
            const { status, stderr } = layback(['compare', ...args], { cwd: where });
            expect(status).toBe(2);
            return stderr;
        };
        expect(refused(cwd, 'HEAD~9')).toContain('HEAD~9 is no revision of this repository.');
        expect(refused(cwd, '--', 'nothing.spread')).toContain('nothing.spread is not there');
        expect(refused(cwd, 'HEAD', 'friday.spread')).toContain('layback compare HEAD -- friday.spread');
        expect(refused(cwd, 'a..b..c')).toContain('does not name two');
        expect(refused(folderOf({ 'a.spread': plan() }))).toBe(
            'layback: This folder is in no git repository: git init makes one.\n',
        );
        expect(refused(cwd, '--output=x', '--')).toContain("unknown option '--output=x'");
    });

    test('run nothing of the repository, and check nothing out', () => {
        const cwd = repositoryOf({ 'tackle.spread': tackle, 'friday.spread': plan() });
        const trap = join(cwd, 'trapped');
        put(cwd, '.gitattributes', '*.spread filter=trap diff=trap\n');
        for (const key of [
            'filter.trap.smudge',
            'diff.trap.textconv',
            'diff.trap.command',
            'core.fsmonitor',
            'core.pager',
        ])
            git(cwd, 'config', key, `touch ${trap}`);
        put(cwd, 'friday.spread', plan('crew 2'));
        expect(compared(cwd).changed).toHaveLength(1);
        expect(() => readFileSync(trap)).toThrow('ENOENT');
    });
});

test('Markdown shows what a text of a plan says, and takes nothing in it for its own', () => {
    const hostile = '<img src=x onerror=alert(1)> | [a](https://example.org) `b` **c**';
    const cwd = folderOf({
        'tackle.spread': tackle,
        'a.spread': plan(),
        'b.spread': plan(`note "${hostile}"`).replace('"Friday"', `"${hostile}"`).replace('12 m', '14 m'),
    });
    const { stdout } = layback(['compare', 'a.spread', 'b.spread', '--format', 'markdown'], { cwd });
    const html = marked.parse(stdout, { async: false });
    expect(html).not.toMatch(/<(img|a|code|strong>c)/);
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt; | [a](');
    expect(html).toContain('<td>port short corner</td>\n<td>astern</td>\n<td>12 m</td>\n<td>14 m</td>');
});
