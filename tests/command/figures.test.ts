import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { command, folderOf, layback } from './layback.ts';

/** A team whose lines are clipped and struck with a drop-back. */
function team(): string {
    const cwd = folderOf();
    layback(['new', '.'], { cwd });
    const path = join(cwd, 'plans/first.spread');
    const plan = readFileSync(path, 'utf8').replace('method our-strike', 'method method-under-test');
    writeFileSync(
        path,
        `${plan}\nmethod method-under-test { style drop-back  set 1.5 kg  loop 1.2 m  wait 4 s  hooked 6 kg  clip 3.5 kg }\n`,
    );
    return cwd;
}

const figures = (...args: string[]) => layback(['figures', 'plans/first.spread', ...args], { cwd: team() });

const valid = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(
    closed(JSON.parse(readFileSync(join(command, '../figures.schema.json'), 'utf8'))) as object,
);

/** A schema in which every object holds what it describes and nothing else. */
function closed(schema: unknown): unknown {
    if (Array.isArray(schema)) return schema.map(closed);
    if (typeof schema !== 'object' || schema === null) return schema;
    const inside = Object.fromEntries(Object.entries(schema).map(([name, each]) => [name, closed(each)]));
    return 'properties' in inside && 'type' in inside ? { ...inside, additionalProperties: false } : inside;
}

describe('figures of a strike', () => {
    test('tell the key moments of every line, as planned and the other way', () => {
        const { status, stdout } = figures();
        expect(status).toBe(0);
        const peak = '~[\\d.]+ kg \\([\\d.]+ kg to [\\d.]+ kg\\)$';
        expect(stdout).toMatch(new RegExp(`^port long rigger +at once +\\d\\.\\d .* ${peak}`, 'm'));
        expect(stdout).toMatch(
            new RegExp(`^port long rigger +with drop-back, as planned +\\d\\.\\d .* ${peak}`, 'm'),
        );
        expect(stdout).not.toContain('A bite on the');
    });

    test('moment by moment where one is asked for: ten seconds, both ways', () => {
        const { stdout } = figures('--strike', 'port long rigger');
        for (const way of ['struck at once', 'with drop-back']) {
            const rows = stdout
                .split(`A bite on the port long rigger, ${way}\n`)[1]!
                .split('\n\n')[0]!
                .split('\n');
            expect(rows).toHaveLength(22);
            expect(rows[1]).toMatch(/^ 0\.0 /);
            expect(rows[21]).toMatch(/^10\.0 /);
        }
    });

    test('as JSON hold every 0.05 s of the one that was asked for, and follow the schema', () => {
        const report = JSON.parse(figures('--json', '--strike', 'port long rigger').stdout);
        expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
        const bites = report.plans[0].lines.map(
            ({
                position,
                strikes,
            }: {
                position: string;
                strikes: Record<string, { value: { series?: [] } }>;
            }) => [position, strikes.dropBack!.value.series?.length],
        );
        expect(bites).toContainEqual(['port long rigger', 201]);
        expect(bites).toContainEqual(['port short corner', undefined]);
    });

    test('at a position that is not there name the one that was meant', () => {
        const { status, stdout, stderr } = figures('--strike', 'port long riger');
        expect([status, stdout]).toEqual([2, '']);
        expect(stderr).toBe(
            'layback: Nothing is fished at port long riger. Did you mean port long rigger?\n',
        );
    });
});

describe('figures of handling', () => {
    test('tell in which order to set, to take in and, after a strike at each position, to clear, with the reasons', () => {
        const { stdout } = figures();
        expect(stdout).toMatch(/^Set in this order: port long rigger, /m);
        expect(stdout).toMatch(/^Take in in this order: port short corner, /m);
        expect(stdout).toMatch(
            /^Set port long rigger before port short corner: paying out, .* would sweep across\.$/m,
        );
        for (const at of [
            'port short corner',
            'starboard long corner',
            'starboard short rigger',
            'port long rigger',
        ])
            expect(stdout).toMatch(
                new RegExp(`^With a fish on ${at}, clear \\w.* \\(.*\\), then .*\\.$`, 'm'),
            );
    });
});

describe('what the tightest turns hang on', () => {
    test('is worked out when it is asked for, and told in metres', () => {
        const { stdout } = figures('--sensitivity');
        const table = stdout.split('What one change would make')[1]!;
        expect(table).toMatch(/^as it is +~\d+(\.\d)? m /m);
        expect(table).toMatch(/^starboard long corner 1 m further back +.*\((\+|−)\d/m);
        expect(table).toMatch(/^without starboard long corner /m);
        expect(figures().stdout).not.toContain('What one change');
    });

    test('as JSON follows the schema', () => {
        const report = JSON.parse(figures('--json', '--sensitivity').stdout);
        expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
        const { now, changes } = report.plans[0].sensitivity.value;
        expect(changes).toHaveLength(2 * 4 + 4 + 6 + 6);
        expect(now.port.noFoul.radius).toBeCloseTo(report.plans[0].turns.value.port.noFoul.radius, -0.5);
    });
});
