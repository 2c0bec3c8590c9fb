import { lureSpeed, type Trail } from './trail.ts';

/** The slowest that a lure runs in a turn. */
export interface Slowest {
    /** Through the water, m/s; 0 while its line is slack. */
    readonly speed: number;
    /** s */
    readonly time: number;
}

/**
 * The slowest moment of a lure on a taut line, from the helm going over to the end of the turn looked at.
 *
 * Within a stretch the lag behind the tow point grows or shrinks all the way, so the speed is least at one of its
 * ends (where it passes through no lag it is greatest).
 */
export function slowest(trail: Trail): Slowest {
    let least: Slowest = { speed: Number.POSITIVE_INFINITY, time: 0 };
    for (const stretch of trail.stretches) {
        if (stretch.start >= trail.turn.end) break;
        for (const time of [stretch.start, Math.min(stretch.end, trail.turn.end)]) {
            if (time < 0) continue;
            const speed = lureSpeed(trail, stretch, time);
            if (speed < least.speed) least = { speed, time };
        }
    }
    return least;
}
