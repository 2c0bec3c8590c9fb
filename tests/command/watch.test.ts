import { type ChildProcess, spawn } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { command, expectNoInsides, folderOf, misspelt, sound } from './layback.ts';

test('a change is checked, a file that comes or goes too, until it is interrupted, which is no failure', async () => {
    const cwd = folderOf({ 'a.spread': sound });
    const watching = watch(cwd);
    await watching.says(/1 file checked, nothing found/);

    writeFileSync(join(cwd, 'a.spread'), misspelt);
    await watching.says(/a\.spread\n {2}2:5 error unknown-word/);

    writeFileSync(join(cwd, 'b.spread'), sound);
    await watching.says(/1 error in 1 of 2 files/);

    rmSync(join(cwd, 'b.spread'));
    await watching.says(/1 error in 1 file/);

    rmSync(join(cwd, 'a.spread'));
    await watching.says(/There is no \.spread file/);

    writeFileSync(join(cwd, 'a.spread'), sound);
    await watching.says(/1 file checked, nothing found/);
    expect(await watching.interrupt()).toBe(0);
    expectNoInsides({ status: 0, ...watching.heard() });
});

test('a change of a file that is used from elsewhere is checked too', async () => {
    const use = 'use "../boat.spread"\nboat other like heron {\n    beam 3 m\n}\n';
    const cwd = folderOf({ '.git/HEAD': '', 'boat.spread': sound, 'plans/a.spread': use });
    const watching = watch(join(cwd, 'plans'));
    await watching.says(/1 file checked, nothing found/);
    writeFileSync(join(cwd, 'boat.spread'), sound.replace('heron', 'egret'));
    await watching.says(/unknown-name/);
    await watching.interrupt();
});

test('what is no plan, and what lies in folders that are passed over, starts nothing', async () => {
    const cwd = folderOf({ 'a.spread': sound, 'node_modules/x/y.spread': sound });
    const watching = watch(cwd);
    await watching.says(/nothing found/);
    writeFileSync(join(cwd, 'notes.txt'), 'x');
    writeFileSync(join(cwd, 'node_modules/x/y.spread'), misspelt);
    await new Promise((resolve) => setTimeout(resolve, 500));
    const before = watching.heard().stdout;
    writeFileSync(join(cwd, 'a.spread'), misspelt);
    await watching.says(/1 error/);
    expect(before).toBe('1 file checked, nothing found.\n');
    await watching.interrupt();
});

function watch(cwd: string) {
    const child: ChildProcess = spawn(process.execPath, [command, 'check', '--watch'], { cwd });
    onTestFinished(() => void child.kill('SIGKILL'));
    const heard = { stdout: '', stderr: '', both: '' };
    let read = 0;
    let wake = () => {};
    for (const stream of ['stdout', 'stderr'] as const) {
        child[stream]!.on('data', (piece) => {
            heard[stream] += piece;
            heard.both += piece;
            wake();
        });
    }
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));

    /** Waits until that is said, after whatever was waited for before. */
    const says = async (expected: RegExp): Promise<void> => {
        for (;;) {
            const found = expected.exec(heard.both.slice(read));
            if (found) {
                read += found.index + found[0].length;
                return;
            }
            await new Promise<void>((resolve) => {
                wake = resolve;
            });
        }
    };
    return {
        heard: () => heard,
        /** The same, and the end of that round. */
        says: async (expected: RegExp) => {
            await says(expected);
            await says(/Watching for changes/);
        },
        interrupt: (): Promise<number | null> => {
            child.kill('SIGINT');
            return ended;
        },
    };
}
