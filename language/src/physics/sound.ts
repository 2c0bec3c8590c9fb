/** No length, speed, force or stiffness at sea reaches this, in SI units; products of a few such figures stay finite. */
const BEYOND_ANY_BOAT = 1e12;

/** Figures that can be computed with: finite, of a size that something at sea could have. */
export function isSound(...figures: readonly number[]): boolean {
    return figures.every((figure) => Math.abs(figure) < BEYOND_ANY_BOAT);
}

/** Sound figures above zero; so near to zero that nothing at sea has it counts as zero. */
export function isPositive(...figures: readonly number[]): boolean {
    return figures.every((figure) => figure > 1 / BEYOND_ANY_BOAT && figure < BEYOND_ANY_BOAT);
}

/** Sound figures not below zero. */
export function isNotNegative(...figures: readonly number[]): boolean {
    return figures.every((figure) => figure >= 0 && figure < BEYOND_ANY_BOAT);
}
