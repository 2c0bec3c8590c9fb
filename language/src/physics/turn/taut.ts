import type { LineState, TurnModel } from './model.ts';
import { bearingAt, follow, lureOn, lureSpeed, stretchAt, type Trail, towPointAt } from './trail.ts';

/**
 * A surface lure on a line wholly in air: the lure always moves straight towards its tow point, seen from above (a
 * tractrix), at the plan distance that it has at rest, √(length² − height²).
 *
 * The line has no weight, stretch or drag, the lure no inertia. Where the tow point would come nearer, the line is
 * slack and the lure lies still until the line is straight again. `undefined` for a layback that is not positive or
 * for figures that are not finite.
 */
export const taut: TurnModel = (line, turn, times) => {
    const trail = follow(line, turn);
    if (!trail || !times.every(Number.isFinite)) return undefined;
    const states = times.map((time) => stateAt(trail, time));
    return { states, ...(trail.slackAt !== undefined && { slackAt: trail.slackAt }) };
};

function stateAt(trail: Trail, time: number): LineState {
    const { line, turn } = trail;
    const stretch = stretchAt(trail, time);
    const lure = stretch.resting ?? lureOn(line, turn, bearingAt(trail, stretch, time), time);
    return {
        time,
        line: [towPointAt(line, turn, time), lure],
        speed: lureSpeed(trail, stretch, time),
        slack: stretch.resting !== undefined,
    };
}
