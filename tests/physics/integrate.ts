import { createRequire } from 'node:module';

/** The part that is used here of odex 2.0.4, E. Hairer and G. Wanner's ODEX; its sources fail a strict compiler. */
interface Odex {
    Solver: new (
        dimension: number,
    ) => {
        absoluteTolerance: number;
        relativeTolerance: number;
        solve(
            derivative: (x: number, y: number[]) => number[],
            from: number,
            y: number[],
            to: number,
        ): { y: number[]; outcome: number };
    };
}

const { Solver }: Odex = createRequire(import.meta.url)('odex');

/** Integrates y' = derivative(x, y) by extrapolation, which no code under test uses. */
export function integrate(
    derivative: (x: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
    tolerance = 1e-10,
): number[] {
    const solver = new Solver(start.length);
    solver.absoluteTolerance = tolerance;
    solver.relativeTolerance = tolerance;
    const { y, outcome } = solver.solve(derivative, from, start, to);
    if (outcome !== 0) throw new Error('The reference solver did not arrive.');
    return y;
}
