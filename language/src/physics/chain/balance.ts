import { SEA_WATER_DENSITY, STANDARD_GRAVITY } from '../constants.ts';
import type { TowedLure } from '../towed.ts';
import type { Vec } from '../vector.ts';
import { type Links, weightOf } from './links.ts';
import { dry, type Wetness, wetOf } from './surface.ts';

/** Where the nodes are and how they move, three figures a node from the lure (0) to the tow point; m, m/s, m/s². */
export interface Motion {
    readonly x: Float64Array;
    readonly v: Float64Array;
    readonly a: Float64Array;
}

/** What acts on a chain apart from its own motion. */
export interface Surroundings {
    readonly lure: TowedLure;
    readonly wind: Vec;
    /** Drag coefficient across each link, in water and in air. */
    readonly crossFlow: readonly [Float64Array, Float64Array];
    /** Reynolds numbers across each link for which those hold. */
    readonly reynolds: readonly [Float64Array, Float64Array];
}

/** Force that is missing at each free node, and how it changes as nodes move: blocks of 3 × 3 by rows. */
export interface Balance {
    /** Mass × acceleration − force, N. */
    readonly missing: Float64Array;
    readonly lower: Float64Array;
    readonly diagonal: Float64Array;
    readonly upper: Float64Array;
    /** The link being loaded, handed on in one array because numbers as arguments would each be boxed: see `Link`. */
    readonly link: Float64Array;
    readonly wetness: Wetness;
}

/** Places in `Balance.link`. */
const Link = {
    tx: 0,
    ty: 1,
    tz: 2,
    length: 3,
    rate: 4,
    part: 5,
    centre: 6,
    fx: 7,
    fy: 8,
    fz: 9,
    size: 10,
} as const;

/**
 * How hard the surface holds down a lure that its line pulls up, N a metre that it has risen. Estimate: a lure that
 * is pulled up with twice its weight rises by a centimetre or two, and faces and suction do the rest.
 */
export const SURFACE_HOLD = 400;

/**
 * Fills in the balance of every free node.
 *
 * @param rate  d(velocity)/d(position) of the time-stepping, 1/s; 0 for a chain at rest in steady motion
 *
 * Water below z = 0, air above; a link that passes the surface feels each on its part, and hands it to its two nodes
 * by the lever. Axes stand still in the water.
 */
export function balance(
    links: Links,
    around: Surroundings,
    motion: Motion,
    rate: number,
    into: Balance,
): void {
    into.missing.fill(0);
    into.lower.fill(0);
    into.diagonal.fill(0);
    into.upper.fill(0);
    into.link[Link.rate] = rate;
    loadLure(around.lure, motion, rate, into);
    for (let j = 0; j < links.count; j++) loadLink(links, around, motion, j, into);
}

function loadLure(
    { dragArea, diveArea = 0, mass, weightInWater }: TowedLure,
    motion: Motion,
    rate: number,
    into: Balance,
) {
    const { x, v, a } = motion;
    const { missing, diagonal } = into;
    const vx = v[0]!;
    const vy = v[1]!;
    const vz = v[2]!;
    const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const drag = 0.5 * SEA_WATER_DENSITY * dragArea;
    const dive = 0.5 * SEA_WATER_DENSITY * diveArea;
    missing[0] = mass * a[0]! + drag * speed * vx;
    missing[1] = mass * a[1]! + drag * speed * vy;
    missing[2] = mass * a[2]! + drag * speed * vz + dive * speed * speed + weightInWater;

    const inertia = mass * rate * rate;
    const even = inertia + rate * drag * speed;
    const per = speed > 0 ? (rate * drag) / speed : 0;
    const down = 2 * rate * dive;
    diagonal[0] = even + per * vx * vx;
    diagonal[1] = per * vx * vy;
    diagonal[2] = per * vx * vz;
    diagonal[3] = diagonal[1]!;
    diagonal[4] = even + per * vy * vy;
    diagonal[5] = per * vy * vz;
    diagonal[6] = diagonal[2]! + down * vx;
    diagonal[7] = diagonal[5]! + down * vy;
    diagonal[8] = even + per * vz * vz + down * vz;
    if (x[2]! > 0) {
        missing[2] = missing[2]! + SURFACE_HOLD * x[2]!;
        diagonal[8] = diagonal[8]! + SURFACE_HOLD;
    }
}

function loadLink(links: Links, around: Surroundings, motion: Motion, j: number, into: Balance): void {
    const { x, a } = motion;
    const { missing, lower, diagonal, upper, link } = into;
    const rate = link[Link.rate]!;
    const below = 3 * j;
    const above = below + 3;
    const ownBlock = 9 * j;
    const nextBlock = ownBlock + 9;
    const free = j + 1 < links.count;

    const dx = x[above]! - x[below]!;
    const dy = x[above + 1]! - x[below + 1]!;
    const dz = x[above + 2]! - x[below + 2]!;
    const length = Math.sqrt(dx * dx + dy * dy + dz * dz) + 1e-12;
    const tx = dx / length;
    const ty = dy / length;
    const tz = dz / length;

    // Stretch: no link pushes.
    const rest = links.length[j]!;
    const pull = Math.max(0, links.rate[j]! * (length / rest - 1));
    const turn = pull / length;
    const stretch = pull > 0 ? links.rate[j]! / rest - turn : 0;

    // Inertia, half a link's at either node; water goes along across the link only.
    const half = links.mass[j]! / 2;
    const heavy = weightOf(links, j) / 2;
    const { wetness } = into;
    wetOf(x[below + 2]!, x[above + 2]!, wetness);
    const wet = wetness.share;
    const added = (links.displaced[j]! / 2) * wet;
    const inertia = rate * rate * (half + added);
    const along = rate * rate * added;

    for (let row = 0; row < 3; row++) {
        const tr = row === 0 ? tx : row === 1 ? ty : tz;
        const aBelow = added * (tx * a[below]! + ty * a[below + 1]! + tz * a[below + 2]!);
        missing[below + row]! += (half + added) * a[below + row]! - aBelow * tr - pull * tr;
        if (free) {
            const aAbove = added * (tx * a[above]! + ty * a[above + 1]! + tz * a[above + 2]!);
            missing[above + row]! += (half + added) * a[above + row]! - aAbove * tr + pull * tr;
        }
        for (let column = 0; column < 3; column++) {
            const tc = column === 0 ? tx : column === 1 ? ty : tz;
            const stiff = stretch * tr * tc + (row === column ? turn : 0);
            const mass = (row === column ? inertia : 0) - along * tr * tc;
            const place = 3 * row + column;
            diagonal[ownBlock + place]! += stiff + mass;
            if (free) {
                upper[ownBlock + place]! -= stiff;
                lower[nextBlock + place]! -= stiff;
                diagonal[nextBlock + place]! += stiff + mass;
            }
        }
    }
    missing[below + 2]! += heavy;
    if (free) missing[above + 2]! += heavy;

    link[Link.tx] = tx;
    link[Link.ty] = ty;
    link[Link.tz] = tz;
    link[Link.length] = length;
    if (wet > 0) {
        link[Link.part] = wet;
        link[Link.centre] = Math.min(1, wetness.moment / wet);
        loadFluid(links, around, motion, j, 0, into);
    }
    if (wet < 1) {
        link[Link.part] = 1 - wet;
        link[Link.centre] = Math.min(1, Math.max(0, (0.5 - wetness.moment) / (1 - wet)));
        loadFluid(links, around, motion, j, 1, into);
    }
}

/** Drag (and in water buoyancy) on the part of a link in one fluid, handed to its nodes by the lever. */
function loadFluid(
    links: Links,
    around: Surroundings,
    motion: Motion,
    j: number,
    fluid: 0 | 1,
    into: Balance,
): void {
    const { v } = motion;
    const { missing, lower, diagonal, upper, link } = into;
    const tx = link[Link.tx]!;
    const ty = link[Link.ty]!;
    const tz = link[Link.tz]!;
    const rate = link[Link.rate]!;
    const part = link[Link.part]!;
    const centre = link[Link.centre]!;
    const below = 3 * j;
    const above = below + 3;
    const free = j + 1 < links.count;
    const { wind } = around;

    const far = 1 - centre;
    const vx = far * v[below]! + centre * v[above]! - (fluid === 1 ? wind[0] : 0);
    const vy = far * v[below + 1]! + centre * v[above + 1]! - (fluid === 1 ? wind[1] : 0);
    const vz = far * v[below + 2]! + centre * v[above + 2]! - (fluid === 1 ? wind[2] : 0);
    const vt = vx * tx + vy * ty + vz * tz;
    const nx = vx - vt * tx;
    const ny = vy - vt * ty;
    const nz = vz - vt * tz;
    const across = Math.sqrt(nx * nx + ny * ny + nz * nz);

    // f = −(normal·|vn|·vn + tangential·|vt|·vt·t), for the whole link; `part` of it lies in this fluid.
    const normal = links.across[fluid][j]! * around.crossFlow[fluid][j]!;
    const tangential = links.along[fluid][j]!;
    const lift = fluid === 0 ? links.displaced[j]! * STANDARD_GRAVITY : 0;
    const slide = tangential * Math.abs(vt);
    const fx = -(normal * across * nx + slide * vt * tx);
    const fy = -(normal * across * ny + slide * vt * ty);
    const fz = -(normal * across * nz + slide * vt * tz) + lift;

    missing[below]! -= part * far * fx;
    missing[below + 1]! -= part * far * fy;
    missing[below + 2]! -= part * far * fz;
    if (free) {
        missing[above]! -= part * centre * fx;
        missing[above + 1]! -= part * centre * fy;
        missing[above + 2]! -= part * centre * fz;
    }

    // −df/dv = even·(1 − tt') + cross·vn·vn' + 2·slide·tt';  −df/dt as the link turns, with v held.
    const even = normal * across;
    const cross = across > 1e-9 ? normal / across : 0;
    const per = part / link[Link.length]!;
    const vBelow = part * rate * far;
    const vAbove = part * rate * centre;
    for (let row = 0; row < 3; row++) {
        const tr = row === 0 ? tx : row === 1 ? ty : tz;
        const nr = row === 0 ? nx : row === 1 ? ny : nz;
        for (let column = 0; column < 3; column++) {
            const tc = column === 0 ? tx : column === 1 ? ty : tz;
            const nc = column === 0 ? nx : column === 1 ? ny : nz;
            const unit = row === column ? 1 : 0;
            const byVelocity = even * (unit - tr * tc) + cross * nr * nc + 2 * slide * tr * tc;
            // Projected on what turns the link: the column across t.
            const byTurn =
                -even * (tr * nc + vt * (unit - tr * tc)) -
                cross * vt * nr * nc +
                2 * slide * tr * nc +
                slide * vt * (unit - tr * tc);
            const ofBelow = vBelow * byVelocity - per * byTurn;
            const ofAbove = vAbove * byVelocity + per * byTurn;
            const place = 3 * row + column;
            diagonal[9 * j + place]! += far * ofBelow;
            if (free) {
                upper[9 * j + place]! += far * ofAbove;
                lower[9 * j + 9 + place]! += centre * ofBelow;
                diagonal[9 * j + 9 + place]! += centre * ofAbove;
            }
        }
    }
    if (part < 1) {
        link[Link.fx] = fx;
        link[Link.fy] = fy;
        link[Link.fz] = fz;
        followSurface(links.count, j, fluid, into);
    }
}

/** How the load on a part changes as the surface passes along the link. */
function followSurface(count: number, j: number, fluid: 0 | 1, into: Balance): void {
    const { lower, diagonal, upper, link, wetness } = into;
    const free = j + 1 < count;
    const sign = fluid === 0 ? 1 : -1;
    for (let row = 0; row < 3; row++) {
        const f = sign * link[Link.fx + row]!;
        const place = 3 * row + 2;
        diagonal[9 * j + place]! -= f * (wetness.shareByFirst - wetness.momentByFirst);
        if (free) {
            upper[9 * j + place]! -= f * (wetness.shareBySecond - wetness.momentBySecond);
            lower[9 * j + 9 + place]! -= f * wetness.momentByFirst;
            diagonal[9 * j + 9 + place]! -= f * wetness.momentBySecond;
        }
    }
}

/** Room for the balance of so many links. */
export function roomFor(links: number): Balance {
    return {
        missing: new Float64Array(3 * links),
        lower: new Float64Array(9 * links),
        diagonal: new Float64Array(9 * links),
        upper: new Float64Array(9 * links),
        link: new Float64Array(Link.size),
        wetness: dry(),
    };
}

/** Tension of each link as the nodes lie, N; never negative. */
export function tensionOf({ length, rate }: Links, { x }: Motion, j: number): number {
    const i = 3 * j;
    const now = Math.hypot(x[i + 3]! - x[i]!, x[i + 4]! - x[i + 1]!, x[i + 5]! - x[i + 2]!);
    return Math.max(0, rate[j]! * (now / length[j]! - 1));
}
