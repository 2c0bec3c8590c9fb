import { STANDARD_GRAVITY } from '../constants.ts';
import type { Links } from './links.ts';
import { type Balance, Link, type Motion, type Surroundings } from './motion.ts';

/** Drag (and in water buoyancy) on the part of a link in one fluid, handed to its nodes by the lever. */
export function loadFluid(
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
