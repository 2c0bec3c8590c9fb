import { tightestHeld } from '../../physics/turn/manoeuvre.ts';
import type { Figure } from '../figures.ts';
import type { Spread } from '../model.ts';
import { known, silent } from './figure.ts';

/** The radius to which a boat can be held at the plan's speed, m: tighter turns are not looked at. */
export function heldOf({ speed }: Spread): Figure {
    if (!speed) return silent('The plan has no speed.');
    if (!(speed.si > 0)) return silent('The boat is not under way.');
    return known(tightestHeld(speed.si), 'computed', [
        'In a turn a boat bears no more than half its own weight sideways (estimate).',
    ]);
}
