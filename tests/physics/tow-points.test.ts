import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Outrigger, polePoint, type RodHolder, rodTip } from '../../language/src/physics/tow-points.ts';
import { norm, subtract, type Vec } from '../../language/src/physics/vector.ts';

const DEGREE = Math.PI / 180;
const pole: Outrigger = {
    foot: { ahead: 3.1, out: 1.7, up: 2.3 },
    length: 6.4,
    rise: 45 * DEGREE,
    sweep: 70 * DEGREE,
};
const holder: RodHolder = { foot: { ahead: 0.4, out: 1.5, up: 1 }, lean: 15 * DEGREE };

function expectPoint(point: Vec | undefined, [x, y, z]: Vec) {
    expect(point![0]).toBeCloseTo(x, 9);
    expect(point![1]).toBeCloseTo(y, 9);
    expect(point![2]).toBeCloseTo(z, 9);
}

test('a tip reaches out by length × cos rise × sin sweep beyond the foot', () => {
    // The rule a crew uses, with half the beam for the foot.
    const tip = polePoint(pole, 6.4, 'port')!;
    expect(tip[1]).toBeCloseTo(6.4 * Math.cos(45 * DEGREE) * Math.sin(70 * DEGREE) + 1.7, 12);
    expect(tip[2]).toBeCloseTo(2.3 + 6.4 * Math.SQRT1_2, 12);
});

test('rise is from the horizontal, sweep from dead ahead outboard', () => {
    const upright = { ...pole, rise: 90 * DEGREE };
    expectPoint(polePoint(upright, 6, 'port'), [3.1, 1.7, 8.3]);
    const squareOut = { ...pole, rise: 0, sweep: 90 * DEGREE };
    expectPoint(polePoint(squareOut, 6, 'port'), [3.1, 7.7, 2.3]);
    const aft = { ...pole, rise: 0, sweep: 180 * DEGREE };
    expectPoint(polePoint(aft, 3, 'starboard'), [0.1, -1.7, 2.3]);
});

test('lean is aft of upright, splay outboard of it', () => {
    expectPoint(rodTip({ ...holder, lean: 0 }, 1.3, 'port'), [0.4, 1.5, 2.3]);
    const { lean } = holder;
    expectPoint(rodTip(holder, 1.3, 'port'), [0.4 - 1.3 * Math.sin(lean), 1.5, 1 + 1.3 * Math.cos(lean)]);
    const splayed = { ...holder, lean: 0, splay: 30 * DEGREE };
    expectPoint(rodTip(splayed, 2, 'starboard'), [0.4, -2.5, 1 + Math.sqrt(3)]);
    // Half aft and half out at 45° seen each way: along (−1, 1, 1).
    const both = { ...holder, lean: 45 * DEGREE, splay: 45 * DEGREE };
    expectPoint(rodTip(both, Math.sqrt(3), 'port'), [-0.6, 2.5, 2]);
});

const angle = fc.double({ min: -1.5, max: 1.5, noNaN: true });
const metres = fc.double({ min: -20, max: 20, noNaN: true });
const foothold = fc.record({ ahead: metres, out: metres, up: metres });

test('a point is as far from the foot as along the pole or rod, and port mirrors starboard', () => {
    const rod = fc.record({ foot: foothold, lean: angle, splay: angle });
    const rigger = fc.record({ foot: foothold, length: fc.constant(12), rise: angle, sweep: angle });
    fc.assert(
        fc.property(rod, rigger, fc.double({ min: 0, max: 12, noNaN: true }), (holding, standing, along) => {
            for (const [foot, port, starboard] of [
                [holding.foot, rodTip(holding, along, 'port')!, rodTip(holding, along, 'starboard')!],
                [
                    standing.foot,
                    polePoint(standing, along, 'port')!,
                    polePoint(standing, along, 'starboard')!,
                ],
            ] as const) {
                expect(norm(subtract(port, [foot.ahead, foot.out, foot.up]))).toBeCloseTo(along, 9);
                expect(starboard).toEqual([port[0], -port[1], port[2]]);
            }
        }),
    );
});

test('a place beyond the pole or an angle out of range gives no point', () => {
    expect(polePoint(pole, 6.5, 'port')).toBeUndefined();
    expect(polePoint(pole, -0.1, 'port')).toBeUndefined();
    expect(polePoint({ ...pole, rise: 2 }, 3, 'port')).toBeUndefined();
    expect(polePoint({ ...pole, sweep: Number.NaN }, 3, 'port')).toBeUndefined();
    expect(polePoint({ ...pole, foot: { ahead: Number.NaN, out: 1, up: 1 } }, 3, 'port')).toBeUndefined();
    expect(rodTip({ ...holder, lean: 90 * DEGREE }, 1, 'port')).toBeUndefined();
    expect(rodTip(holder, -1, 'port')).toBeUndefined();
});
