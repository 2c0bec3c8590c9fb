import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { expect, test } from 'vitest';
import { solveBlocks } from '../../../language/src/physics/chain/blocks.ts';

test('elimination by blocks agrees with a general-purpose solver on the whole matrix', () => {
    const figure = fc.double({ min: -1, max: 1, noNaN: true });
    const figures = (count: number) => fc.array(figure, { minLength: count, maxLength: count });
    const systems = fc
        .integer({ min: 1, max: 7 })
        .chain((n) =>
            fc.tuple(fc.constant(n), figures(9 * n), figures(9 * n), figures(9 * n), figures(3 * n)),
        );
    fc.assert(
        fc.property(systems, ([n, lower, diagonal, upper, right]) => {
            // As in a chain, the diagonal outweighs its neighbours.
            for (let i = 0; i < n; i++) for (let k = 0; k < 3; k++) diagonal[9 * i + 4 * k]! += 8;
            const whole = Array.from({ length: 3 * n }, () => new Array<number>(3 * n).fill(0));
            const place = (blocks: number[], i: number, j: number) => {
                if (j < 0 || j >= n) return;
                for (let row = 0; row < 3; row++) {
                    for (let column = 0; column < 3; column++) {
                        whole[3 * i + row]![3 * j + column] = blocks[9 * i + 3 * row + column]!;
                    }
                }
            };
            for (let i = 0; i < n; i++) {
                place(lower, i, i - 1);
                place(diagonal, i, i);
                place(upper, i, i + 1);
            }
            const expected = (lusolve(whole, right) as number[][]).flat();
            const solution = Float64Array.from(right);
            const [l, d, u] = [lower, diagonal, upper].map((blocks) => Float64Array.from(blocks));
            expect(solveBlocks(l!, d!, u!, solution, n)).toBe(true);
            expected.forEach((x, index) => {
                expect(solution[index]).toBeCloseTo(x, 9);
            });
        }),
    );
});

test('a diagonal block without an inverse is reported', () => {
    const zeros = () => new Float64Array(9);
    expect(solveBlocks(zeros(), zeros(), zeros(), new Float64Array(3), 1)).toBe(false);
});
