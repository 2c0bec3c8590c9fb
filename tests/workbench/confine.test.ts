import { mkdir, mkdtemp, realpath, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { confine } from './confine.ts';
import { Refusal } from './refusal.ts';

describe('a path is confined to its folder', () => {
    let outside: string;
    let root: string;
    beforeAll(async () => {
        outside = await realpath(await mkdtemp(path.join(tmpdir(), 'confine-')));
        root = path.join(outside, 'plans');
        await mkdir(path.join(root, 'trips'), { recursive: true });
        await writeFile(path.join(root, 'trips/a.tally'), 'scad\n');
        await writeFile(path.join(outside, 'secret'), 'secret\n');
        await symlink('trips', path.join(root, 'inner'));
        await symlink('..', path.join(root, 'outer'));
        await symlink('../secret', path.join(root, 'secret'));
        await symlink('../nowhere', path.join(root, 'broken'));
        await symlink('round', path.join(root, 'round'));
        // A folder beside the root whose name begins like it.
        await mkdir(path.join(outside, 'plans-of-others'));
        await symlink('../plans-of-others', path.join(root, 'neighbour'));
    });
    afterAll(() => rm(outside, { recursive: true }));

    test.each([
        ['', ''],
        ['/', ''],
        ['/trips/a.tally', 'trips/a.tally'],
        ['trips//a.tally/', 'trips/a.tally'],
        ['/trips/%61.tally', 'trips/a.tally'],
        ['/not/yet/there', 'not/yet/there'],
        ['/100%25%20sure', '100% sure'],
        ['/...', '...'],
        ['/inner/a.tally', 'trips/a.tally'],
        // Decoded once: what is left is a name, if an odd one.
        ['/%252e%252e', '%2e%2e'],
    ])('%s stays within, as %s', async (asked, named) => {
        expect(await confine(root, asked)).toBe(path.join(root, named));
    });

    test.each([
        ['/..', 403],
        ['/../secret', 403],
        ['/trips/../../secret', 403],
        ['/%2e%2e/secret', 403],
        ['/.%2E/secret', 403],
        ['/trips/..%2f..%2fsecret', 400],
        ['/%2fetc%2fpasswd', 400],
        ['/..%5csecret', 400],
        ['/trips%00.png', 400],
        ['/%', 400],
        ['/%c0%ae%c0%ae/secret', 400],
        ['/./trips', 400],
        ['/outer', 403],
        ['/outer/secret', 403],
        ['/outer/plans/trips', 403],
        ['/secret', 403],
        ['/broken', 403],
        ['/broken/further', 403],
        ['/round', 403],
        ['/neighbour', 403],
    ])('%s is refused', async (asked, status) => {
        await expect(confine(root, asked)).rejects.toMatchObject({ status, fault: 'NoPermissions' });
    });

    test('a link can be named itself, to delete it, but not passed through', async () => {
        expect(await confine(root, '/secret', 'keep')).toBe(path.join(root, 'secret'));
        await expect(confine(root, '/outer/secret', 'keep')).rejects.toThrow('a link out of the folder');
    });

    test('whatever is asked for, it is within or refused', async () => {
        const piece = fc.oneof(
            fc.constantFrom(
                '..',
                '.',
                '',
                'trips',
                'inner',
                'outer',
                'secret',
                'broken',
                'neighbour',
                'a.tally',
            ),
            fc.constantFrom('%2e%2e', '%2E.', '%2f', '%5c', '\\', '%00', '%', '%25', '~', '//'),
            fc.string({ maxLength: 5 }),
        );
        const asked = fc.array(
            fc.array(piece, { maxLength: 3 }).map((p) => p.join('')),
            { maxLength: 5 },
        );
        let within = 0;
        await fc.assert(
            fc.asyncProperty(asked, async (segments) => {
                try {
                    const place = await confine(root, segments.join('/'));
                    expect(place === root || place.startsWith(root + path.sep)).toBe(true);
                    within++;
                } catch (error) {
                    expect(error).toBeInstanceOf(Refusal);
                }
            }),
            { numRuns: 1000, seed: 20260214 },
        );
        expect(within).toBeGreaterThan(100);
    });
});
