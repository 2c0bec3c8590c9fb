import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange, atOnce, type Before, broken } from '../../../language/src/physics/order/precedence.ts';

const byNumber = () => 0;
const demand = (first: number, second: number): Before => ({ first, second });

test('demands are met and the preferred order fills what they leave free', () => {
    const backwards = (one: number, other: number) => other - one;
    expect(arrange(4, [demand(0, 3)], backwards)).toEqual({ order: [2, 1, 0, 3], cycles: [] });
    expect(arrange(4, [], byNumber)).toEqual({ order: [0, 1, 2, 3], cycles: [] });
});

test('a ring is told, entered only when it can be finished, and everything still gets its place', () => {
    const demands = [demand(1, 2), demand(2, 1), demand(3, 1)];
    expect(arrange(4, demands, byNumber)).toEqual({ order: [0, 3, 1, 2], cycles: [[1, 2]] });
});

test('a stated order is judged by the demands it breaks; what it leaves out is not judged', () => {
    const demands = [demand(0, 1), demand(2, 3)];
    expect(broken([1, 0, 2, 3], demands)).toEqual([demand(0, 1)]);
    expect(broken([3, 0], demands)).toEqual([]);
});

test('with two hands two things are done at once, but nothing together with what it waits for', () => {
    expect(atOnce([0, 1, 2, 3], [demand(0, 1)], 2)).toEqual([
        [0, 2],
        [1, 3],
    ]);
    expect(atOnce([0, 1, 2], [], 1)).toEqual([[0], [1], [2]]);
    expect(atOnce([0, 1], [], 0)).toEqual([]);
    expect(atOnce([0, 1], [], Number.NaN)).toEqual([]);
});

const graphs = fc.integer({ min: 1, max: 8 }).chain((count) =>
    fc.record({
        count: fc.constant(count),
        demands: fc.array(
            fc.record({
                first: fc.integer({ min: 0, max: count - 1 }),
                second: fc.integer({ min: 0, max: count - 1 }),
            }),
            { maxLength: 14 },
        ),
        hands: fc.integer({ min: 1, max: 4 }),
    }),
);

test('whatever is demanded: each thing once, only rings break demands, steps fit the hands', () => {
    fc.assert(
        fc.property(graphs, ({ count, demands, hands }) => {
            const sound = demands.filter(({ first, second }) => first !== second);
            const { order, cycles } = arrange(count, sound, byNumber);
            expect([...order].sort()).toEqual(Array.from({ length: count }, (_, thing) => thing));
            for (const { first, second } of broken(order, sound))
                expect(cycles.some((ring) => ring.includes(first) && ring.includes(second))).toBe(true);
            const steps = atOnce(order, sound, hands);
            expect(steps.flat().sort()).toEqual([...order].sort());
            for (const step of steps) expect(step.length).toBeLessThanOrEqual(hands);
            const stepOf = (thing: number) => steps.findIndex((step) => step.includes(thing));
            for (const { first, second } of sound)
                if (order.indexOf(first) < order.indexOf(second))
                    expect(stepOf(first)).toBeLessThan(stepOf(second));
        }),
        { numRuns: 300 },
    );
});
