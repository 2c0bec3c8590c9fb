import { expect, test } from 'vitest';
import { SEA_WATER_DENSITY, STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import { lurePull } from '../../language/src/physics/lure-drag.ts';
import { lureWeight } from '../../language/src/physics/lure-weight.ts';

test('a pull that was measured at this very speed leans on nothing, one from another speed says so', () => {
    const measured = { pull: 30, speed: 4 };
    const same = lurePull({ measured }, 4);
    expect(same).toEqual({
        kind: 'pull',
        value: 30,
        low: 30,
        high: 30,
        // Half of density × speed² over the pull.
        dragArea: expect.closeTo(30 / (0.5 * SEA_WATER_DENSITY * 16), 12),
        standing: 'measured',
    });
    expect(lurePull({ measured }, 8)).toEqual({
        kind: 'pull',
        value: expect.closeTo(120, 9),
        low: expect.closeTo(30 * 2 ** 1.8, 9),
        high: expect.closeTo(30 * 2 ** 2.2, 9),
        dragArea: expect.closeTo(30 / (0.5 * SEA_WATER_DENSITY * 16), 12),
        standing: 'computed',
        leaning: 'Scaled from another speed as speed squared.',
    });
});

test('a pull from the head is its frontal area, the drag of its shape and the skirt, and says so', () => {
    // 40 mm cup at 4 m/s: 0.25·π·0.04² · ½·ρ·16 · 1.1 · √(1.3·2.5).
    const onFace = 0.25 * Math.PI * 0.0016 * 0.5 * SEA_WATER_DENSITY * 16;
    const answer = lurePull({ head: { diameter: 0.04, shape: 'chugger' } }, 4);
    expect(answer).toEqual({
        kind: 'pull',
        value: expect.closeTo(onFace * 1.1 * Math.sqrt(3.25), 9),
        low: expect.closeTo(onFace * 0.9 * 1.3, 9),
        high: expect.closeTo(onFace * 1.3 * 2.5, 9),
        dragArea: expect.closeTo(0.25 * Math.PI * 0.0016 * 1.1 * Math.sqrt(3.25), 12),
        standing: 'estimated',
        leaning: 'From the head’s diameter, times 1.3 to 2.5 for the skirt; a scale would tell.',
    });
});

test('what cannot be answered is said in a sentence', () => {
    const reasonOf = (...question: Parameters<typeof lurePull>) => {
        const answer = lurePull(...question);
        return answer.kind === 'unknown' ? answer.reason : answer.kind;
    };
    expect(reasonOf({ head: { diameter: 0.04 } }, 0)).toBe('The speed is not above zero.');
    for (const measured of [
        { pull: 0, speed: 4 },
        { pull: 30, speed: 0 },
    ])
        expect(reasonOf({ measured }, 4)).toBe('The measured pull, or its speed, is not above zero.');
    expect(reasonOf({ head: { diameter: 0 } }, 4)).toBe('The head’s diameter is not above zero.');
    expect(reasonOf({}, 4)).toBe('Neither a measured pull nor the head’s diameter is known.');
});

test('a weight in water is weighed, worked out from a volume, or half', () => {
    expect(lureWeight({ mass: 0.3, submerged: 0.1 })).toEqual({
        kind: 'weight',
        inAir: expect.closeTo(0.3 * STANDARD_GRAVITY, 12),
        inWater: expect.closeTo(0.1 * STANDARD_GRAVITY, 12),
        displaced: expect.closeTo(0.2 / SEA_WATER_DENSITY, 12),
        standing: 'measured',
    });
    expect(lureWeight({ mass: 0.3, displaced: 1e-4 })).toMatchObject({ standing: 'measured' });
    expect(lureWeight({ mass: 0.3 })).toMatchObject({
        displaced: expect.closeTo(0.15 / SEA_WATER_DENSITY, 12),
        standing: 'estimated',
    });
    // Lead weighs nearly as much in water; nothing weighs more.
    expect(lureWeight({ mass: 0.3, submerged: 0.3 }).kind).toBe('weight');
    for (const [question, reason] of [
        [{ mass: 0 }, 'The lure’s weight is not above zero.'],
        [{ mass: 0.3, submerged: 0.31 }, 'The lure weighs more in water than in air.'],
        [{ mass: 0.3, displaced: -1e-5 }, 'The displaced volume is below zero.'],
    ] as const)
        expect(lureWeight(question)).toEqual({ kind: 'unknown', reason });
});
