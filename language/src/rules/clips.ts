import type { ClipFigures, LineFigures } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import type { Spread, SpreadLine } from '../plan/model.ts';
import { runnerOf } from './gear.ts';
import { known } from './neighbours.ts';

/** A clip that holds a lure, and what it has to hold and to open for. */
export interface HeldLure {
    readonly clip: ClipFigures;
    readonly runner: NonNullable<ReturnType<typeof runnerOf>>;
    /** What the lure pulls, N: with surge where the plan says its sea, and by itself. */
    readonly towing: number;
    readonly pull: number;
    /** What a fish may be asked to pull: the method's own word, or else hooked drag. */
    readonly limit?: { readonly most: Measure; readonly by: 'method' | 'drag' };
}

/** `undefined` where there is no clip, or not enough is known of it. */
export function heldLure(figures: LineFigures, plan: Spread): HeldLure | undefined {
    const { line } = figures;
    const [clip, pull] = [figures.clip && known(figures.clip), known(figures.pull)];
    const runner = runnerOf(line);
    if (!clip || !runner || pull === undefined) return undefined;
    const [opens, hooked] = [line.method?.value.opens, line.drag.hooked];
    const limit = opens
        ? { most: opens, by: 'method' as const }
        : hooked && { most: hooked, by: 'drag' as const };
    return { clip, runner, towing: plan.sea ? clip.towing : pull, pull, ...(limit && { limit }) };
}

/** Which of the boat's clips holds a line, where one clip holds one line: `port halyard 1`. */
export function clipPlaceOf({ position, from, role }: SpreadLine): string | undefined {
    if (role === 'standby' || !from) return undefined;
    if (from.kind === 'halyard') return `${position.side} halyard ${from.number}`;
    return from.kind === 'flat clip' ? `${position.side} flat clip` : undefined;
}
