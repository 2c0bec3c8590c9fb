import type { Vec } from './vector.ts';

/**
 * Where on the boat something stands, as a crew measures it, m: ahead of the transom, out from the centreline, up
 * from the still waterline.
 */
export interface Foothold {
    readonly ahead: number;
    readonly out: number;
    readonly up: number;
}

/** An outrigger as it stands when fishing. */
export interface Outrigger {
    readonly foot: Foothold;
    /** Of the pole from foot to tip, m. */
    readonly length: number;
    /** Between the pole and the horizontal, rad: 0 lies flat, π/2 stands upright. */
    readonly rise: number;
    /** Seen from above, from dead ahead outboard to the pole, rad: π/2 is square out, more points aft. */
    readonly sweep: number;
}

/** A rod holder. */
export interface RodHolder {
    /** Where the rod leaves the holder. */
    readonly foot: Foothold;
    /** Seen from the side, from upright aft to the rod, rad, under π/2; negative leans ahead. */
    readonly lean: number;
    /** Seen from astern, from upright outboard to the rod, rad, under π/2; negative leans inboard. */
    readonly splay?: number;
}

/**
 * Where a halyard's clip hangs on an outrigger, in the boat's frame.
 *
 * @param along  from the pole's foot, m, 0 to its length
 * @returns `undefined` for a place beyond the pole, an angle out of its range or a figure that is none
 */
export function polePoint(
    { foot, length, rise, sweep }: Outrigger,
    along: number,
    side: 'port' | 'starboard',
): Vec | undefined {
    const sound =
        along >= 0 && along <= length && Math.abs(rise) <= Math.PI / 2 && Math.abs(sweep) <= Math.PI;
    if (!sound) return undefined;
    const reach = along * Math.cos(rise);
    return placed(
        foot.ahead + reach * Math.cos(sweep),
        foot.out + reach * Math.sin(sweep),
        foot.up + along * Math.sin(rise),
        side,
    );
}

/**
 * Where the tip of a rod in its holder is, in the boat's frame. The rod is taken as straight.
 *
 * @param above  length of the rod from the holder's mouth to the tip, m, ≥ 0
 * @param side   in the centre, out is to port
 * @returns `undefined` for an angle out of its range or a figure that is none
 */
export function rodTip(
    { foot, lean, splay = 0 }: RodHolder,
    above: number,
    side: 'port' | 'centre' | 'starboard',
): Vec | undefined {
    if (!(above >= 0 && Math.abs(lean) < Math.PI / 2 && Math.abs(splay) < Math.PI / 2)) return undefined;
    const aft = Math.tan(lean);
    const outboard = Math.tan(splay);
    const up = above / Math.hypot(aft, outboard, 1);
    return placed(foot.ahead - aft * up, foot.out + outboard * up, foot.up + up, side);
}

function placed(x: number, out: number, z: number, side: 'port' | 'centre' | 'starboard'): Vec | undefined {
    if (![x, out, z].every(Number.isFinite)) return undefined;
    return [x, side === 'starboard' ? -out : out, z];
}
