import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
    CROSS_FLOW_DRAG,
    crossFlowDrag,
    MATERIALS,
    stiffness,
    TANGENTIAL_DRAG,
    usualNylonDiameter,
} from '../../language/src/physics/coefficients.ts';
import { SEA_WATER_VISCOSITY } from '../../language/src/physics/constants.ts';
import published from './reference/coefficients.json' with { type: 'json' };

const entry = (words: string) => published.find(({ quantity }) => quantity.includes(words))!;

test('drag across a cylinder agrees with the published fit at every tabulated Reynolds number', () => {
    const rows = entry('cross-flow Cd(Re)').table as { Re: number; Cd: number }[];
    expect(rows).toHaveLength(8);
    for (const { Re, Cd } of rows) expect(crossFlowDrag(Re)).toBeCloseTo(Cd, 3);
});

test('near Reynolds 1e4 to 4e4 the fit agrees with DNV-RP-C205, smooth cylinder, to 10 %', () => {
    // Digitised from DNV-RP-C205 (ed. 2025-04).
    for (const [re, cd] of [
        [10211, 1.2077],
        [15544, 1.2037],
        [24435, 1.2082],
        [35720, 1.2106],
    ] as const) {
        expect(Math.abs(crossFlowDrag(re) / cd - 1)).toBeLessThan(0.1);
    }
});

test('any number at all gives a drag coefficient that is finite and positive', () => {
    fc.assert(
        fc.property(fc.double(), (reynolds) => {
            const drag = crossFlowDrag(reynolds);
            return Number.isFinite(drag) && drag > 0;
        }),
    );
    expect(crossFlowDrag(Number.NaN)).toBe(CROSS_FLOW_DRAG.value);
});

test('skin friction lies at two to three times the flat plate, as measured on thin towed cylinders', () => {
    const plate = (lengthReynolds: number) => 0.455 / Math.log10(lengthReynolds) ** 2.58;
    for (const { V, L, Cf_flat } of entry('long thin cylinders').table as {
        V: number;
        L: number;
        Cf_flat: number;
    }[]) {
        expect(plate((V * L) / 1.05e-6)).toBeCloseTo(Cf_flat, 5); // the table was made at 20 °C
        if (L < 30) continue;
        const flat = plate((V * L) / SEA_WATER_VISCOSITY);
        expect(TANGENTIAL_DRAG.value).toBeGreaterThan(2 * flat * 0.95);
        expect(TANGENTIAL_DRAG.value).toBeLessThan(3 * flat * 1.05);
        expect(2 * flat).toBeGreaterThan(TANGENTIAL_DRAG.low * 0.9);
        expect(3 * flat).toBeLessThan(TANGENTIAL_DRAG.high);
    }
});

test('every coefficient lies within its own range and names where it came from', () => {
    const materials = Object.values(MATERIALS).flatMap(({ density, modulus }) => [density, modulus]);
    for (const { value, low, high, source } of [CROSS_FLOW_DRAG, TANGENTIAL_DRAG, ...materials]) {
        expect(value).toBeGreaterThanOrEqual(low);
        expect(value).toBeLessThanOrEqual(high);
        expect(source.length).toBeGreaterThan(10);
    }
});

test('nylon of 37 kg class at 0.9 mm stretches 1.9 % under 30 N, as the compiled figures say', () => {
    expect(30 / stiffness(0.9e-3, MATERIALS.nylon.modulus.value)).toBeCloseTo(0.019, 3);
    expect(362.846 / ((Math.PI / 4) * 0.9e-3 ** 2) / 1e6).toBeCloseTo(570.358, 2);
});

test('ordinary nylon of 50 lb is 0.71 mm thick, and a strength below zero has no thickness', () => {
    expect(usualNylonDiameter(50 * 4.4482216152605)).toBeCloseTo(0.707e-3, 6);
    expect(usualNylonDiameter(-1)).toBeUndefined();
    expect(usualNylonDiameter(Number.NaN)).toBeUndefined();
});
