import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { command, folderOf, layback } from './layback.ts';

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

test('figures of a day follow the schema, and every step of a change-over is there', () => {
    const cwd = team();
    const report = JSON.parse(layback(['figures', file, '--json'], { cwd }).stdout);
    const valid = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(
        JSON.parse(readFileSync(join(command, '../figures.schema.json'), 'utf8')),
    );
    expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
    const [day] = report.days;
    expect(day.hours).toEqual([
        { from: '07:30', plan: 'bank-settled' },
        { from: '12:30', plan: 'bank-afternoon' },
    ]);
    const rough = day.changeOvers.find(
        (each: { to: string; from: string }) => each.from === 'bank-settled' && each.to === 'bank-rough',
    );
    const steps = rough.steps as { kind: string; position?: string; fartherOut?: number }[];
    expect(steps.map(({ kind, position }) => `${kind} ${position ?? ''}`.trim())).toContain('in shotgun');
    // All that is counted in waves comes nearer at 7 kn: their length goes with the square of the speed, (7 / 8)² = 0.77.
    const before = report.plans.find((plan: { name: string }) => plan.name === 'bank-settled');
    const adjusted = steps.filter(({ kind }) => kind === 'adjust');
    expect(adjusted.length).toBe(4);
    for (const { position, fartherOut } of adjusted) {
        const { astern } = before.lines.find((line: { position: string }) => line.position === position);
        expect(1 + fartherOut! / astern.value).toBeCloseTo((7 / 8) ** 2, 1);
    }
    expect(layback(['figures', file], { cwd }).stdout).toContain(
        '\nTHE DAY: FIRST DAY OF THE OPEN, 2026-03-07\n',
    );
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
