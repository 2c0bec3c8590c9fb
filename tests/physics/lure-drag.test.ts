import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KNOT, STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import { HEAD_DRAG, lurePull } from '../../language/src/physics/lure-drag.ts';
import { lureWeight } from '../../language/src/physics/lure-weight.ts';
import published from './reference/coefficients.json' with { type: 'json' };

const pullOf = (...question: Parameters<typeof lurePull>) => {
    const answer = lurePull(...question);
    if (answer.kind !== 'pull') throw new Error(answer.reason);
    return answer;
};

test('a measured pull scales with the square of speed: 3.2 kg at 8 kn is 1.8 kg at 6 kn', () => {
    const measured = { pull: 3.2 * STANDARD_GRAVITY, speed: 8 * KNOT };
    const slower = pullOf({ measured }, 6 * KNOT);
    expect(slower.value / STANDARD_GRAVITY).toBeCloseTo(1.8, 10);
    expect(slower.standing).toBe('computed');
    expect(slower.low).toBeLessThan(slower.value);
    expect(slower.high).toBeGreaterThan(slower.value);
    const same = pullOf({ measured }, 8 * KNOT);
    expect(same).toMatchObject({ standing: 'measured', low: same.value, high: same.value });
});

test('a flat 40 mm head pulls 1.3 to 2.4 kg at 8 kn, an estimate', () => {
    const pull = pullOf({ head: { diameter: 0.04 } }, 8 * KNOT);
    expect(pull.low / STANDARD_GRAVITY).toBeCloseTo(1.3, 1);
    expect(pull.high / STANDARD_GRAVITY).toBeCloseTo(2.4, 1);
    expect(pull.value).toBeGreaterThan(pull.low);
    expect(pull.value).toBeLessThan(pull.high);
    expect(pull.standing).toBe('estimated');
});

test('a pull and its drag area say the same thing', () => {
    const pull = pullOf({ head: { diameter: 0.04, shape: 'chugger' } }, 4);
    expect(0.5 * 1025 * pull.dragArea * 16).toBeCloseTo(pull.value, 10);
});

test('flat faces take the drag of a blunt cylinder, cups lie between it and a hollow hemisphere', () => {
    const cylinder = published.find(({ quantity }) => quantity.startsWith('Blunt circular cylinder'))!;
    expect(cylinder.value).toContain(`4 ${HEAD_DRAG.pusher.value}`);
    const hemisphere = 1.33;
    expect(HEAD_DRAG.chugger.low).toBeGreaterThan(HEAD_DRAG.pusher.value);
    expect(HEAD_DRAG.chugger.high).toBeLessThan(hemisphere);
});

test('a measured pull goes before the head', () => {
    const measured = { pull: 10, speed: 4 };
    expect(pullOf({ measured, head: { diameter: 0.04 } }, 4).value).toBe(10);
});

test('whatever is asked, the answer is a range in order or a reason', () => {
    fc.assert(
        fc.property(fc.double(), fc.double(), fc.double(), (diameter, speed, read) => {
            for (const source of [
                { head: { diameter } },
                { measured: { pull: diameter, speed: read } },
                {},
            ]) {
                const answer = lurePull(source, speed);
                if (answer.kind === 'unknown') expect(answer.reason).not.toBe('');
                else {
                    expect(answer.low).toBeLessThanOrEqual(answer.value);
                    expect(answer.value).toBeLessThanOrEqual(answer.high);
                }
            }
        }),
    );
});

test('a lure that nobody weighed under water keeps half of its weight there', () => {
    expect(lureWeight({ mass: 0.29 })).toMatchObject({
        kind: 'weight',
        standing: 'estimated',
        inWater: (0.29 * STANDARD_GRAVITY) / 2,
    });
});

test('weight in water follows from the scale, or from the displaced volume by Archimedes', () => {
    const weighed = lureWeight({ mass: 0.6, submerged: 0.4975 });
    const displaced = lureWeight({ mass: 0.6, displaced: 1e-4 });
    if (weighed.kind !== 'weight' || displaced.kind !== 'weight') throw new Error('no weight');
    expect(weighed.inWater).toBeCloseTo(displaced.inWater, 10);
    expect(weighed.displaced).toBeCloseTo(1e-4, 12);
    expect(lureWeight({ mass: 0.1, submerged: -0.02 })).toMatchObject({ kind: 'weight' });
});

test('a lure without weight, or heavier in water than in air, has none', () => {
    expect(lureWeight({ mass: 0 }).kind).toBe('unknown');
    expect(lureWeight({ mass: Number.NaN }).kind).toBe('unknown');
    expect(lureWeight({ mass: 0.2, submerged: 0.3 }).kind).toBe('unknown');
    expect(lureWeight({ mass: 0.2, displaced: -1 }).kind).toBe('unknown');
});

test('a bait pulls an estimate from its size, between a fish that swims and one that skips across its way', () => {
    const pull = pullOf({ bait: { length: 0.28, mass: 0.22 } }, 5 * KNOT);
    expect(pull.standing).toBe('estimated');
    expect(pull.leaning).toMatch(/bait/);
    // By hand: 1.5 × (0.22 kg ÷ 1025 kg/m³ ÷ 0.28 m) = 11.5 cm², on ½ · 1025 · 2.572² = 3391 N/m²: 3.9 N at a coefficient of 1.
    expect(pull.value).toBeCloseTo(3.9, 1);
    expect(pull.low / pull.value).toBeCloseTo(0.4, 6);
    expect(pull.high / pull.value).toBeCloseTo(2.5, 6);
    // A fish in fair condition of 280 mm weighs 220 g (Fulton): nearly the same without a scale.
    expect(pullOf({ bait: { length: 0.28 } }, 5 * KNOT).value).toBeCloseTo(pull.value, 1);
    // What a scale read goes before it.
    expect(
        pullOf({ bait: { length: 0.28 }, measured: { pull: 9, speed: 5 * KNOT } }, 5 * KNOT).standing,
    ).toBe('measured');
});

test('a bait without length or of no weight pulls nothing that is known', () => {
    for (const bait of [{ length: 0 }, { length: -1 }, { length: 0.2, mass: 0 }, { length: Number.NaN }])
        expect(lurePull({ bait }, 3).kind).toBe('unknown');
});
