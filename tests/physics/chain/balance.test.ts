import fc from 'fast-check';
import { expect, test } from 'vitest';
import { balance } from '../../../language/src/physics/chain/balance.ts';
import { linksOf } from '../../../language/src/physics/chain/links.ts';
import { type Motion, roomFor, type Surroundings } from '../../../language/src/physics/chain/motion.ts';
import { dry, wetOf } from '../../../language/src/physics/chain/surface.ts';
import { STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import type { Tow } from '../../../language/src/physics/towed.ts';

const tow: Tow = {
    sections: [
        { length: 2, diameter: 1.8e-3, density: 1140, modulus: 2.5e9 },
        { length: 9, diameter: 0.9e-3, density: 1140, modulus: 2.5e9 },
    ],
    lure: { dragArea: 0.003, mass: 0.3, weightInWater: 1.5, diveArea: 5e-4 },
    normalDrag: 1.2,
    wind: [2, -3, 0],
};
const links = linksOf(tow, 8, 4);
const around: Surroundings = {
    lure: tow.lure,
    wind: tow.wind!,
    crossFlow: [new Float64Array(4).fill(1.2), new Float64Array(4).fill(1.2)],
    reynolds: [new Float64Array(4), new Float64Array(4)],
};

test('links share out the line’s mass, and stretch one after the other where a leader joins', () => {
    const area = (diameter: number) => (Math.PI / 4) * diameter ** 2;
    const mass = 1140 * (2 * area(1.8e-3) + 6 * area(0.9e-3));
    expect(links.mass.reduce((sum, each) => sum + each, 0)).toBeCloseTo(mass, 12);
    const joined = linksOf(tow, 8, 1);
    const stretch = 2 / (2.5e9 * area(1.8e-3)) + 6 / (2.5e9 * area(0.9e-3));
    expect(8 / joined.rate[0]!).toBeCloseTo(stretch, 12);
    const growing = linksOf(tow, 8, 4, 6);
    expect(growing.length[3]! / growing.length[0]!).toBeCloseTo(6, 12);
    expect(growing.length.reduce((sum, each) => sum + each, 0)).toBeCloseTo(8, 12);
});

/** Taut links of any direction; all nodes move alike, unaccelerated. */
const motions = (heights: fc.Arbitrary<number>) =>
    fc
        .record({
            turns: fc.array(fc.tuple(fc.double({ min: -0.6, max: 0.6, noNaN: true }), heights), {
                minLength: 5,
                maxLength: 5,
            }),
            velocity: fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -5, max: 5, noNaN: true }))),
        })
        .map(({ turns, velocity }): Motion => {
            const x = new Float64Array(15);
            turns.forEach(([turn, height], node) => {
                x[3 * node] = 2.01 * node;
                x[3 * node + 1] = turn;
                x[3 * node + 2] = height;
            });
            const v = Float64Array.from({ length: 15 }, (_, index) => velocity[index % 3]!);
            return { x, v, a: new Float64Array(15) };
        })
        // The surface takes hold of a lure at a stroke: there is no one change just there.
        .filter(({ x }) => Math.abs(x[2]!) > 1e-5);

const below = fc.double({ min: -3, max: -2, noNaN: true });
const above = fc.double({ min: 2, max: 3, noNaN: true });
const through = fc.double({ min: -1, max: 1, noNaN: true });
const washed = fc.double({ min: -0.004, max: 0.004, noNaN: true });

test('a link is wet by what of it lies under the surface, and where', () => {
    const wetness = dry();
    wetOf(-1, 1, wetness);
    expect(wetness.share).toBeCloseTo(0.5, 12);
    expect(wetness.moment / wetness.share).toBeCloseTo(0.25, 4);
    wetOf(3, -1, wetness);
    expect(wetness.share).toBeCloseTo(0.25, 12);
    expect(wetness.moment / wetness.share).toBeCloseTo(0.875, 4);
    wetOf(0, 0, wetness);
    expect(wetness).toMatchObject({ share: 0.5, moment: 0.25 });
    // Level or nearly so, it makes no difference which way it is reckoned.
    const [level, tilted] = [dry(), dry()];
    wetOf(1e-3, 1e-3 + 0.9e-6, level);
    wetOf(1e-3, 1e-3 + 1.1e-6, tilted);
    for (const [name, figure] of Object.entries(level)) {
        expect(tilted[name as keyof typeof tilted]).toBeCloseTo(figure, 1);
    }
});

test.each([
    ['in water', below],
    ['in air', above],
    ['through the surface', through],
    ['in the surface', washed],
])('the change of the balance %s is the difference of two balances', (_, heights) => {
    fc.assert(
        fc.property(motions(heights), fc.constantFrom(0, 15), (motion, rate) => {
            const at = roomFor(4);
            balance(links, around, motion, rate, at);
            for (let column = 0; column < 12; column++) {
                const small = 1e-6;
                const moved = (way: number) => {
                    const shifted = {
                        x: Float64Array.from(motion.x),
                        v: Float64Array.from(motion.v),
                        a: Float64Array.from(motion.a),
                    };
                    shifted.x[column]! += way * small;
                    shifted.v[column]! += way * small * rate;
                    shifted.a[column]! += way * small * rate * rate;
                    const room = roomFor(4);
                    balance(links, around, shifted, rate, room);
                    return room.missing;
                };
                const [more, less] = [moved(1), moved(-1)];
                const own = Math.floor(column / 3);
                for (let row = 0; row < 12; row++) {
                    const node = Math.floor(row / 3);
                    const place = 9 * node + 3 * (row % 3) + (column % 3);
                    const blocks = [at.lower, at.diagonal, at.upper][own - node + 1];
                    const expected = (more[row]! - less[row]!) / (2 * small);
                    const change = blocks ? blocks[place]! : 0;
                    const size = 1 + Math.abs(expected) + 1e-2 * at.diagonal[9 * node + 4 * (row % 3)]!;
                    expect(Math.abs(change - expected) / size).toBeLessThan(2e-3);
                }
            }
        }),
        { numRuns: 40 },
    );
});

test('a chain that hangs still in water is in balance with its weight less its buoyancy, and no link pushes', () => {
    const x = new Float64Array(15);
    for (let node = 0; node < 5; node++) x[3 * node + 2] = -20 + 1.9 * node; // shorter than its links
    const room = roomFor(4);
    balance(links, around, { x, v: new Float64Array(15), a: new Float64Array(15) }, 0, room);
    const displaced = links.displaced.reduce((sum, each) => sum + each, 0);
    const mass = links.mass.reduce((sum, each) => sum + each, 0);
    const upper = (links.mass[3]! - links.displaced[3]!) / 2;
    const onFree = room.missing.filter((_, index) => index % 3 === 2).reduce((sum, each) => sum + each, 0);
    expect(onFree).toBeCloseTo(1.5 + (mass - displaced - upper) * STANDARD_GRAVITY, 10);
});
