import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderOf, layback } from './layback.ts';

const plans = `
boat dunlin "Dunlin" { length 10.8 m  beam 3.6 m }
lure bell "Bell" pusher { length 330 mm }
lure rope "Rope" slant { length 210 mm }
species drake "Drake" { speed 6 kn to 9 kn }
rules gala "Gala" { lines in 07:00  lines out 15:00  call in "angler and fish on channel 72" }
spread day "Day" {
    boat dunlin
    target drake
    event gala
    speed 8 kn
    port short corner { lure bell  back 12 m }
    shotgun { lure rope  back 60 m }
    centre standby { lure rope }
}
spread late like day { speed 7 kn }
`;

const log = (body: string, date = '2026-05-02') =>
    `use "plans.spread"\nlog ${date} "Gala" {\n    using day from 07:00\n${body}\n}\n`;

const first = log(`
    using late from 12:00
    at 07:30 raise shotgun
    at 08:00 bite port short corner
    at 09:00 bite port short corner hooked lost "hook pulled" by "Wren" place "the hump"
    at 13:00 hooked released drake 14 kg port short corner by "Oba" speed 9 kn`);

function season(files: Record<string, string>, ...args: string[]) {
    return layback(['season', ...args], { cwd: folderOf({ 'plans.spread': plans, ...files }) });
}

describe('a season', () => {
    test('counts each fish for what it came to, and says how far a rate can be trusted', () => {
        const { stdout, stderr, status } = season(
            { 'logs/a.spread': first.replace('plans', '../plans') },
            '--by',
            'position',
        );
        expect([stderr, status]).toEqual(['', 0]);
        expect(stdout).toContain(
            'One day, 2026-05-02: 4 raised, 3 bit, 2 hooked, 1 to the boat (1 released, 0 landed).',
        );
        expect(stdout).toMatch(
            /^port short corner +3 +3 +2 of 3, 67 % \(9 to 99\) +1 of 2, 50 % \(1 to 99\) +8\.0 h +3\.8 \(0\.8 to 11\.0\)$/m,
        );
        // Fished for eight hours and bitten by nothing: that, too, is told. What stands by is not fished.
        expect(stdout).toMatch(/^shotgun +1 +0 +8\.0 h +0\.0 \(0\.0 to 4\.6\)$/m);
        expect(stdout).not.toContain('standby');
        expect(stdout).toContain('A season tells what happened, not why');
    });

    test('counts by the speed of the hour, which an event may say itself', () => {
        const { stdout } = season({ 'a.spread': first }, '--by', 'speed');
        expect(
            [...stdout.matchAll(/^(\d+ kn to \d+ kn) +(\d+) +(\d+)/gm)].map((row) => row.slice(1)),
        ).toEqual([
            ['8 kn to 9 kn', '3', '2'],
            ['9 kn to 10 kn', '1', '1'],
        ]);
    });

    test('counts no hours where nobody said from when or until when', () => {
        const open = log('    at 08:00 bite shotgun').replace(' from 07:00', '');
        const { stdout } = season({ 'a.spread': open }, '--by', 'position');
        expect(stdout).toMatch(/^shotgun +1 +1 +0 of 1, 0 % \(0 to 97\)$/m);
        expect(stdout).not.toMatch(/ h$/m);
    });

    test('puts days into their order, and tells that there is none', () => {
        const files = { 'b.spread': log('', '2026-05-03'), 'a.spread': log('', '2026-05-01') };
        expect(season(files).stdout).toContain('2 days, 2026-05-01 to 2026-05-03: 0 raised');
        expect(season({}).stderr).toContain('There is no log in what was named');
    });
});

test('a log that cannot be read to the end is told of, and the rest counts', () => {
    const { stdout, stderr } = season({
        'a.spread': first,
        'b.spread': log('    at 08:00 bite shotgun\n    at', '2026-05-03'),
    });
    expect(stderr).toBe(
        'layback: One file could not be read to the end, so events may be missing: layback check says which.\n',
    );
    expect(stdout).toContain('2 days, 2026-05-02 to 2026-05-03: 5 raised');
});

describe('places', () => {
    test('are in nothing unless they are asked for by name', () => {
        const files = { 'a.spread': first };
        const outputs = [[], ['--calls'], ['-f', 'csv'], ['-f', 'json']].map(
            (args) => season(files, ...args).stdout,
        );
        for (const output of outputs) expect(output).not.toContain('hump');
        for (const format of ['csv', 'json'])
            expect(season(files, '-f', format, '--with-places').stdout).toContain('the hump');
        expect(season(files, '--with-places').stderr).toBe(
            'layback: --with-places belongs to --format csv or json.\n',
        );
    });

    test('are not in a picture either, which has the record of each position', () => {
        const cwd = folderOf({ 'plans.spread': plans, 'a.spread': first });
        const { stderr } = layback(['season', '--picture', 's.svg', '--plan', 'day'], { cwd });
        expect(stderr).toBe('s.svg\n');
        const svg = readFileSync(join(cwd, 's.svg'), 'utf8')
            .replace(/<[^>]+>/g, ' ')
            .replace(/\s+/g, ' ');
        expect(svg).toContain('3 raised, 3 bit, 2 hooked');
        expect(svg).not.toContain('hump');
        expect(layback(['season', '--picture', 's.svg', '--plan', 'dey'], { cwd }).stderr).toBe(
            'layback: No log used a spread dey. Did you mean day?\n',
        );
    });
});

test('the call-in list tells when, who, which fish and what became of it', () => {
    const { stdout } = season({ 'a.spread': first }, '--calls');
    expect(stdout).toContain('Call in: angler and fish on channel 72');
    expect(stdout.split('\n').slice(1, 4)).toEqual([
        'Time   Angler  Fish           Outcome',
        '09:00  Wren    no fish named  hooked, lost: hook pulled',
        '13:00  Oba     drake          hooked, released',
    ]);
});

test('CSV is a row an event, and no cell of it is computed by a spreadsheet', () => {
    const { stdout } = season(
        { 'a.spread': log('    at 08:00 bite shotgun by "=1+1" note "one, two"') },
        '-f',
        'csv',
    );
    const [head, row, ...more] = stdout.split('\r\n');
    expect(head!.split(',').slice(0, 5)).toEqual(['date', 'time', 'zone', 'plan', 'position']);
    expect(row).toContain("'=1+1");
    expect(row).toMatch(/,"one, two"$/);
    expect(more).toEqual(['']);
});

test('JSON has each rate with what it is of', () => {
    const report = JSON.parse(season({ 'a.spread': first }, '-f', 'json').stdout);
    expect(report.total).toMatchObject({ bit: 3, hooked: 2, hookedOfBites: { hits: 2, of: 3 } });
    expect(report.groups.lure).toEqual(
        expect.arrayContaining([expect.objectContaining({ of: 'bell', bit: 3, boated: 1 })]),
    );
    expect(report.events).toHaveLength(4);
});
