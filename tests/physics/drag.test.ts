import fc from 'fast-check';
import { expect, test } from 'vitest';
import { STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import {
    type DragQuestion,
    dragOverSpool,
    pullOfLine,
    spoolRadius,
} from '../../language/src/physics/drag.ts';
import published from './reference/coefficients.json' with { type: 'json' };

/** An arbor of half the full diameter, as in the worked values. */
const halfArbor = { fullRadius: 0.05, arborRadius: 0.025, capacity: 800 };

const answerTo = (question: DragQuestion) => {
    const answer = dragOverSpool(question);
    if (answer.kind !== 'drag') throw new Error(answer.reason);
    return answer;
};

test('on an arbor of half the diameter the drag grows × 1.11, 1.26, 1.51 and 2 as the spool empties', () => {
    const { rows } = answerTo({ spool: halfArbor, setting: 100 });
    const expected = [1, 1 / Math.sqrt(0.8125), 1 / Math.sqrt(0.625), 1 / Math.sqrt(0.4375), 2];
    rows.forEach(({ force }, index) => {
        expect(force / 100).toBeCloseTo(expected[index]!, 12);
        expect(Math.abs(force / 100 - [1, 1.11, 1.26, 1.51, 2][index]!)).toBeLessThan(0.006);
    });
});

test('70 % of class at the full setting is 106 % at a quarter of the spool', () => {
    const lineClass = 24 * STANDARD_GRAVITY;
    const { rows } = answerTo({ spool: halfArbor, setting: 0.7 * lineClass, lineClass });
    expect(rows[3]!.fraction).toBe(0.25);
    expect(rows[3]!.ofClass).toBeCloseTo(1.058, 3);
});

test('the radius left after 200 m, and the drag it makes, agree with the filling of the spool by volume', () => {
    // Line packed with a filling factor takes eta·w·(D² − d²)/d_line² metres.
    const { D_m, d0_m, w_m, d_line, eta, L_m, r_after_200m, tension_ratio } = published.find(
        ({ quantity }) => quantity === 'Spool capacity',
    )!.example as unknown as Record<string, number>;
    const capacity = (eta! * w_m! * (D_m! ** 2 - d0_m! ** 2)) / d_line! ** 2;
    expect(capacity).toBeCloseTo(L_m!, 1);
    const spool = { fullRadius: D_m! / 2, arborRadius: d0_m! / 2, capacity };
    expect(spoolRadius(spool, capacity - 200)).toBeCloseTo(r_after_200m!, 4);
    const { afterRun } = answerTo({ spool, setting: 60, run: 200 });
    expect(afterRun).not.toBe('spooled');
    if (afterRun !== 'spooled') expect(afterRun.force / 60).toBeCloseTo(tension_ratio!, 3);
});

test('14 lb of drag gains about half a pound per 100 yards, less at first and more at last, as two reels did', () => {
    // Sport Fishing, "Drag Test - Crunching the Numbers" (2011), 30 lb nylon; the reels' spools are not given, this
    // is one of ordinary size.
    const spool = { fullRadius: 0.042, arborRadius: 0.027, capacity: 750 };
    const force = (yards: number) => (14 * 0.042) / spoolRadius(spool, 750 - yards * 0.9144)!;
    const gains = [100, 200, 300, 400].map((yards) => force(yards) - force(yards - 100));
    for (const [index, gain] of gains.entries()) {
        expect(gain).toBeGreaterThan(index === 0 ? 0.4 : gains[index - 1]!);
        expect(gain).toBeLessThan(1);
    }
});

test('a run of 400 m is expected unless the plan says another, and one longer than the spool empties it', () => {
    const { afterRun } = answerTo({ spool: halfArbor, setting: 100 });
    expect(afterRun).toMatchObject({ left: 400, fraction: 0.5 });
    expect(answerTo({ spool: halfArbor, setting: 100, run: 801 }).afterRun).toBe('spooled');
});

test('a drag measured on a half-empty spool is less on the full one', () => {
    const { rows } = answerTo({ spool: halfArbor, setting: 100, measuredWith: 400 });
    expect(rows[2]!.force).toBeCloseTo(100, 10);
    expect(rows[0]!.force).toBeCloseTo(100 * Math.sqrt(0.625), 10);
});

test('line in the water adds a range at the fish, nothing on a full spool, and goes with length and diameter', () => {
    const { rows } = answerTo({ spool: halfArbor, setting: 100, diameter: 0.9e-3 });
    expect(rows[0]!.atFish).toEqual({ low: rows[0]!.force, high: rows[0]!.force });
    expect(rows[2]!.atFish!.high).toBeGreaterThan(rows[2]!.atFish!.low);
    // ½ · 1025 · π · 0.9 mm · 400 m · 0.004 · (1.2 m/s)², by hand.
    expect(rows[2]!.atFish!.low - rows[2]!.force).toBeCloseTo(3.339, 3);
    expect(pullOfLine(1e-3, 200).high * 2).toBeCloseTo(pullOfLine(1e-3, 400).high, 10);
    expect(answerTo({ spool: halfArbor, setting: 100 }).rows[2]!.atFish).toBeUndefined();
});

test('a spool that cannot be, or a drag that is none, is named', () => {
    expect(dragOverSpool({ spool: { ...halfArbor, arborRadius: 0.05 }, setting: 100 }).kind).toBe(
        'bad-spool',
    );
    expect(dragOverSpool({ spool: { ...halfArbor, capacity: 0 }, setting: 100 }).kind).toBe('bad-spool');
    expect(dragOverSpool({ spool: halfArbor, setting: 100, measuredWith: 900 }).kind).toBe('bad-setting');
    expect(dragOverSpool({ spool: halfArbor, setting: 0 }).kind).toBe('bad-setting');
    expect(dragOverSpool({ spool: halfArbor, setting: 100, run: -1 }).kind).toBe('bad-setting');
});

test('whatever the reel, the drag never falls as line goes, and the same reel in other units behaves the same', () => {
    const spools = fc
        .record({
            arborRadius: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
            depth: fc.double({ min: 0.001, max: 0.1, noNaN: true }),
            capacity: fc.double({ min: 10, max: 3000, noNaN: true }),
        })
        .map(({ arborRadius, depth, capacity }) => ({
            arborRadius,
            fullRadius: arborRadius + depth,
            capacity,
        }));
    fc.assert(
        fc.property(spools, fc.double({ min: 1, max: 500, noNaN: true }), (spool, setting) => {
            const { rows } = answerTo({ spool, setting });
            rows.slice(1).forEach(({ force }, index) => {
                expect(force).toBeGreaterThan(rows[index]!.force);
            });
            expect(rows[4]!.force).toBeCloseTo((setting * spool.fullRadius) / spool.arborRadius, 6);
            const inches = {
                arborRadius: spool.arborRadius / 0.0254,
                fullRadius: spool.fullRadius / 0.0254,
                capacity: spool.capacity / 0.0254,
            };
            expect(answerTo({ spool: inches, setting }).rows[2]!.force / rows[2]!.force).toBeCloseTo(1, 9);
        }),
    );
});
