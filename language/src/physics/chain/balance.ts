import { loadFluid } from './fluid-load.ts';
import { type Links, weightOf } from './links.ts';
import { loadLure } from './lure-load.ts';
import { type Balance, Link, type Motion, type Surroundings } from './motion.ts';
import { wetOf } from './surface.ts';

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

/** Tension of each link as the nodes lie, N; never negative. */
export function tensionOf({ length, rate }: Links, { x }: Motion, j: number): number {
    const i = 3 * j;
    const now = Math.hypot(x[i + 3]! - x[i]!, x[i + 4]! - x[i + 1]!, x[i + 5]! - x[i + 2]!);
    return Math.max(0, rate[j]! * (now / length[j]! - 1));
}
