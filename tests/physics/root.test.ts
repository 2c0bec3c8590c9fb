import { expect, test } from 'vitest';
import { type Root, rootBetween, rootFrom } from '../../language/src/physics/root.ts';

/** A function that counts how often it is asked. */
function counted(f: (x: number) => number) {
    const asked = { times: 0 };
    return {
        asked,
        f: (x: number) => {
            asked.times++;
            return f(x);
        },
    };
}
const between = (f: (x: number) => number, from: number, to: number, tolerance = 1e-12) => {
    const { asked, f: tried } = counted(f);
    const [a, b]: Root[] = [
        { x: from, residual: f(from) },
        { x: to, residual: f(to) },
    ];
    return { found: rootBetween(tried, a!, b!, tolerance), asked };
};

// Roots in closed form.
test.each<[string, (x: number) => number, number, number, number]>([
    ['a straight line', (x) => 3 * x - 6, -10, 10, 2],
    ['a parabola', (x) => x * x - 2, 0, 10, Math.SQRT2],
    ['a parabola from the right', (x) => x * x - 2, 10, 0, Math.SQRT2],
    ['a cosine', Math.cos, 1, 3, Math.PI / 2],
    ['a logarithm', Math.log, 0.01, 50, 1],
    ['a fall', (x) => 1 / x - 4, 0.01, 9, 0.25],
    ['an exponential that is flat for long', (x) => Math.exp(x) - 1, -30, 5, 0],
])('%s: the place where it passes zero', (_, f, from, to, root) => {
    const { found, asked } = between(f, from, to);
    expect(found?.x).toBeCloseTo(root, 9);
    expect(Math.abs(found!.residual)).toBeLessThanOrEqual(1e-12);
    expect(f(found!.x)).toBe(found!.residual);
    expect(asked.times).toBeLessThan(40);
});

// Anderson and Björck, 1973: of order 1.68 or better, so that a smooth root takes a handful of values, not forty halvings.
test('a smooth root takes few values, and a straight line one', () => {
    expect(between((x) => 3 * x - 6, -10, 10).asked.times).toBe(1);
    expect(between((x) => x * x - 2, 0, 10).asked.times).toBeLessThanOrEqual(12);
    expect(between((x) => x ** 3 - 8, 0, 5).asked.times).toBeLessThanOrEqual(12);
    expect(between((x) => Math.exp(x) - 2, -1, 3).asked.times).toBeLessThanOrEqual(10);
});

test('an end that will do is the answer, without another value', () => {
    for (const [from, to, root] of [
        [2, 5, 2],
        [-5, 2, 2],
    ] as const) {
        const { found, asked } = between((x) => x - 2, from, to);
        expect(found?.x).toBe(root);
        expect(asked.times).toBe(0);
    }
    expect(between((x) => x - 2, 2.01, 5, 0.1).found?.x).toBe(2.01);
});

test('ends of one sign, and values that are no numbers, have no place between', () => {
    expect(between((x) => x * x + 1, -1, 1)).toMatchObject({ found: undefined, asked: { times: 0 } });
    expect(between((x) => -1 - x * x, -1, 1).asked.times).toBe(0);
    expect(between((x) => (x === -1 ? -1 : x === 1 ? 1 : Number.NaN), -1, 1)).toMatchObject({
        found: undefined,
        asked: { times: 1 },
    });
    expect(between(() => Number.NaN, -1, 1).found).toBeUndefined();
});

test('a jump has no place either, and the search for one ends', () => {
    const { found, asked } = between((x) => (x < 0.3 ? -1 : 1), -1, 1);
    expect(found).toBeUndefined();
    expect(asked.times).toBe(80);
});

test('a walk from a guess finds the root on either side of it, near or far', () => {
    for (const guess of [-1000, -3, 1.9, 2, 2.1, 40, 1000]) {
        const found = rootFrom((x) => x - 2, guess, 0.1, 1e-9);
        expect(found?.x).toBeCloseTo(2, 8);
    }
    // The cube root of 8 from far away.
    expect(rootFrom((x) => x ** 3 - 8, -50, 1, 1e-9)?.x).toBeCloseTo(2, 8);
    expect(rootFrom((x) => x ** 3 - 8, 50, 1, 1e-9)?.x).toBeCloseTo(2, 8);
});

test('a walk doubles its steps: a thousand steps away it takes ten, and stops at the sign’s change', () => {
    const places: number[] = [];
    const found = rootFrom(
        (x) => {
            places.push(x);
            return x - 1000;
        },
        0,
        1,
        1e-9,
    );
    expect(found?.x).toBe(1000);
    expect(places.slice(0, 6)).toEqual([0, 1, 3, 7, 15, 31]);
    expect(places).toHaveLength(12);
    expect(Math.max(...places)).toBe(1023);
});

test('a guess that will do is the answer', () => {
    const { asked, f } = counted((x) => x - 2);
    expect(rootFrom(f, 2.05, 1, 0.1)).toEqual({ x: 2.05, residual: expect.closeTo(0.05, 12) });
    expect(asked.times).toBe(1);
});

test('a step that happens upon the root is the answer', () => {
    const { asked, f } = counted((x) => x - 3);
    expect(rootFrom(f, 0, 1, 1e-9)?.x).toBe(3);
    expect(asked.times).toBe(3);
});

test('a walk ends where it must, and a root there is still found', () => {
    expect(rootFrom((x) => x - 100, 0, 1, 1e-9, -50, 50)).toBeUndefined();
    expect(rootFrom((x) => x + 100, 0, 1, 1e-9, -50, 50)).toBeUndefined();
    expect(rootFrom((x) => x - 50, 0, 1, 1e-9, -50, 50)?.x).toBe(50);
    expect(rootFrom((x) => x + 49.5, 0, 1, 1e-9, -50, 50)?.x).toBeCloseTo(-49.5, 8);
    const { asked, f } = counted((x) => x - 100);
    rootFrom(f, 0, 1, 1e-9, -50, 50);
    // 0, 1, 3, 7, 15, 31, and the end.
    expect(asked.times).toBe(7);
});

test('a walk into what is no number, or that never meets zero, ends', () => {
    expect(rootFrom((x) => (x > 5 ? Number.NaN : x - 10), 0, 1, 1e-9)).toBeUndefined();
    expect(rootFrom((x) => (x > 5 ? Number.POSITIVE_INFINITY : x - 10), 0, 1, 1e-9)).toBeUndefined();
    const { asked, f } = counted(() => -1);
    expect(rootFrom(f, 0, 1e-12, 1e-9)).toBeUndefined();
    expect(asked.times).toBe(61);
});
