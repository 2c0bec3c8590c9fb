import { CONTACT_DISTANCE } from '../sway.ts';
import { type Triangle, triangleGap } from '../triangles.ts';
import { lerp, type Vec } from '../vector.ts';

/** A line as it is handled; all points in the boat's frame, m. */
export interface HandledLine {
    /** Tip of its rod in the holder: where the line is paid out from and taken in to. */
    readonly rodTip: Vec;
    /** Where it is towed from once set; the rod tip itself for a line with no clip. */
    readonly towPoint: Vec;
    /** Of the lure once set, astern of the transom. */
    readonly astern: number;
}

/** What is done to a line. On the way in the same happens backwards. */
export type Stage = 'paying out' | 'hauling to the clip';

/** Where a line that is being handled comes too near to one already set. */
export interface Crossing {
    readonly stage: Stage;
    /** Least distance, m; 0 where it sweeps across. */
    readonly distance: number;
    /** Where, on the handled line's way and on the set line. */
    readonly at: readonly [Vec, Vec];
}

/** The way to the clip is swept in so many steps. */
const HAUL_STEPS = 16;

/**
 * Whether a line on its way out (or in) sweeps across a line that is set.
 *
 * Paid out, the line hangs straight from its rod tip to the lure, which goes astern from there to its distance; then
 * its clip goes straight from the rod tip to the tow point and the lure sideways with it. Lines do not sway here.
 *
 * @param contact  nearer than this, m, counts
 * @returns the nearest place, or `undefined` when the two stay apart
 */
export function crossing(
    handled: HandledLine,
    set: HandledLine,
    contact = CONTACT_DISTANCE,
): Crossing | undefined {
    const out = nearestPlace(paidOut(handled), setLine(set), contact);
    if (out.distance <= contact) return { stage: 'paying out', ...out };
    const hauled = nearestPlace(hauledOut(handled), setLine(set), contact);
    return hauled.distance <= contact ? { stage: 'hauling to the clip', ...hauled } : undefined;
}

/** A set line from rod tip over the clip to the lure. */
export function setLine({ rodTip, towPoint, astern }: HandledLine): Vec[] {
    return [rodTip, towPoint, [-astern, towPoint[1], 0]];
}

/** All places of a line while its lure goes from under the rod tip to its distance. */
function paidOut({ rodTip, astern }: HandledLine): Triangle[] {
    return [[rodTip, [Math.max(rodTip[0], -astern), rodTip[1], 0], [-astern, rodTip[1], 0]]];
}

/** All places of a line while its clip goes from the rod tip to the tow point. */
function hauledOut({ rodTip, towPoint, astern }: HandledLine): Triangle[] {
    const swept: Triangle[] = [];
    for (let step = 0; step < HAUL_STEPS; step++) {
        const [clip, nextClip] = [step, step + 1].map((at) => lerp(rodTip, towPoint, at / HAUL_STEPS)) as [
            Vec,
            Vec,
        ];
        const lure: Vec = [-astern, clip[1], 0];
        swept.push(
            [rodTip, clip, nextClip],
            [clip, nextClip, lure],
            [nextClip, lure, [-astern, nextClip[1], 0]],
        );
    }
    return swept;
}

/**
 * Where swept places come nearest to a line of straight pieces.
 *
 * @param within  m; what is surely further away is not worked out, and a distance beyond it may be any beyond it
 */
export function nearestPlace(
    swept: readonly Triangle[],
    line: readonly Vec[],
    within = Number.POSITIVE_INFINITY,
): { distance: number; at: readonly [Vec, Vec] } {
    let least: ReturnType<typeof nearestPlace> = {
        distance: Number.POSITIVE_INFINITY,
        at: [line[0]!, line[0]!],
    };
    for (const triangle of swept) {
        for (let index = 0; index + 1 < line.length; index++) {
            const piece = [line[index]!, line[index + 1]!, line[index + 1]!] as const;
            if (boxGap(triangle, piece) > Math.min(within, least.distance)) continue;
            const gap = triangleGap(triangle, piece);
            if (gap.distance < least.distance) least = gap;
        }
    }
    return least;
}

/** How far apart two triangles are at least: the gap between the boxes around them, along the axis where it is widest. */
function boxGap(first: Triangle, second: Triangle): number {
    let gap = 0;
    for (let axis = 0; axis < 3; axis++) {
        const [a, b, c] = [first[0][axis]!, first[1][axis]!, first[2][axis]!];
        const [d, e, f] = [second[0][axis]!, second[1][axis]!, second[2][axis]!];
        const apart = Math.max(Math.min(a, b, c) - Math.max(d, e, f), Math.min(d, e, f) - Math.max(a, b, c));
        gap = Math.max(gap, apart);
    }
    return gap;
}
