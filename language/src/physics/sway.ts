import type { Gap } from './segments.ts';
import { type Triangle, triangleGap } from './triangles.ts';
import type { Vec } from './vector.ts';

/**
 * A line that wanders: its lure moves sideways by its own action, waves and gusts, and the line turns with it about
 * the vertical through the tow point.
 */
export interface SwayingLine {
    /** From the tow point (first) to the lure (last), m, in axes with z up. A line in air has these two points. */
    readonly line: readonly Vec[];
    /** How far the line turns to either side, rad, 0 to π/2. */
    readonly sway: number;
    /** The lure's way to either side ends here, m; so long lines are not judged too harshly. None by default. */
    readonly cap?: number;
}

/** Estimate: 4° to either side, at most 3 m at the lure. */
export const USUAL_SWAY = { sway: (4 * Math.PI) / 180, cap: 3 };

/** Estimate: lines nearer than this, m, are taken to touch. */
export const CONTACT_DISTANCE = 0.25;

/** A fan is split into flat triangles no wider than this, rad: its edge falls short by 0.4 % at most. */
const WIDEST_TRIANGLE = (10 * Math.PI) / 180;

/** What a swaying line sweeps: flat triangles, all of them with a corner at the tow point for a straight line. */
export function fan(line: SwayingLine): Triangle[] {
    const [pivot] = line.line;
    if (!pivot) return [];
    const sway = swayReached(line);
    const pieces = Math.max(1, Math.ceil((2 * sway) / WIDEST_TRIANGLE - 1e-9));
    const swept: Triangle[] = [];
    for (let piece = 0; piece < pieces; piece++) {
        const from = -sway + (2 * sway * piece) / pieces;
        const to = -sway + (2 * sway * (piece + 1)) / pieces;
        let [left, right] = [pivot, pivot];
        for (const point of line.line.slice(1)) {
            const [nextLeft, nextRight] = [turned(point, pivot, from), turned(point, pivot, to)];
            if (left !== right) swept.push([left, right, nextLeft]);
            swept.push([right, nextLeft, nextRight]);
            [left, right] = [nextLeft, nextRight];
        }
    }
    return swept;
}

/** How far a line turns to either side before its cap stops it, rad. */
export function swayReached({ line, sway, cap = Number.POSITIVE_INFINITY }: SwayingLine): number {
    const reach = planReach(line);
    return reach > cap ? Math.min(sway, Math.asin(cap / reach)) : sway;
}

/** How far the lure moves to either side, m. */
export function swayAtLure(line: SwayingLine): number {
    return planReach(line.line) * Math.sin(swayReached(line));
}

/** From the tow point to the lure, seen from above, m. */
function planReach(line: readonly Vec[]): number {
    const [from, to] = [line[0], line[line.length - 1]];
    return from && to ? Math.hypot(to[0] - from[0], to[1] - from[1]) : 0;
}

function turned([x, y, z]: Vec, pivot: Vec, angle: number): Vec {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    const [dx, dy] = [x - pivot[0], y - pivot[1]];
    return [pivot[0] + dx * cosine - dy * sine, pivot[1] + dx * sine + dy * cosine, z];
}

/**
 * Clearance of two swaying lines: the least distance between their fans, each line being anywhere in its own.
 *
 * @returns `undefined` for a line of fewer than two points
 */
export function clearance(first: SwayingLine, second: SwayingLine): Gap | undefined {
    let least: Gap | undefined;
    const others = fan(second);
    for (const triangle of fan(first)) {
        for (const other of others) {
            const gap = triangleGap(triangle, other);
            if (!least || gap.distance < least.distance) least = gap;
        }
    }
    return least;
}

/** How much two lines may sway, both alike, before they touch. */
export type SwayMargin =
    | {
          readonly outcome: 'touch';
          /** rad */
          readonly sway: number;
          /** At the lures of the first and of the second line, m. */
          readonly atLures: readonly [number, number];
          /** Where they touch, on the first and on the second. */
          readonly at: readonly [Vec, Vec];
      }
    | { readonly outcome: 'clear'; readonly upTo: number };

/** The sway beyond which a margin is not looked for, rad: 30°. */
export const WIDEST_SWAY = Math.PI / 6;

/**
 * The smallest sway at which two lines first come within the contact distance. Their own sways are not used, their
 * caps are.
 *
 * @param contact  m
 * @param upTo     rad; the search ends here
 * @returns `undefined` for a line of fewer than two points
 *
 * No point of a line moves further than the lures, and those by less than their reach times the change of sway. So
 * the clearance gives each next sway that may be tried without passing over a contact.
 */
export function swayMargin(
    first: SwayingLine,
    second: SwayingLine,
    contact = CONTACT_DISTANCE,
    upTo = WIDEST_SWAY,
): SwayMargin | undefined {
    if (!clearance(first, second)) return undefined;
    const at = (sway: number) =>
        [
            { ...first, sway },
            { ...second, sway },
        ] as const;
    const touch = firstTouch(
        (sway) => clearance(...at(sway))!,
        furthest(first.line) + furthest(second.line),
        contact,
        upTo,
    );
    if (!touch) return { outcome: 'clear', upTo };
    const [a, b] = at(touch.sway);
    return { outcome: 'touch', sway: touch.sway, atLures: [swayAtLure(a), swayAtLure(b)], at: touch.gap.at };
}

/** A touch that lasts for less than this change of sway may be passed over, rad: 0.1°. */
const SWAY_STEP = (0.1 * Math.PI) / 180;

/** A sway is found to this, rad: 0.001°. */
const SWAY_ERROR = (0.001 * Math.PI) / 180;

/**
 * The smallest sway at which a gap that depends on it is within the contact distance.
 *
 * @param gapAt  of sway, rad; its distance changes by at most the lever for each radian
 * @param lever  m
 * @returns `undefined` when there is none up to the limit
 */
export function firstTouch<G extends { readonly distance: number }>(
    gapAt: (sway: number) => G,
    lever: number,
    contact: number,
    upTo: number,
): { sway: number; gap: G } | undefined {
    let clear = 0;
    let gap = gapAt(0);
    let sway = 0;
    while (gap.distance > contact) {
        clear = sway;
        if (!(sway < upTo)) return undefined;
        sway = Math.min(upTo, sway + Math.max(SWAY_STEP, (gap.distance - contact) / lever));
        gap = gapAt(sway);
    }
    while (sway - clear > SWAY_ERROR) {
        const middle = (clear + sway) / 2;
        const between = gapAt(middle);
        if (between.distance > contact) clear = middle;
        else [sway, gap] = [middle, between];
    }
    return { sway, gap };
}

/** The furthest that any point of a line lies from its tow point, seen from above, m. */
export function furthest(line: readonly Vec[]): number {
    return Math.max(0, ...line.map((point) => planReach([line[0]!, point])));
}

/** A line in air at rest: its lure on the surface directly astern of the tow point. */
export function directlyAstern(towPoint: Vec, astern: number): readonly [Vec, Vec] {
    return [towPoint, [-astern, towPoint[1], 0]];
}
