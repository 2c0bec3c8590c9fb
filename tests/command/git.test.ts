import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderOf, layback } from './layback.ts';

const plan = `spread friday "Friday" {
    speed 8 kn
    port short corner { outfit heavy  lure bell  back 12 m }
    starboard long corner { outfit light  lure rope  back 24 m }
}
`;

function repositoryOf(files: Record<string, string>): string {
    const cwd = folderOf(files);
    git(cwd, 'init', '--quiet', '--initial-branch=main');
    commit(cwd, 'First');
    return cwd;
}

function commit(cwd: string, message: string): void {
    git(cwd, 'add', '--all');
    git(cwd, 'commit', '--quiet', '--allow-empty', '--message', message);
}

function git(cwd: string, ...args: string[]): string {
    return execFileSync('git', [...names, ...args], {
        cwd,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
    });
}

const names = ['-c', 'user.name=Wren', '-c', 'user.email=wren@example.org', '-c', 'commit.gpgsign=false'];

function rewrite(cwd: string, change: (text: string) => string): void {
    const path = join(cwd, 'friday.spread');
    writeFileSync(path, change(readFileSync(path, 'utf8')));
}

test('git diff shows what a plan says otherwise, and nothing where only its layout differs', () => {
    const cwd = repositoryOf({ 'friday.spread': plan, '.gitattributes': '*.png binary' });
    expect(layback(['git-setup'], { cwd }).status).toBe(0);
    rewrite(cwd, (text) => text.replace('speed 8 kn', '// calm\n    speed   8kn').replace('24 m', '2400 cm'));
    expect(git(cwd, 'diff', '--', 'friday.spread')).not.toMatch(/^[-+] /m);
    rewrite(cwd, (text) => text.replace('12 m', '45 ft'));
    expect(git(cwd, 'diff', '--unified=0', '--', 'friday.spread')).toMatch(
        /^- {8}back 12 m \(39.37 ft\)\n\+ {8}back 13\.716 m \(45 ft\)$/m,
    );
});

test('a plan that cannot be read is compared as it stands', () => {
    const cwd = repositoryOf({ 'friday.spread': plan });
    layback(['git-setup'], { cwd });
    rewrite(cwd, (text) => text.replace('}\n}', ''));
    expect(git(cwd, 'diff')).toMatch(
        /^\+ {4}port short corner \{ outfit heavy {2}lure bell {2}back 12 m \}$/m,
    );
});

test('git merge puts two branches together position by position', () => {
    const cwd = repositoryOf({ 'friday.spread': plan });
    layback(['git-setup', '--merge'], { cwd });
    commit(cwd, 'Set up');
    git(cwd, 'switch', '--quiet', '--create', 'wind');
    rewrite(cwd, (text) => text.replace('lure bell', 'lure jetty').replace('8 kn', '7 kn'));
    commit(cwd, 'For wind');
    git(cwd, 'switch', '--quiet', 'main');
    // On the same line, which by lines would be a conflict.
    rewrite(cwd, (text) => text.replace('back 12 m', 'back 13 m'));
    commit(cwd, 'Further out');
    git(cwd, 'merge', '--quiet', '--no-edit', 'wind');
    expect(readFileSync(join(cwd, 'friday.spread'), 'utf8')).toBe(
        plan.replace('lure bell  back 12 m', 'lure jetty  back 13 m').replace('8 kn', '7 kn'),
    );
});

test('what both branches changed stops the merge, with both sides in the file', () => {
    const cwd = repositoryOf({ 'friday.spread': plan });
    layback(['git-setup', '--merge'], { cwd });
    commit(cwd, 'Set up');
    git(cwd, 'switch', '--quiet', '--create', 'wind');
    rewrite(cwd, (text) => text.replace('8 kn', '7 kn').replace('24 m', '26 m'));
    commit(cwd, 'Slower');
    git(cwd, 'switch', '--quiet', 'main');
    rewrite(cwd, (text) => text.replace('8 kn', '9 kn'));
    commit(cwd, 'Faster');
    const { status } = spawnSync('git', [...names, 'merge', '--no-edit', 'wind'], { cwd });
    expect(status).toBe(1);
    expect(git(cwd, 'diff', '--name-only', '--diff-filter=U')).toBe('friday.spread\n');
    const text = readFileSync(join(cwd, 'friday.spread'), 'utf8');
    expect(text).toMatch(/^ {4}speed 9 kn\n {4}\/\/ ======= theirs:\n {4}\/\/ speed 7 kn$/m);
    expect(text).toContain('back 26 m');
});

test('a side that cannot be read is merged by lines, and loses nothing', () => {
    const cwd = folderOf({
        base: plan,
        ours: plan.replace('8 kn', '9 kn'),
        theirs: `${plan}spread {\n`,
    });
    const { status, stderr } = layback(['git-merge', 'base', 'ours', 'theirs', 'friday.spread'], { cwd });
    expect(status).toBe(0);
    expect(stderr).toBe(
        'layback: friday.spread cannot be read on one of the sides, so it is merged line by line.\n',
    );
    expect(readFileSync(join(cwd, 'ours'), 'utf8')).toBe(`${plan.replace('8 kn', '9 kn')}spread {\n`);
});

test('git-setup twice is git-setup once, and --undo leaves nothing of it', () => {
    const cwd = repositoryOf({ 'friday.spread': plan, '.gitattributes': '*.png binary\n' });
    const before = [readFileSync(join(cwd, '.git/config'), 'utf8'), '*.png binary\n'];
    const now = () => ['.git/config', '.gitattributes'].map((path) => readFileSync(join(cwd, path), 'utf8'));
    layback(['git-setup', '--merge'], { cwd });
    const once = now();
    layback(['git-setup', '--merge'], { cwd });
    expect(now()).toEqual(once);
    layback(['git-setup'], { cwd });
    expect(now()[1]).toBe('*.png binary\n*.spread diff=layback layback-git-setup\n');
    expect(now()[0]).not.toContain('merge');
    expect(layback(['git-setup', '--undo'], { cwd }).stdout).toBe(
        'git compares and merges plans line by line again.\n',
    );
    expect(now()).toEqual(before);

    const bare = repositoryOf({ 'friday.spread': plan });
    layback(['git-setup'], { cwd: bare });
    layback(['git-setup', '--undo'], { cwd: bare });
    expect(existsSync(join(bare, '.gitattributes'))).toBe(false);
});

test('where there is no repository, it says what to do', () => {
    expect(layback(['git-setup'], { cwd: folderOf({ 'a.spread': plan }) })).toMatchObject({
        status: 2,
        stderr: 'layback: This folder is in no git repository: git init makes one.\n',
    });
});
