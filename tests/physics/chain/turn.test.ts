import { describe, expect, test } from 'vitest';
import { KNOT } from '../../../language/src/physics/constants.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';
import circular from '../reference/circular-tow.json' with { type: 'json' };
import turn from '../reference/u-turn.json' with { type: 'json' };
import fromAir from '../reference/u-turn-from-air.json' with { type: 'json' };
import { lineOf, statesOf } from './moored.ts';

/** Farthest that lure and middle stray from a reference run, m, and the top tension as a share. */
function against(given: (typeof turn.cases)[number], links: number) {
    const line = lineOf(given.params, given.fairlead_z, given.V, links);
    const manoeuvre = { speed: given.V, radius: given.R, side: 'port' as const, after: 60 };
    const rows = given.rows as number[][];
    const { states, end } = statesOf(
        line,
        manoeuvre,
        rows.map(([time]) => time!),
    );
    const apart = (point: Vec, row: number[], from: number) =>
        Math.hypot(point[0] - row[from]!, point[1] - row[from + 1]!, point[2] - row[from + 2]!);
    let lure = 0;
    let middle = 0;
    let fairlead = 0;
    let tension = 0;
    rows.forEach((row, index) => {
        const state = states[index]!;
        lure = Math.max(lure, apart(state.line.at(-1)!, row, 3));
        middle = Math.max(middle, apart(state.line[links / 2]!, row, 8));
        fairlead = Math.max(fairlead, Math.hypot(state.line[0]![0] - row[1]!, state.line[0]![1] - row[2]!));
        tension = Math.max(tension, Math.abs(state.tension - row[6]!) / row[6]!);
    });
    return { lure, middle, fairlead, tension, evaluations: (end.evaluations / rows.at(-1)![0]!) * 60 };
}

describe('a half turn wholly in water, against the mooring code', () => {
    test.each(turn.cases)('$name: within 5 cm with 20 links, within 2 cm with 40', (given) => {
        const coarse = against(given, 20);
        const fine = against(given, 40);
        expect(coarse.lure).toBeLessThan(0.05);
        expect(coarse.middle).toBeLessThan(0.05);
        expect(fine.lure).toBeLessThan(0.02);
        expect(fine.middle).toBeLessThan(0.02);
        for (const { fairlead, tension } of [coarse, fine]) {
            expect(fairlead).toBeLessThan(1e-3); // the same boat
            expect(tension).toBeLessThan(0.02); // theirs is of the last segment’s middle, half a segment lower
        }
    });

    test('20 links come within 1 cm of the mooring code’s 60 segments', () => {
        expect(against(turn.cases[1]!, 20).lure).toBeLessThan(0.01);
    });
});

describe('a half turn from a clip 6 m up, against the mooring code', () => {
    // Its own two runs, of 20 and 60 segments, lie 5 cm apart: it takes the surface by nodes.
    test('20 links stay within 2 cm of its 60 segments, the tension within 2 %', () => {
        const { lure, tension } = against(fromAir.cases[1]! as (typeof turn.cases)[number], 20);
        expect(lure).toBeLessThan(0.02);
        expect(tension).toBeLessThan(0.02);
    });

    test('and within 10 cm of its 20', () => {
        const { lure } = against(fromAir.cases[0]! as (typeof turn.cases)[number], 20);
        expect(lure).toBeLessThan(0.1);
    });
});

describe('a held circle, against a boundary-value solver and the mooring code', () => {
    test.each(circular.cases)('$name, $N links', (given) => {
        const { V, R, N, params, moordyn } = given;
        const [ode] = given.ode_elastic;
        const end = Math.min(given.t_end, (8 * Math.PI * R) / V - 1); // four turns at most
        const line = { ...lineOf(params, -1, V, N), step: 0.2 };
        const manoeuvre = {
            speed: V,
            radius: R,
            side: 'port' as const,
            angle: (V / R) * (end + 1),
            after: 0,
        };
        const { states } = statesOf(line, manoeuvre, [end - 10, end]);
        for (const { line: nodes, speed, tension, lureTension, time } of states) {
            const [x, y, z] = nodes.at(-1)!;
            expect(Math.hypot(x, y - R)).toBeCloseTo(moordyn.lure_radius, 1);
            expect(Math.abs(Math.hypot(x, y - R) - ode!.rb)).toBeLessThan(0.02);
            // Lag: the angle by which the lure stays behind the tow point on its circle.
            const lag = (V / R) * time - Math.atan2(x, R - y);
            const turned = Math.abs(Math.atan2(Math.sin(lag), Math.cos(lag)));
            expect(Math.abs((turned * 180) / Math.PI - ode!.lag_deg)).toBeLessThan(0.1);
            expect(-1 - z).toBeCloseTo(ode!.depth_below_fairlead, 2);
            expect(speed / ode!.body_speed).toBeCloseTo(1, 2);
            expect(tension / ode!.T_top).toBeCloseTo(1, 2);
            expect(lureTension / ode!.T_lure).toBeCloseTo(1, 1);
        }
    });
});

describe('what it costs', () => {
    const rigger = {
        towPoint: [2, 6, 6.5] as const,
        layback: 40,
        tow: {
            sections: [
                { length: 4.2, diameter: 1.8e-3, density: 1140 },
                { length: 60, diameter: 0.9e-3, density: 1140 },
            ] as const,
            lure: { dragArea: 0.003, mass: 0.3, weightInWater: 1.5 },
        },
    };
    const sixty = Array.from({ length: 121 }, (_, index) => index / 2);
    const half = { speed: 8 * KNOT, radius: 50, side: 'port' as const };

    test('a minute of one line with 20 links takes no more than 60,000 nodes put in balance', () => {
        expect(statesOf(rigger, half, sixty).end.evaluations).toBeLessThan(60_000);
        const water = lineOf(turn.cases[0]!.params, -1, 4);
        expect(statesOf(water, { ...half, radius: 30 }, sixty).end.evaluations).toBeLessThan(60_000);
    });

    test('and, once warm, no more than 20 ms', () => {
        const times = Array.from({ length: 25 }, () => {
            const start = process.cpuUsage().user;
            statesOf(rigger, half, sixty);
            return (process.cpuUsage().user - start) / 1000;
        });
        expect(Math.min(...times)).toBeLessThan(20);
    });
});
