/**
 * Solves a block-tridiagonal system of 3 × 3 blocks in place: lower[i]·x[i−1] + diagonal[i]·x[i] + upper[i]·x[i+1] =
 * right[i], blocks stored by rows, one after another.
 *
 * Elimination without exchanging blocks: for the chain's matrices, stiffness plus mass and drag, the diagonal block
 * outweighs its neighbours. Diagonal and right side are overwritten, the right side with the solution.
 *
 * @returns whether every diagonal block could be inverted
 */
export function solveBlocks(
    lower: Float64Array,
    diagonal: Float64Array,
    upper: Float64Array,
    right: Float64Array,
    blocks: number,
): boolean {
    for (let i = 0; i < blocks; i++) {
        const at = 9 * i;
        const r = 3 * i;
        if (i > 0) {
            // What is left of the row above: x[i−1] = right[i−1] − upper[i−1]·x[i].
            for (let row = 0; row < 3; row++) {
                const a = lower[at + 3 * row]!;
                const b = lower[at + 3 * row + 1]!;
                const c = lower[at + 3 * row + 2]!;
                const above = at - 9;
                for (let column = 0; column < 3; column++) {
                    diagonal[at + 3 * row + column]! -=
                        a * upper[above + column]! +
                        b * upper[above + 3 + column]! +
                        c * upper[above + 6 + column]!;
                }
                right[r + row]! -= a * right[r - 3]! + b * right[r - 2]! + c * right[r - 1]!;
            }
        }
        const a = diagonal[at]!;
        const b = diagonal[at + 1]!;
        const c = diagonal[at + 2]!;
        const d = diagonal[at + 3]!;
        const e = diagonal[at + 4]!;
        const f = diagonal[at + 5]!;
        const g = diagonal[at + 6]!;
        const h = diagonal[at + 7]!;
        const k = diagonal[at + 8]!;
        const A = e * k - f * h;
        const B = f * g - d * k;
        const C = d * h - e * g;
        const determinant = a * A + b * B + c * C;
        if (!(Math.abs(determinant) > 0)) return false;
        const inverse = 1 / determinant;
        const i00 = A * inverse;
        const i10 = B * inverse;
        const i20 = C * inverse;
        const i01 = (c * h - b * k) * inverse;
        const i11 = (a * k - c * g) * inverse;
        const i21 = (b * g - a * h) * inverse;
        const i02 = (b * f - c * e) * inverse;
        const i12 = (c * d - a * f) * inverse;
        const i22 = (a * e - b * d) * inverse;
        for (let column = 0; column < 3; column++) {
            const u0 = upper[at + column]!;
            const u1 = upper[at + 3 + column]!;
            const u2 = upper[at + 6 + column]!;
            upper[at + column] = i00 * u0 + i01 * u1 + i02 * u2;
            upper[at + 3 + column] = i10 * u0 + i11 * u1 + i12 * u2;
            upper[at + 6 + column] = i20 * u0 + i21 * u1 + i22 * u2;
        }
        const r0 = right[r]!;
        const r1 = right[r + 1]!;
        const r2 = right[r + 2]!;
        right[r] = i00 * r0 + i01 * r1 + i02 * r2;
        right[r + 1] = i10 * r0 + i11 * r1 + i12 * r2;
        right[r + 2] = i20 * r0 + i21 * r1 + i22 * r2;
    }
    for (let i = blocks - 2; i >= 0; i--) {
        const at = 9 * i;
        const r = 3 * i;
        const x0 = right[r + 3]!;
        const x1 = right[r + 4]!;
        const x2 = right[r + 5]!;
        for (let row = 0; row < 3; row++) {
            right[r + row]! -=
                upper[at + 3 * row]! * x0 + upper[at + 3 * row + 1]! * x1 + upper[at + 3 * row + 2]! * x2;
        }
    }
    return true;
}
