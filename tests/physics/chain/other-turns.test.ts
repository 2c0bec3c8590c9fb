import { describe, expect, test } from 'vitest';
import type { Vec } from '../../../language/src/physics/vector.ts';
import turns from '../reference/other-turns.json' with { type: 'json' };
import { followed, type Turn } from './beads.ts';
import { lineOf, statesOf } from './moored.ts';

const apart = (a: readonly number[], b: readonly number[]) =>
    Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);

describe('turns that no mooring code was asked for, against beads on springs that ODEX follows', () => {
    test.each(turns.cases)(
        '$name: within 5 cm with 20 links, within 2 cm with 40',
        ({ params, turn, rows }) => {
            const { height, speed, radius, side, angle } = turn as Turn;
            const times = rows.map(({ time }) => time);
            for (const [links, within] of [
                [20, 0.05],
                [40, 0.02],
            ] as const) {
                const line = lineOf(params, height, speed, links);
                const { states } = statesOf(line, { speed, radius, side, angle, after: 30 }, times);
                for (const [index, { line: nodes }] of states.entries()) {
                    expect(apart(nodes.at(-1)!, rows[index]!.lure)).toBeLessThan(within);
                    expect(apart(nodes[links / 2]!, rows[index]!.middle)).toBeLessThan(within);
                }
            }
        },
    );

    // Forty beads take a minute; twelve show that the rows are what the beads do.
    const slow = process.env.SLOW === 'yes';
    test.each(slow ? turns.cases : turns.cases.slice(0, 1))(
        'the rows of $name are what the beads do',
        ({ params, turn, rows }) => {
            const times = rows.map(({ time }) => time);
            const found = followed(params, turn as Turn, slow ? 40 : 12, times);
            for (const [index, { lure, middle }] of found.entries()) {
                expect(apart(lure as Vec, rows[index]!.lure)).toBeLessThan(slow ? 1e-3 : 0.06);
                expect(apart(middle as Vec, rows[index]!.middle)).toBeLessThan(slow ? 1e-3 : 0.06);
            }
        },
        240_000,
    );
});
