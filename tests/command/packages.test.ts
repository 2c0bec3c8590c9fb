import { mkdirSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderOf, layback } from './layback.ts';

const gear = 'lure lamp "Lamp" jet { length 240 mm }\n';
const user = `use "package:reef-pack/gear.spread"
spread day "Our day" {
    rule incomplete { severity off }
    shotgun { lure lamp  back 60 m }
}
`;
const manifest = JSON.stringify({ name: 'reef-pack', version: '1.4.0' });
const pack = { 'package.json': manifest, 'gear.spread': gear };
const under = (folder: string) =>
    Object.fromEntries(Object.entries(pack).map(([name, text]) => [`${folder}/${name}`, text]));
const said = (cwd: string, ...more: string[]) =>
    layback(['check', 'plans', '--rule', 'use', '--format', 'lines', ...more], { cwd });

/** A team's folder in one folder with a package that is somewhere else. */
function linked() {
    const both = folderOf({ 'team/plans/day.spread': user, 'team/.git/HEAD': '', ...under('elsewhere') });
    mkdirSync(join(both, 'team/node_modules'));
    symlinkSync(join(both, 'elsewhere'), join(both, 'team/node_modules/reef-pack'), 'junction');
    return join(both, 'team');
}

describe('a package', () => {
    test('is read from where it is installed, and its version stands on the card', () => {
        const cwd = folderOf({
            'plans/day.spread': user,
            '.git/HEAD': '',
            ...under('node_modules/reef-pack'),
        });
        expect(said(cwd)).toMatchObject({ status: 0, stdout: '' });
        expect(layback(['brief', 'plans/day.spread'], { cwd }).stdout).toContain('reef-pack 1.4.0');
        // Where Node itself would find it.
        expect(createRequire(join(cwd, 'plans/day.spread')).resolve('reef-pack/gear.spread')).toBe(
            join(cwd, 'node_modules/reef-pack/gear.spread'),
        );
    });

    test('that is not installed is missed', () => {
        const cwd = folderOf({ 'plans/day.spread': user, '.git/HEAD': '' });
        expect(said(cwd).stdout).toContain('The package `reef-pack` is not installed in this folder.');
    });

    test('without that file says which it has', () => {
        const cwd = folderOf({
            'plans/day.spread': user,
            '.git/HEAD': '',
            'node_modules/reef-pack/lures.spread': gear,
        });
        expect(said(cwd).stdout).toContain(
            'is not in the package `reef-pack` that is installed here; it has lures.spread.',
        );
    });

    test('that is linked from outside of the folder is refused, unless that is allowed', () => {
        const cwd = linked();
        expect(said(cwd).stdout).toContain('is of a package linked from outside the folder `team`.');
        expect(said(cwd).stdout).toContain('`--linked-packages`');
        expect(said(cwd, '--linked-packages')).toMatchObject({ status: 0, stdout: '' });
    });

    test('that is linked from within the folder is like any other', () => {
        const cwd = folderOf({ 'plans/day.spread': user, '.git/HEAD': '', ...under('packs/reef') });
        mkdirSync(join(cwd, 'node_modules'));
        symlinkSync(join(cwd, 'packs/reef'), join(cwd, 'node_modules/reef-pack'), 'junction');
        expect(said(cwd)).toMatchObject({ status: 0, stdout: '' });
    });

    test('is not checked itself: it is for its own authors to mend', () => {
        const cwd = folderOf({
            'plans/day.spread': user,
            '.git/HEAD': '',
            'node_modules/reef-pack/gear.spread': `${gear}lure broken { lenth 3 m }\n`,
        });
        expect(layback(['check', '--format', 'lines'], { cwd }).stdout).not.toContain('lenth');
    });
});
