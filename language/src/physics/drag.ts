import { TANGENTIAL_DRAG } from './coefficients.ts';
import { SEA_WATER_DENSITY } from './constants.ts';
import { isNotNegative, isPositive } from './sound.ts';

/** A reel's spool as the side plate and a ruler give it. */
export interface Spool {
    /** Of the spool filled with line, m. */
    readonly fullRadius: number;
    /** Of the bare arbor, m. */
    readonly arborRadius: number;
    /** Line on the full spool, m. */
    readonly capacity: number;
}

/** One drag setting, and what is needed to follow it as the spool empties. */
export interface DragQuestion {
    readonly spool: Spool;
    /** Pull at which the reel slips, N, as measured with `measuredWith` metres left on the spool. */
    readonly setting: number;
    /** m; the full spool by default. */
    readonly measuredWith?: number;
    /** Weight of the line class, N. */
    readonly lineClass?: number;
    /** Line that the fish is expected to take, m. 400 m by default [estimate]. */
    readonly run?: number;
    /** Diameter of the line, m; with it the pull of the line in the water is added. */
    readonly diameter?: number;
}

/** What it takes to draw line from the reel with so much left on it. */
export interface DragAt {
    /** Line left on the spool, m and as a fraction. */
    readonly left: number;
    readonly fraction: number;
    /** Of the line on the spool, m. */
    readonly radius: number;
    /** At the reel, N. */
    readonly force: number;
    /** Of the line class, at the reel; absent without a class. */
    readonly ofClass?: number;
    /** At the fish: the reel and the line drawn through the water; absent without a diameter. */
    readonly atFish?: { readonly low: number; readonly high: number };
}

export type DragOverSpool =
    | {
          readonly kind: 'drag';
          /** Full, three quarters, half, a quarter, empty. */
          readonly rows: readonly DragAt[];
          readonly afterRun: DragAt | 'spooled';
      }
    | { readonly kind: 'bad-spool'; readonly reason: string }
    | { readonly kind: 'bad-setting'; readonly reason: string };

/** How far a fish is expected to run, m. Estimate. */
export const EXPECTED_RUN = 400;

/**
 * How fast a fish draws the line along its own path, m/s. Estimate between measurements: 0.8 to 1.2 sustained by
 * tagged blue marlin, bursts to 2.25 (Block et al., J. Exp. Biol. 166, 1992); the fastest a sailfish's muscle
 * allows, 8.3 (Svendsen et al., Biology Open 5, 2016).
 */
export const RUNNING_SPEED = { low: 1.2, high: 5 } as const;

/**
 * Radius of the line on a spool.
 *
 * @param left  line left, m
 * @returns m, or `undefined` where the spool cannot be or does not hold that much
 *
 * Line of one thickness laid evenly: r² grows with its length. (Closed form; the filling factor drops out.)
 */
export function spoolRadius(spool: Spool, left: number): number | undefined {
    const { fullRadius, arborRadius, capacity } = spool;
    if (!isPositive(fullRadius, arborRadius, capacity) || arborRadius >= fullRadius) return undefined;
    if (!isNotNegative(left) || left > capacity) return undefined;
    const perMetre = (fullRadius ** 2 - arborRadius ** 2) / capacity;
    return Math.sqrt(arborRadius ** 2 + perMetre * left);
}

/** A drag setting at every level of the spool: force goes as 1 / radius, brake torque staying the same. */
export function dragOverSpool(question: DragQuestion): DragOverSpool {
    const { spool, setting, measuredWith = spool.capacity, run = EXPECTED_RUN } = question;
    const measuredAt = spoolRadius(spool, measuredWith);
    if (measuredAt === undefined) {
        const sound = spoolRadius(spool, 0) !== undefined;
        return sound
            ? { kind: 'bad-setting', reason: 'The drag was measured with more line than the spool holds.' }
            : {
                  kind: 'bad-spool',
                  reason: 'A spool needs an arbor smaller than its full radius, and a capacity.',
              };
    }
    if (!isPositive(setting)) return { kind: 'bad-setting', reason: 'The drag is not above zero.' };
    if (!isNotNegative(run)) return { kind: 'bad-setting', reason: 'The expected run is below zero.' };

    const torque = setting * measuredAt;
    const at = (left: number): DragAt => {
        const radius = spoolRadius(spool, left)!;
        const force = torque / radius;
        const { lineClass, diameter } = question;
        const water = isPositive(diameter ?? 0) ? pullOfLine(diameter!, spool.capacity - left) : undefined;
        return {
            left,
            fraction: left / spool.capacity,
            radius,
            force,
            ...(isPositive(lineClass ?? 0) && { ofClass: force / lineClass! }),
            ...(water && { atFish: { low: force + water.low, high: force + water.high } }),
        };
    };
    return {
        kind: 'drag',
        rows: [1, 0.75, 0.5, 0.25, 0].map((fraction) => at(fraction * spool.capacity)),
        afterRun: run > spool.capacity ? 'spooled' : at(spool.capacity - run),
    };
}

/**
 * What the water holds on to a line drawn through it along its own path, N: skin friction on its whole length.
 * A belly drawn sideways holds more; nobody can say how much.
 *
 * @param diameter  m
 * @param length    in the water, m
 */
export function pullOfLine(diameter: number, length: number): { low: number; high: number } {
    const wetted = Math.PI * diameter * length;
    const pull = (coefficient: number, speed: number) =>
        0.5 * SEA_WATER_DENSITY * wetted * coefficient * speed ** 2;
    return {
        low: pull(TANGENTIAL_DRAG.low, RUNNING_SPEED.low),
        high: pull(TANGENTIAL_DRAG.high, RUNNING_SPEED.high),
    };
}
