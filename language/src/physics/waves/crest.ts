import type { WaveTrain } from './train.ts';

/** Angle of the wedge's edge off the centreline, rad: asin(1/3). Kelvin 1887; Lamb, Hydrodynamics, art. 256. */
export const WEDGE_HALF_ANGLE = Math.asin(1 / 3);

/** Astern distance over lateral offset at the wedge's edge: cot(asin(1/3)). */
const WEDGE_SLOPE = Math.sqrt(8);

/**
 * Where a crest that crosses the centreline at one distance lies further out.
 *
 * @param centre   astern of the transom on the centreline, m, ≥ 0
 * @param lateral  offset to either side, m
 * @returns m astern, or `undefined` where the crest does not reach so far out
 *
 * Kelvin's transverse crest, x = c·cosθ·(1 + sin²θ), |y| = c·cos²θ·sinθ, apex at the transom's centre. The offset
 * gives u = sinθ from u − u³ = |y|/c, solved by the sine of a third of an angle.
 */
export function asternAt(centre: number, lateral: number): number | undefined {
    const offset = Math.abs(lateral);
    if (!(centre >= 0) || !Number.isFinite(centre + offset)) return undefined;
    if (offset === 0) return centre;
    const third = (1.5 * Math.sqrt(3) * offset) / centre;
    if (!(third <= 1)) return undefined;
    const sine = (2 / Math.sqrt(3)) * Math.sin(Math.asin(third) / 3);
    return centre * Math.sqrt(1 - sine * sine) * (1 + sine * sine);
}

/**
 * Where the crest through a point crosses the centreline: `asternAt` the other way round.
 *
 * @param astern   m, > 0
 * @param lateral  m
 * @returns m astern, or `undefined` outside the wedge
 */
export function centreOf(astern: number, lateral: number): number | undefined {
    const offset = Math.abs(lateral);
    if (!(astern > 0) || !Number.isFinite(astern + offset)) return undefined;
    if (!insideWedge(astern, offset)) return undefined;
    // x/|y| = (1 + 2t²)/t with t = tanθ; the smaller root is the transverse wave, written so that nothing cancels.
    const slope = astern / offset;
    const tangent = offset === 0 ? 0 : 2 / (slope + Math.sqrt(Math.max(0, slope * slope - 8)));
    const sine2 = (tangent * tangent) / (1 + tangent * tangent);
    return astern / (Math.sqrt(1 - sine2) * (1 + sine2));
}

/** Whether a point lies within the wedge that the boat's waves fill. */
export function insideWedge(astern: number, lateral: number): boolean {
    return astern > 0 && astern >= WEDGE_SLOPE * Math.abs(lateral) * (1 - 1e-12);
}

/**
 * The line of crest n, for drawing.
 *
 * @param points  how many on each side of the centreline, ≥ 1
 * @returns [astern, lateral] in m from the wedge's edge to starboard (lateral < 0) over the centreline to port;
 * empty for a crest that is not behind the transom
 */
export function crestCurve(train: WaveTrain, n: number, points = 16): [astern: number, lateral: number][] {
    const centre = crestDistance(train, n);
    if (!(centre > 0)) return [];
    const curve: [number, number][] = [];
    const edge = Math.atan(Math.SQRT1_2);
    for (let index = -points; index <= points; index++) {
        const angle = (edge * index) / points;
        const sine = Math.sin(angle);
        const cosine = Math.cos(angle);
        curve.push([centre * cosine * (1 + sine * sine), centre * cosine * cosine * sine]);
    }
    return curve;
}

/** Astern distance of crest n on the centreline, m. Crests count from 1. */
export function crestDistance(train: WaveTrain, n: number): number {
    return train.firstCrest + (n - 1) * train.length;
}
