import type { Gap } from './segments.ts';
import { finish, type Steps } from './steps.ts';
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

/** A fan is split into flat triangles no wider than this, rad: its edge falls short by 0.9 % at most. */
const WIDEST_TRIANGLE = (15 * Math.PI) / 180;

/** What a swaying line sweeps: flat triangles, all of them with a corner at the tow point for a straight line. */
export function fan(line: SwayingLine): Triangle[] {
    const [pivot] = line.line;
    if (!pivot) return [];
    const sway = swayReached(line);
    const pieces = Math.max(1, Math.ceil((2 * sway) / WIDEST_TRIANGLE - 1e-9));
    const swept: Triangle[] = [];
    let left = turned(line.line, -sway);
    for (let piece = 1; piece <= pieces; piece++) {
        const right = turned(line.line, (2 * sway * piece) / pieces - sway);
        for (let index = 1; index < left.length; index++) {
            if (index > 1) swept.push([left[index - 1]!, right[index - 1]!, left[index]!]);
            swept.push([right[index - 1]!, left[index]!, right[index]!]);
        }
        left = right;
    }
    return swept;
}

/** A line turned about the vertical through its tow point. */
function turned(line: readonly Vec[], angle: number): Vec[] {
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    const [x, y] = line[0]!;
    return line.map((point) => {
        const dx = point[0] - x;
        const dy = point[1] - y;
        return [x + dx * cosine - dy * sine, y + dx * sine + dy * cosine, point[2]];
    });
}

/** How far a line turns to either side before its cap stops it, rad; square to its bearing at most. */
export function swayReached({ line, sway, cap = Number.POSITIVE_INFINITY }: SwayingLine): number {
    const reach = planReach(line);
    const most = Math.min(sway, Math.PI / 2);
    return reach > cap ? Math.min(most, Math.asin(cap / reach)) : most;
}

/** How far the lure moves to either side, m. */
export function swayAtLure(line: SwayingLine): number {
    return planReach(line.line) * Math.sin(swayReached(line));
}

/** From the tow point to the lure, seen from above, m. */
function planReach(line: readonly Vec[]): number {
    const to = line.at(-1);
    return to ? Math.hypot(to[0] - line[0]![0], to[1] - line[0]![1]) : 0;
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
 * The smallest sway at which two lines come within the contact distance. Their own sways are not used, their caps
 * are.
 *
 * @param contact  m
 * @param upTo     rad; no margin is looked for beyond
 * @returns `undefined` for a line of fewer than two points
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
    const touch = finish(
        leastSway((sway) => {
            const gap = clearance(...at(sway))!;
            return gap.distance <= contact ? gap : undefined;
        }, upTo),
    );
    if (!touch) return { outcome: 'clear', upTo };
    const [a, b] = at(touch.sway);
    return {
        outcome: 'touch',
        sway: touch.sway,
        atLures: [swayAtLure(a), swayAtLure(b)],
        at: touch.found.at,
    };
}

/** A sway is found to this, rad: 0.01°. */
const SWAY_ERROR = (0.01 * Math.PI) / 180;

/**
 * The smallest sway at which something is found, when all that is found at one is found at every greater: a wider fan
 * holds the narrower, but for the flatness of its triangles.
 *
 * @returns `undefined` when nothing is found up to the limit, rad; step by step, a sway at a time
 */
export function* leastSway<T>(
    find: (sway: number) => T | undefined,
    upTo: number,
): Steps<{ sway: number; found: T } | undefined> {
    const still = find(0);
    if (still !== undefined) return { sway: 0, found: still };
    yield;
    let [clear, sway] = [0, Math.min(upTo, Math.PI / 2)];
    let found = find(sway);
    if (found === undefined) return undefined;
    while (sway - clear > SWAY_ERROR) {
        yield;
        const middle = (clear + sway) / 2;
        const between = find(middle);
        if (between === undefined) clear = middle;
        else [sway, found] = [middle, between];
    }
    return { sway, found };
}

/** A line in air at rest: its lure on the surface directly astern of the tow point. */
export function directlyAstern(towPoint: Vec, astern: number): readonly [Vec, Vec] {
    return [towPoint, [-astern, towPoint[1], 0]];
}
