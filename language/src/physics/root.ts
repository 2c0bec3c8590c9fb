export interface Root {
    readonly x: number;
    readonly residual: number;
}

/**
 * Where a continuous function passes through zero between two places of opposite sign: false position that lowers
 * the weight of an end that stays (Anderson and Björck, BIT 13, 1973), and the middle where that stalls.
 *
 * @returns the place, or `undefined` where the ends have one sign, a value is not a number, or the tolerance was
 *          not met in 80 evaluations
 */
export function rootBetween(f: (x: number) => number, a: Root, b: Root, tolerance: number): Root | undefined {
    if (Math.abs(a.residual) <= tolerance) return a;
    if (Math.abs(b.residual) <= tolerance) return b;
    if (!(a.residual * b.residual < 0)) return undefined;
    let [left, right] = [a, b];
    let [leftWeight, rightWeight] = [left.residual, right.residual];
    for (let evaluation = 0; evaluation < 80; evaluation++) {
        const secant = (left.x * rightWeight - right.x * leftWeight) / (rightWeight - leftWeight);
        const stalled = evaluation % 8 === 7;
        const x = stalled ? (left.x + right.x) / 2 : secant;
        const next = { x, residual: f(x) };
        if (Math.abs(next.residual) <= tolerance) return next;
        if (Number.isNaN(next.residual)) return undefined;
        if (next.residual * right.residual < 0) {
            left = right;
            leftWeight = rightWeight;
        } else {
            const share = 1 - next.residual / right.residual;
            leftWeight *= share > 0 ? share : 0.5;
        }
        right = next;
        rightWeight = next.residual;
    }
    return undefined;
}

/**
 * Walks from a guess in steps that double until the function changes sign, then finds the place between.
 *
 * @param f     increasing
 * @param step  first step, > 0
 * @param least, most  where the walk ends
 */
export function rootFrom(
    f: (x: number) => number,
    guess: number,
    step: number,
    tolerance: number,
    least = Number.NEGATIVE_INFINITY,
    most = Number.POSITIVE_INFINITY,
): Root | undefined {
    let near: Root = { x: guess, residual: f(guess) };
    if (Math.abs(near.residual) <= tolerance) return near;
    const direction = near.residual < 0 ? 1 : -1;
    let stride = step;
    for (let walk = 0; walk < 60; walk++) {
        const x = Math.min(most, Math.max(least, near.x + direction * stride));
        const far: Root = { x, residual: f(x) };
        if (!Number.isFinite(far.residual)) return undefined;
        if (Math.abs(far.residual) <= tolerance) return far;
        if (far.residual * near.residual < 0) return rootBetween(f, near, far, tolerance);
        if (x === least || x === most) return undefined;
        near = far;
        stride *= 2;
    }
    return undefined;
}
