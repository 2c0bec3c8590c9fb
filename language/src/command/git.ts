import { execFileSync } from 'node:child_process';
import { Refusal } from './refusal.ts';

/** Large enough for any repository of plans, since every plan is at most 2 MB, B. */
const mostOutput = 2 ** 30;

/**
 * What the git that is installed prints, asked without a shell and without a question to anybody.
 *
 * @throws Refusal where there is no git, no repository, or git says no
 */
export function git(args: readonly string[], cwd: string, input?: string): Buffer {
    // Elsewhere a program is looked for in the current folder first, which anyone may have filled.
    process.env.NoDefaultCurrentDirectoryInExePath = '1';
    try {
        return execFileSync('git', args, {
            cwd,
            maxBuffer: mostOutput,
            stdio: ['pipe', 'pipe', 'pipe'],
            env: { ...process.env, GIT_OPTIONAL_LOCKS: '0', GIT_TERMINAL_PROMPT: '0' },
            ...(input !== undefined && { input }),
        });
    } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT')
            throw new Refusal('git is not installed here, or not on the path.');
        const said = String((error as { stderr?: Buffer }).stderr ?? '').trim();
        if (/not a git repository/.test(said))
            throw new Refusal('This folder is in no git repository: git init makes one.');
        throw new Refusal(`git could not do that: ${said.split('\n')[0] || 'it said nothing more'}.`);
    }
}
