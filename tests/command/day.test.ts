import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderOf, layback } from './layback.ts';

const examples = join(import.meta.dirname, '../../examples');
const file = 'days/2026-03-07.spread';

/** The example team, as a repository of its own. */
function team() {
    const cwd = folderOf({ '.git/HEAD': '' });
    cpSync(examples, cwd, { recursive: true });
    return cwd;
}

test('the example’s day is sound, and told with its plans out of another file', () => {
    const cwd = team();
    expect(layback(['check', file], { cwd })).toMatchObject({ status: 0 });
    const { stdout } = layback(['brief', file], { cwd });
    expect(stdout).toMatch(
        /^THE DAY: FIRST DAY OF THE OPEN, 2026-03-07\n\n- 07:30: Settled day on the bank\.\n/,
    );
    // At 7 kn wave 4 is nearer than at 8 kn.
    expect(stdout).toMatch(/wave 4 lies elsewhere at this speed, [\d.]+ m \(\d+ ft\) nearer; clip 4\.8 kg/);
    expect(stdout).toContain('\nSETTLED DAY ON THE BANK\n');
    expect(stdout).toContain('\nROUGH DAY ON THE BANK\n');
    expect(stdout).toContain('AT 12:30: OVER TO AFTERNOON, MIRRORED');
});

test('of a day every spread gets its card, with the way to the next on it', () => {
    const cwd = team();
    const { stdout, status } = layback(['card', file, '--as', 'html'], { cwd });
    expect(status).toBe(0);
    expect(stdout.trim().split('\n').sort()).toEqual([
        'days/2026-03-07-bank-afternoon.html',
        'days/2026-03-07-bank-rough.html',
        'days/2026-03-07-bank-settled.html',
    ]);
    const page = layback(['card', file, '--plan', 'bank-settled', '--as', 'html', '-o', '-'], { cwd }).stdout;
    expect(page).toContain('The day: First day of the Open, 2026-03-07');
    expect(page).toContain('Sea over 1.2 m: over to Rough day on the bank');
});

test('--plan leaves the day alone, and figures and pictures are of its plans', () => {
    const cwd = team();
    expect(layback(['brief', file, '--plan', 'bank-rough'], { cwd }).stdout).toMatch(
        /^ROUGH DAY ON THE BANK\n/,
    );
    expect(layback(['figures', file, '--plan', 'bank-rough'], { cwd }).stdout).toContain(
        'Rough day on the bank',
    );
    expect(layback(['draw', file, '--plan', 'bank-rough', '-o', '-'], { cwd }).stdout).toContain('<svg');
});
