import { expect, test } from 'vitest';
import {
    add,
    cross,
    dot,
    lerp,
    mirror,
    norm,
    scale,
    subtract,
    type Vec,
} from '../../language/src/physics/vector.ts';

const [a, b]: [Vec, Vec] = [
    [1, -2, 3],
    [-4, 5, 7],
];

test('sums, differences and multiples, axis by axis', () => {
    expect(add(a, b)).toEqual([-3, 3, 10]);
    expect(subtract(a, b)).toEqual([5, -7, -4]);
    expect(scale(a, -3)).toEqual([-3, 6, -9]);
    expect(mirror(a)).toEqual([1, 2, 3]);
});

test('products: the axes turn into each other by the right hand, and a product stands square on both', () => {
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(cross([0, 1, 0], [0, 0, 1])).toEqual([1, 0, 0]);
    expect(cross([0, 0, 1], [1, 0, 0])).toEqual([0, 1, 0]);
    expect(dot(a, b)).toBe(-4 - 10 + 21);
    expect(dot(cross(a, b), a)).toBe(0);
    expect(dot(cross(a, b), b)).toBe(0);
    // |a × b|² = |a|²·|b|² − (a·b)², Lagrange.
    expect(norm(cross(a, b)) ** 2).toBeCloseTo(14 * 90 - 7 ** 2, 9);
});

test('lengths, and places between', () => {
    expect(norm([2, 3, 6])).toBe(7);
    expect(norm([0, 0, -5])).toBe(5);
    expect(lerp(a, b, 0)).toEqual(a);
    expect(lerp(a, b, 1)).toEqual(b);
    expect(lerp(a, b, 0.5)).toEqual([-1.5, 1.5, 5]);
    expect(lerp([0, 0, 0], [4, 8, -12], 0.25)).toEqual([1, 2, -3]);
});
