import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import { command, folderOf, layback, misspelt, sound } from './layback.ts';

const root = join(import.meta.dirname, '../..');

interface Step {
    readonly name: string;
    readonly if?: string;
    readonly shell?: string;
    readonly run?: string;
    readonly uses?: string;
    readonly with?: Record<string, string>;
    readonly env?: Record<string, string>;
}

interface Action {
    readonly inputs: Record<
        string,
        { readonly description: string; readonly default?: string; readonly type?: string }
    >;
    readonly runs: { readonly using: string; readonly steps: readonly Step[] };
}

const action = read('.github/actions/check-plans/action.yml') as Action;

function read(path: string): unknown {
    return load(readFileSync(join(root, path), 'utf8'));
}

/** Runs the steps of the action as a runner would, with a stand-in for the program that posts. */
function runAction(cwd: string, event: Record<string, string>, inputs: Record<string, string> = {}) {
    const runner = folderOf({ 'bin/gh': '#!/bin/sh\necho "$@" >> "$GH_LOG"\nexit $GH_ENDS\n' });
    chmodSync(join(runner, 'bin/gh'), 0o755);
    const values: Record<string, string> = { ...event, 'github.token': 'stand-in' };
    for (const [name, { default: usual = '' }] of Object.entries(action.inputs))
        values[`inputs.${name}`] = inputs[name] ?? usual;
    values['inputs.command'] = `${process.execPath} ${command}`;
    const filled = (text: string) =>
        text.replace(/\$\{\{ (.*?) \}\}/g, (_, name: string) => values[name] ?? '');
    const holds = (condition: string) =>
        condition.split(' && ').every((term) => {
            const [, name, wanted] = /^(\S+) == '(.*)'$/.exec(term)!;
            return values[name!] === wanted;
        });
    const ended = action.runs.steps
        .filter((step) => step.if === undefined || holds(step.if))
        .map((step) => {
            const env = Object.entries(step.env ?? {}).map(([name, text]) => [name, filled(text)]);
            return spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', step.run!], {
                cwd,
                encoding: 'utf8',
                env: {
                    ...process.env,
                    PATH: `${join(runner, 'bin')}:${process.env.PATH}`,
                    RUNNER_TEMP: runner,
                    GITHUB_STEP_SUMMARY: join(runner, 'summary.md'),
                    GH_LOG: join(runner, 'gh.log'),
                    GH_ENDS: event.GH_ENDS ?? '0',
                    ...Object.fromEntries(env),
                },
            });
        });
    const text = (name: string) =>
        existsSync(join(runner, name)) ? readFileSync(join(runner, name), 'utf8') : undefined;
    return { ended, summary: text('summary.md'), posted: text('gh.log') };
}

/** A team's repository as a pull request leaves it on a runner: one commit deep, without the branch that it goes into. */
function pullRequest(before: string, after: string): { cwd: string; base: string } {
    const team = folderOf({ 'plans/friday.spread': before });
    const git = (...args: string[]) =>
        execFileSync('git', ['-c', 'user.name=Wren', '-c', 'user.email=wren@example.org', ...args], {
            cwd: team,
            encoding: 'utf8',
        }).trim();
    git('init', '--quiet', '--initial-branch=main');
    git('config', 'uploadpack.allowAnySHA1InWant', 'true');
    git('add', '--all');
    git('commit', '--quiet', '--message', 'Before');
    const base = git('rev-parse', 'HEAD');
    writeFileSync(join(team, 'plans/friday.spread'), after);
    git('commit', '--quiet', '--all', '--message', 'After');
    const cwd = join(folderOf({}), 'checkout');
    execFileSync('git', ['clone', '--quiet', '--depth=1', `file://${team}`, cwd]);
    return { cwd, base };
}

const plan = (speed: number) =>
    `${sound}\nspread friday "Friday" {\n    boat heron\n    speed ${speed} kn\n}\n`;

describe('the action for pull requests', () => {
    const event = (base: string) => ({
        'github.event_name': 'pull_request',
        'github.event.pull_request.base.sha': base,
        'github.event.pull_request.number': '12',
    });

    test('posts what changed, and what follows', () => {
        const { cwd, base } = pullRequest(plan(8), plan(7));
        const { ended, summary, posted } = runAction(cwd, event(base));
        expect(ended.map(({ status, stderr }) => [status, stderr])).toEqual([
            [0, ''],
            [expect.any(Number), ''],
        ]);
        expect(summary).toContain('Speed: 8 kn → 7 kn.');
        expect(posted).toMatch(/^pr comment 12 --edit-last --create-if-none --body-file .*comparison\.md\n$/);
    });

    test('marks what is found beside the lines, and fails on what the team said', () => {
        const { cwd, base } = pullRequest(sound, misspelt);
        const { ended } = runAction(cwd, event(base), { 'fail-on': 'error', comment: 'false' });
        expect(ended[1]!.status).toBe(1);
        expect(ended[1]!.stdout).toMatch(/^::error title=unknown-word,file=plans\/friday\.spread,line=2,/);
        expect(runAction(cwd, event(base), { 'fail-on': 'never' }).ended[1]!.status).toBe(0);
    });

    test('checks a push without comparing, and goes on where it may not post', () => {
        const { cwd, base } = pullRequest(plan(8), plan(7));
        expect(runAction(cwd, { 'github.event_name': 'push' }).ended).toHaveLength(1);
        const { ended } = runAction(cwd, { ...event(base), GH_ENDS: '1' });
        expect(ended[0]!.status).toBe(0);
        expect(ended[0]!.stdout).toContain('::notice title=Comparison not posted::');
    });

    test('runs nothing that a name or an input holds', () => {
        const { cwd, base } = pullRequest(
            plan(8),
            plan(7).replace('"Friday"', '"$(touch pwned) `touch pwned`"'),
        );
        mkdirSync(join(cwd, 'a; touch pwned'));
        const { ended } = runAction(cwd, event(base), { paths: '. ; touch pwned $(touch pwned)' });
        expect(existsSync(join(cwd, 'pwned'))).toBe(false);
        expect(ended.at(-1)!.status).toBe(2);
        for (const { run = '' } of action.runs.steps) expect(run).not.toContain('${{');
    });
});

test('the workflow for other repositories passes on what the action takes', () => {
    const workflow = read('.github/workflows/check-plans.yml') as {
        on: { workflow_call: { inputs: Action['inputs'] } };
        permissions: Record<string, string>;
        jobs: { check: { steps: readonly Step[] } };
    };
    const { inputs } = workflow.on.workflow_call;
    const last = workflow.jobs.check.steps.at(-1)!;
    expect(last.uses).toMatch(/\/layback\/\.github\/actions\/check-plans@v\d+$/);
    expect(Object.keys(last.with!)).toEqual(Object.keys(inputs));
    for (const name of Object.keys(inputs)) {
        expect(action.inputs[name]?.description.startsWith(inputs[name]!.description)).toBe(true);
        expect(String(inputs[name]!.default)).toBe(String(action.inputs[name]!.default));
    }
    expect(workflow.permissions).toEqual({ contents: 'read', 'pull-requests': 'write' });
});

test('the hooks for pre-commit check and lay out the files that they are handed', () => {
    const hooks = read('.pre-commit-hooks.yaml') as readonly Record<'id' | 'entry' | 'files', string>[];
    const cwd = folderOf({
        'a.spread': sound,
        'b.spread': misspelt,
        'c.spread': 'boat  heron {length 9.8 m}',
    });
    const run = (id: string, ...files: string[]) => {
        const { entry, files: fitting } = hooks.find((hook) => hook.id === id)!;
        expect(files.every((file) => new RegExp(fitting).test(file))).toBe(true);
        return layback([...entry.split(' ').slice(1), ...files], { cwd }).status;
    };
    expect(run('layback-check', 'a.spread')).toBe(0);
    expect(run('layback-check', 'a.spread', 'b.spread')).toBe(1);
    expect(run('layback-format', 'c.spread')).toBe(0);
    expect(readFileSync(join(cwd, 'c.spread'), 'utf8')).toBe('boat heron { length 9.8 m }\n');
});

describe('the report for GitLab', () => {
    const cwd = () => folderOf({ 'plans/friday.spread': misspelt, 'b.spread': sound });
    const report = (folder: string) =>
        JSON.parse(layback(['check', '-f', 'gitlab'], { cwd: folder }).stdout) as readonly {
            readonly fingerprint: string;
        }[];

    test('has the fields that GitLab documents, and a fingerprint for each finding', () => {
        const found = report(cwd());
        expect(found).toEqual([
            {
                description: expect.stringContaining('means nothing'),
                check_name: 'unknown-word',
                fingerprint: expect.stringMatching(/^[0-9a-f]{64}$/),
                severity: 'major',
                location: { path: 'plans/friday.spread', lines: { begin: 2 } },
            },
        ]);
    });

    test('knows a finding again where its line has moved', () => {
        const folder = cwd();
        const before = report(folder);
        writeFileSync(join(folder, 'plans/friday.spread'), `// More.\n\n${misspelt}`);
        expect(report(folder).map(({ fingerprint }) => fingerprint)).toEqual(
            before.map(({ fingerprint }) => fingerprint),
        );
    });
});
