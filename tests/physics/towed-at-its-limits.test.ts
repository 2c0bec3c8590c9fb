import { expect, test } from 'vitest';
import { faultOf, type Tow } from '../../language/src/physics/towed.ts';

const line = { length: 30, diameter: 0.0007, density: 1140, modulus: 2e9 };
const lure = { dragArea: 0.004, mass: 0.3, weightInWater: 1.5 };
const tow: Tow = { sections: [line], lure };

test('a tow that is known has no fault, whether or not the optional figures are said', () => {
    const { modulus, ...stiff } = line;
    for (const more of [
        {},
        { sections: [stiff] },
        { sections: [line, line] },
        { lure: { ...lure, diveArea: 0.01 } },
        { lure: { ...lure, weightInWater: -2 } },
        { normalDrag: 0, tangentialDrag: 0 },
        { normalDrag: 1.2, tangentialDrag: 0.005, wind: [1, -2, 0] },
    ] as Partial<Tow>[])
        expect(faultOf({ ...tow, ...more })).toBeUndefined();
});

test.each<[string, object]>([
    ['A piece of line has no length.', { sections: [line, { ...line, length: 0 }] }],
    ['A piece of line has no thickness.', { sections: [{ ...line, diameter: 0 }] }],
    ['A piece of line has no density.', { sections: [{ ...line, density: Number.NaN }] }],
    ['A piece of line has no stiffness.', { sections: [{ ...line, modulus: 0 }] }],
    ['There is no line.', { sections: [] }],
    ['The lure has no drag.', { lure: { ...lure, dragArea: 0 } }],
    ['The lure has no weight.', { lure: { ...lure, mass: -1 } }],
    [
        'The lure’s weight in water, or its pull downwards, is out of range.',
        { lure: { ...lure, weightInWater: Number.POSITIVE_INFINITY } },
    ],
    [
        'The lure’s weight in water, or its pull downwards, is out of range.',
        { lure: { ...lure, diveArea: -0.1 } },
    ],
    ['A drag coefficient is below zero.', { normalDrag: -1 }],
    ['A drag coefficient is below zero.', { tangentialDrag: -1 }],
    ['The wind is out of range.', { wind: [0, Number.NaN, 0] }],
])('%s', (fault, wrong) => {
    expect(faultOf({ ...tow, ...wrong } as Tow)).toBe(fault);
});
