import fc from 'fast-check';
import { cross, dot, norm, scale, subtract, type Vec } from '../../language/src/physics/vector.ts';

const coordinate = fc.double({ min: -60, max: 60, noNaN: true });

/** Anywhere within 60 m. */
export const point = fc.tuple(coordinate, coordinate, coordinate);

/**
 * Two points are the nearest of two convex bodies just when the planes through them, square to the line between,
 * keep each body on its own side. A corner that breaches its plane by b lets the square of the distance d be shortened
 * by a step towards it: by (d·b/L)² where the corner is L away, or by 2·d·b − L² where the step would lead beyond it.
 *
 * @returns the root of the most that could still be gained of the square so, m
 */
export function gainLeft(first: readonly Vec[], second: readonly Vec[], at: readonly [Vec, Vec]): number {
    const between = subtract(at[1], at[0]);
    const distance = norm(between);
    const across = scale(between, 1 / distance);
    const gain = (corner: Vec, from: Vec, towards: Vec) => {
        const way = subtract(corner, from);
        const square = dot(way, way);
        const reach = distance * Math.max(0, dot(towards, way));
        if (!(square > 0)) return 0;
        return reach < square ? reach ** 2 / square : 2 * reach - square;
    };
    const back = scale(across, -1);
    const gains = [
        ...first.map((corner) => gain(corner, at[0], across)),
        ...second.map((corner) => gain(corner, at[1], back)),
    ];
    return Math.sqrt(Math.max(...gains));
}

/**
 * What rounding may leave to be gained, as `gainLeft` tells it, m.
 *
 * - A place is a sum of three products of coordinates: each of its coordinates is known to 4.5·ε·S, S the size of it
 *   all, so the place and the distance d to η = 8·ε·S, and the square of the distance to 2·d·η + η².
 * - Of carrying lines at an angle θ the nearest points are known to δ = 8·ε·S/sin²θ along them, but no worse than to
 *   the segments' ends; δ costs (δ·sinθ)² of the square.
 * - A face's normal is known to ε·L²/area, L its longest edge, so the height over it to η·L²/area.
 */
export function roundingLeaves(first: readonly Vec[], second: readonly Vec[], distance: number): number {
    const all = [...first, ...second];
    const size = Math.max(...all.flatMap((a) => all.map((b) => norm(subtract(a, b)))), ...all.map(norm));
    const flattest = Math.max(1, ...[first, second].map(flatnessOf));
    const place = 8 * Number.EPSILON * size * flattest;
    let parallel = 0;
    for (const u of edgesOf(first)) {
        for (const v of edgesOf(second)) {
            const square = norm(cross(u, v)) ** 2 / (dot(u, u) * dot(v, v));
            if (!(square > 0)) continue;
            parallel = Math.max(parallel, size ** 2 * Math.min(square, (8 * Number.EPSILON) ** 2 / square));
        }
    }
    return Math.sqrt(2 * distance * place + place ** 2 + parallel) + place;
}

function edgesOf(corners: readonly Vec[]): Vec[] {
    return corners.map((corner, index) => subtract(corners[(index + 1) % corners.length]!, corner));
}

/** The square of a face's longest edge over twice its area; a face so narrow that its edges stand for it has none. */
function flatnessOf(corners: readonly Vec[]): number {
    if (corners.length < 3) return 1;
    const edges = edgesOf(corners);
    const area = norm(cross(edges[0]!, edges[1]!));
    const longest = Math.max(...edges.map((edge) => dot(edge, edge)));
    return area > 1e-8 * longest ? longest / area : 1;
}
