import { STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';
import { integrate } from '../integrate.ts';
import type { Params } from './moored.ts';

/** A turn of a tow point at so much height: straight before t = 0, an arc to port or starboard, straight after it. */
export interface Turn {
    readonly height: number;
    readonly speed: number;
    readonly radius: number;
    readonly side: 'port' | 'starboard';
    /** Turned through, rad. */
    readonly angle: number;
}

function towPoint({ height, speed, radius, side, angle }: Turn, time: number): { at: Vec; v: Vec } {
    const hand = side === 'port' ? 1 : -1;
    const turned = Math.min(angle, Math.max(0, (speed / radius) * time));
    const after = Math.max(0, time - (angle * radius) / speed);
    const [c, s] = [Math.cos(turned), Math.sin(turned)];
    const along = speed * (time < 0 ? time : after);
    return {
        at: [radius * s + along * c, hand * (radius * (1 - c) + along * s), height],
        v: [speed * c, hand * speed * s, 0],
    };
}

/**
 * The same physics set up another way and integrated explicitly by ODEX: beads on springs. A bead has half of either
 * spring's mass, water (across its own chord, the line between its neighbours), weight and drag; the springs between
 * them have no mass. What of a spring is under the surface goes by its two ends.
 */
function beads(params: Params, turn: Turn, springs: number) {
    const { rho, d, rho_line, L, Cdn, Cdt, EA, M, Vol, CdA } = params;
    const rest = L / springs;
    const area = (Math.PI / 4) * d ** 2;
    return (time: number, y: number[]): number[] => {
        const { at, v } = towPoint(turn, time);
        const place = (bead: number): Vec =>
            bead === springs ? at : [y[6 * bead]!, y[6 * bead + 1]!, y[6 * bead + 2]!];
        const speed = (bead: number): Vec =>
            bead === springs ? v : [y[6 * bead + 3]!, y[6 * bead + 4]!, y[6 * bead + 5]!];
        const slopes = new Array<number>(6 * springs);
        let pull: Vec = [0, 0, 0];
        let wetBelow = 0;
        for (let bead = 0; bead < springs; bead++) {
            const [p, q, u] = [place(bead), place(bead + 1), speed(bead)];
            const e: Vec = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
            const length = Math.hypot(...e);
            const tension = Math.max(0, EA * (length / rest - 1));
            const next: Vec = [
                (tension * e[0]) / length,
                (tension * e[1]) / length,
                (tension * e[2]) / length,
            ];
            const wetAbove = wetShare(p[2], q[2]);
            const share = bead === 0 ? wetAbove / 2 : (wetBelow + wetAbove) / 2;
            const reach = bead === 0 ? rest / 2 : rest;
            const wet = bead === 0 ? wetAbove * reach : share * reach;
            const o = bead === 0 ? p : place(bead - 1);
            const chord: Vec = [q[0] - o[0], q[1] - o[1], q[2] - o[2]];
            const size = Math.hypot(...chord);
            const t: Vec = [chord[0] / size, chord[1] / size, chord[2] / size];
            const slip = u[0] * t[0] + u[1] * t[1] + u[2] * t[2];
            const n: Vec = [u[0] - slip * t[0], u[1] - slip * t[1], u[2] - slip * t[2]];
            const across = 0.5 * rho * d * Cdn * Math.hypot(...n) * wet;
            const along = 0.5 * rho * Math.PI * d * Cdt * Math.abs(slip) * slip * wet;
            const isLure = bead === 0;
            const bulk = isLure ? 0.5 * rho * CdA * Math.hypot(...u) : 0;
            const weight =
                (rho_line * area * reach - rho * area * wet) * STANDARD_GRAVITY +
                (isLure ? (M - rho * Vol) * STANDARD_GRAVITY : 0);
            const force = [0, 1, 2].map(
                (i) =>
                    next[i]! -
                    pull[i]! -
                    across * n[i]! -
                    along * t[i]! -
                    bulk * u[i]! -
                    (i === 2 ? weight : 0),
            );
            const mass = rho_line * area * reach + (isLure ? M : 0);
            const added = rho * area * wet;
            const ft = force[0]! * t[0] + force[1]! * t[1] + force[2]! * t[2];
            for (let i = 0; i < 3; i++) {
                slopes[6 * bead + i] = u[i]!;
                slopes[6 * bead + 3 + i] = (ft / mass) * t[i]! + (force[i]! - ft * t[i]!) / (mass + added);
            }
            pull = next;
            wetBelow = wetAbove;
        }
        return slopes;
    };
}

/** Of a straight piece between two heights, under water. */
function wetShare(a: number, b: number): number {
    const [low, high] = a < b ? [a, b] : [b, a];
    return low >= 0 ? 0 : high <= 0 ? 1 : low / (low - high);
}

/** Where lure and middle are at each time, after half a minute straight ahead. */
export function followed(params: Params, turn: Turn, springs: number, times: readonly number[]) {
    const slope = beads(params, turn, springs);
    const before = -30;
    const { at } = towPoint(turn, before);
    let state = Array.from({ length: springs }, (_, bead) => [
        at[0] - ((springs - bead) / springs) * params.L * 1.001,
        at[1],
        at[2] - 0.05 * (1 - bead / springs),
        turn.speed,
        0,
        0,
    ]).flat();
    let from = before;
    return times.map((time) => {
        // The solver takes no more than so many steps at once.
        while (from < time) {
            const to = Math.min(time, from + 1);
            state = integrate(slope, from, state, to, 1e-5);
            from = to;
        }
        const of = (bead: number): Vec => [state[6 * bead]!, state[6 * bead + 1]!, state[6 * bead + 2]!];
        return { lure: of(0), middle: of(springs / 2) };
    });
}
