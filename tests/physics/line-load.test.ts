import { expect, test } from 'vitest';
import { AIR_DENSITY, SEA_WATER_DENSITY, STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import { compliance, slopeOf } from '../../language/src/physics/line-load.ts';
import type { Section, Tow } from '../../language/src/physics/towed.ts';

const section: Section = { length: 100, diameter: 0.001, density: 1150 };
const AREA = (Math.PI / 4) * 0.001 ** 2;
const [CN, CT] = [1.2, 0.02];

/** What a metre of line adds to force and position, of a line that pulls with 50 N along a direction. */
function slope(
    along: readonly [number, number, number],
    underWater: boolean,
    more: Partial<Tow> = {},
    speed = 4,
) {
    const size = Math.hypot(...along);
    const state = Float64Array.of(...along.map((part) => (50 * part) / size), 0, 0, 0);
    const out = new Float64Array(8);
    const tow = { sections: [section], normalDrag: CN, tangentialDrag: CT, ...more } as unknown as Tow;
    slopeOf(tow, speed)(state, more.sections?.[0] ?? section, underWater, out, 1);
    expect(out[0]).toBe(0);
    expect(out[7]).toBe(0);
    return { force: [...out.slice(1, 4)], place: [...out.slice(4, 7)] };
}
const expectForce = (force: readonly number[], expected: readonly number[]) => {
    for (const axis of [0, 1, 2]) expect(force[axis]).toBeCloseTo(expected[axis]!, 9);
};
const wet = (1150 - SEA_WATER_DENSITY) * AREA * STANDARD_GRAVITY;
const dry = 1150 * AREA * STANDARD_GRAVITY;
/** N/m on a metre square to a stream of 1 m/s. */
const water = 0.5 * SEA_WATER_DENSITY * 0.001 * CN;
const air = 0.5 * AIR_DENSITY * 0.001 * CN;
const skin = 0.5 * SEA_WATER_DENSITY * 0.001 * Math.PI * CT;

test('square to the stream a line bears its drag across, along it only its skin’s, and its weight in water', () => {
    expectForce(slope([0, 0, 1], true).force, [water * 16, 0, wet]);
    expectForce(slope([1, 0, 0], true).force, [skin * 16, 0, wet]);
    expectForce(slope([-1, 0, 0], true).force, [skin * 16, 0, wet]);
    expectForce(slope([0, 1, 0], true).force, [water * 16, 0, wet]);
});

test('aslant the stream is taken apart along and across the line', () => {
    // At 3-4-5 the stream of 4 m/s runs 2.4 m/s along the line, and 3.2 m/s across it.
    for (const [x, y, z] of [
        [3, 0, 4],
        [3, 4, 0],
    ] as const) {
        const across = water * 3.2 ** 2;
        const along = skin * 2.4 ** 2;
        const [up, aside] = [0.8 * along - 0.6 * across, 0.6 * along + 0.8 * across];
        const { force } = slope([x, y, z], true);
        expectForce(force, z > 0 ? [aside, 0, wet + up] : [aside, up, wet]);
    }
});

test('in air the wind counts as the boat feels it, and only it', () => {
    expectForce(slope([0, 0, 1], false).force, [air * 16, 0, dry]);
    // A wind that overtakes the boat by 3 m/s and blows 4 m/s to port.
    const wind = [7, 4, 0] as const;
    expectForce(slope([0, 0, 1], false, { wind }).force, [-air * 5 * 3, -air * 5 * 4, dry]);
    expectForce(slope([0, 0, 1], true, { wind }).force, [water * 16, 0, wet]);
    expectForce(slope([1, 0, 0], false, { wind: [4, 0, 2] }).force, [0, 0, dry - air * 4]);
    // Rising air of 2 m/s on a line at 3-4-5: 1.6 m/s along it, 1.2 m/s across it.
    const across = air * 1.2;
    const along = 0.5 * AIR_DENSITY * 0.001 * Math.PI * CT * 1.6 ** 2;
    expectForce(slope([3, 0, 4], false, { wind: [4, 0, 2] }).force, [
        across * 0.96 - along * 0.6,
        0,
        dry - across * 0.72 - along * 0.8,
    ]);
    expectForce(slope([0, 0, 1], false, { airDrag: false }).force, [0, 0, dry]);
});

test('a line stretches as its stuff gives, Hooke: force over modulus and section', () => {
    const nylon: Section = { ...section, modulus: 2e9 };
    expect(compliance(nylon)).toBeCloseTo(1 / (2e9 * AREA), 12);
    expect(compliance(section)).toBe(0);
    expect(slope([3, 0, 4], true).place).toEqual([expect.closeTo(0.6, 12), 0, expect.closeTo(0.8, 12)]);
    const stretched = slope([0, 4, 3], true, { sections: [nylon] }).place;
    const longer = 1 + 50 / (2e9 * AREA);
    expectForce(stretched, [0, 0.8 * longer, 0.6 * longer]);
});

test('without a figure for the drag across, it is the smooth cylinder’s at that stream, thinner stuff more', () => {
    const natural = (speed: number) =>
        slope([0, 0, 1], true, { normalDrag: undefined as never }, speed).force[0]!;
    const figure = (speed: number) => natural(speed) / (0.5 * SEA_WATER_DENSITY * 0.001 * speed ** 2);
    // Reynolds numbers of some hundreds to some thousands: about 1 (Wieselsberger’s measurements).
    for (const speed of [0.5, 2, 4]) {
        expect(figure(speed)).toBeGreaterThan(0.85);
        expect(figure(speed)).toBeLessThan(1.3);
    }
    // Towards no stream at all it grows beyond that.
    expect(figure(0.01)).toBeGreaterThan(2);
});
