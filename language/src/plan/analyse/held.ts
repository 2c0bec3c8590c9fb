import { tightestHeld } from '../../physics/turn/manoeuvre.ts';
import type { Figure } from '../figures.ts';
import type { Spread } from '../model.ts';
import { known, silent, withoutSpeed } from './figure.ts';

/** The radius to which a boat can be held at the plan's speed, m: tighter turns are not looked at. */
export function heldOf(plan: Spread): Figure {
    const { speed } = plan;
    if (!speed) return withoutSpeed(plan);
    if (!(speed.si > 0)) return silent('The boat is not under way.');
    return known(tightestHeld(speed.si), 'computed', [
        'In a turn a boat bears no more than half its own weight sideways (estimate).',
    ]);
}
