import { expect, test } from 'vitest';
import { balance, tensionOf } from '../../../language/src/physics/chain/balance.ts';
import { layChain } from '../../../language/src/physics/chain/chain.ts';
import { roomFor } from '../../../language/src/physics/chain/motion.ts';
import { restChain } from '../../../language/src/physics/chain/rest.ts';
import { KNOT } from '../../../language/src/physics/constants.ts';
import { type LineQuestion, lineAtRest, type RestingLine } from '../../../language/src/physics/line.ts';
import straight from '../reference/straight-tow.json' with { type: 'json' };
import { lineOf } from './moored.ts';

function hung(question: LineQuestion, links: number, growth = 1) {
    const line = lineAtRest(question) as RestingLine;
    const chain = layChain(question, line.lineOut, links, growth)!;
    expect(restChain(chain, line.shape, question.speed)).toBe(true);
    return { line, chain, lure: Array.from(chain.now.x.slice(0, 3)) as [number, number, number] };
}

test.each(straight.cases)('$name: a chain of $N links rests where the mooring code’s does', (given) => {
    const { tow } = lineOf(given.params, -1, given.V);
    const question: LineQuestion = { ...tow, towPoint: [0, 0, -1], speed: given.V, length: { out: 30 } };
    const { chain, lure } = hung(question, given.N);
    expect(Math.abs(-lure[0] - given.moordyn.trail_x)).toBeLessThan(1e-3);
    expect(Math.abs(-1 - lure[2] - given.moordyn.lure_below_fairlead)).toBeLessThan(2e-3);
    expect(tensionOf(chain.links, chain.now, given.N - 1) / given.moordyn.T_seg_top).toBeCloseTo(1, 3);
    expect(tensionOf(chain.links, chain.now, 0) / given.moordyn.T_seg_lure).toBeCloseTo(1, 3);
    given.moordyn.line_shape_rel_fairlead_dx_dz_every_5th.forEach(([dx, dz], index, shape) => {
        const node = (given.N * index) / (shape.length - 1);
        expect(Math.abs(chain.now.x[3 * node]! - dx!)).toBeLessThan(2e-3);
        expect(Math.abs(chain.now.x[3 * node + 2]! + 1 - dz!)).toBeLessThan(2e-3);
    });
});

test('with ever more links the chain comes to the line’s own shape, with the square of their number', () => {
    const { params } = straight.cases[1]!;
    const { tow } = lineOf(params, -1, 3);
    const question: LineQuestion = { ...tow, towPoint: [0, 0, -1], speed: 3, length: { out: 30 } };
    const errors = [10, 20, 40].map((links) => {
        const { line, lure } = hung(question, links);
        return Math.hypot(lure[0] - line.lure[0], lure[2] - line.lure[2]);
    });
    const orders = [Math.log2(errors[0]! / errors[1]!), Math.log2(errors[1]! / errors[2]!)];
    for (const order of orders) {
        expect(order).toBeGreaterThan(1.7);
        expect(order).toBeLessThan(2.4);
    }
});

test('from the air, by Reynolds number, with leader and side wind, the chain rests within a few centimetres of the line', () => {
    const question: LineQuestion = {
        sections: [
            { length: 4.2, diameter: 1.8e-3, density: 1140, modulus: 2.5e9 },
            { length: 100, diameter: 0.9e-3, density: 1140, modulus: 2.5e9 },
        ],
        lure: { dragArea: 0.003, mass: 0.6, weightInWater: 7 },
        towPoint: [2, 6, 6.5],
        speed: 8 * KNOT,
        length: { astern: 40 },
        wind: [0, 6, 0],
    };
    const far = (links: number, growth: number) => {
        const { line, lure } = hung(question, links, growth);
        return Math.hypot(...lure.map((coordinate, axis) => coordinate - line.lure[axis]!));
    };
    expect(far(20, 6)).toBeLessThan(0.03);
    expect(far(40, 6)).toBeLessThan(0.01);
    expect(far(160, 6)).toBeLessThan(0.002);
});

test('at rest nothing is missing at any free node', () => {
    const { params } = straight.cases[1]!;
    const { tow } = lineOf(params, -1, 4);
    const { chain } = hung({ ...tow, towPoint: [0, 0, -1], speed: 4, length: { out: 30 } }, 20);
    const room = roomFor(20);
    balance(chain.links, chain.around, chain.now, 0, room);
    expect(Math.max(...room.missing.map(Math.abs))).toBeLessThan(1e-3);
});

test('no chain is laid without a line, without links or with a broken one', () => {
    const { tow } = lineOf(straight.cases[1]!.params, -1, 4);
    expect(layChain(tow, 0, 20)).toBeUndefined();
    expect(layChain(tow, 30, 0)).toBeUndefined();
    expect(layChain(tow, 30, 2.5)).toBeUndefined();
    expect(layChain(tow, Number.NaN, 20)).toBeUndefined();
    expect(layChain({ ...tow, lure: { ...tow.lure, dragArea: -1 } }, 30, 20)).toBeUndefined();
});
