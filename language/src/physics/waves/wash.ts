/** The white water behind the propellers: a trapezoid from the transom, narrowing astern. */
export interface Wash {
    /** Half its width at the transom, m. */
    readonly halfWidth: number;
    /** Half its width at its end, m. */
    readonly endHalfWidth: number;
    /** m astern of the transom. */
    readonly length: number;
}

/** Estimate: 0.30 of the beam to each side narrowing to 0.15, 10 m long. Every figure is a boat's setting. */
export function usualWash(beam: number): Wash {
    return { halfWidth: 0.3 * beam, endHalfWidth: 0.15 * beam, length: 10 };
}

/** Half the wash's width at a distance astern, m; 0 beyond its ends. */
export function washHalfWidth(wash: Wash, astern: number): number {
    if (!(astern >= 0 && astern <= wash.length && wash.length > 0)) return 0;
    return wash.halfWidth + ((wash.endHalfWidth - wash.halfWidth) * astern) / wash.length;
}

/** Whether a point on the water lies in the wash. */
export function insideWash(wash: Wash, astern: number, lateral: number): boolean {
    return Math.abs(lateral) < washHalfWidth(wash, astern);
}
