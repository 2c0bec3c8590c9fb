import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
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

    // As editors save: another file takes the name of the old one.
    writeFileSync(join(cwd, 'boat.spread~'), sound);
    renameSync(join(cwd, 'boat.spread~'), join(cwd, 'boat.spread'));
    await watching.says(/nothing found/);

    rmSync(join(cwd, 'boat.spread'));
    await watching.says(/boat\.spread/);
    writeFileSync(join(cwd, 'boat.spread'), sound);
    await watching.says(/nothing found/);
    await watching.interrupt();
});

test('a folder that comes later is looked into, and one file that was named is watched alone', async () => {
    const cwd = folderOf({ 'a.spread': sound });
    const folder = watch(cwd);
    const file = watch(cwd, 'a.spread');
    await folder.says(/1 file checked, nothing found/);
    await file.says(/1 file checked, nothing found/);

    mkdirSync(join(cwd, 'plans/later'), { recursive: true });
    writeFileSync(join(cwd, 'plans/later/b.spread'), misspelt);
    await folder.says(/1 error in 1 of 2 files/);
    const before = file.heard().stdout;
    writeFileSync(join(cwd, 'a.spread'), misspelt);
    await folder.says(/2 errors in 2 of 2 files/);
    await file.says(/1 error in 1 file/);
    expect(before).toBe('1 file checked, nothing found.\n');
    expect(await folder.interrupt()).toBe(0);
    expect(await file.interrupt()).toBe(0);
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

/** Either may arrive before the other, whichever was written first. */
const streams = ['stdout', 'stderr'] as const;

/** How long anything is waited for, in ms; a machine with much to do is slow. */
const patience = 20_000;

function watch(cwd: string, ...paths: string[]) {
    const child: ChildProcess = spawn(process.execPath, [command, 'check', '--watch', ...paths], { cwd });
    onTestFinished(() => void child.kill('SIGKILL'));
    const heard = { stdout: '', stderr: '' };
    const read = { stdout: 0, stderr: 0 };
    let wake = () => {};
    for (const stream of streams) {
        child[stream]!.on('data', (piece) => {
            heard[stream] += piece;
            wake();
        });
    }
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));

    /** Waits until one of the streams says that, after whatever was waited for there before. */
    const says = async (expected: RegExp): Promise<void> => {
        const giveUp = setTimeout(() => wake(), patience);
        for (const since = Date.now(); ; ) {
            for (const stream of streams) {
                const found = expected.exec(heard[stream].slice(read[stream]));
                if (!found) continue;
                read[stream] += found.index + found[0].length;
                clearTimeout(giveUp);
                return;
            }
            if (Date.now() - since >= patience) {
                const rest = streams.map((stream) => heard[stream].slice(read[stream]));
                throw new Error(`${expected} was not said, only: ${rest.join('\n')}`);
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
