import { holderFor } from '../plan/analyse/tow-point.ts';
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

/** What of the boat holds a line, where it holds one line: `port halyard 1`, `holder of port corner`. */
export function holdOf({ position, from, role, clip }: SpreadLine, { boat }: Spread): string | undefined {
    if (role === 'standby' || !from) return undefined;
    switch (from.kind) {
        case 'halyard':
            return `${position.side} halyard ${from.number}`;
        case 'flat clip':
            return `${position.side} flat clip`;
        case 'point':
            // An eye takes several cords, a clip in it one line.
            return clip && `${position.side} ${from.name}`;
        case 'rod tip': {
            const holder = boat && holderFor(position, boat.value.holders);
            return holder && `${position.side} holder of ${holder.position.name}`;
        }
    }
}

/** Two lines that one thing holds touch wherever they run: what cures that is another hold, and nothing else. */
export function haveOneHold(a: SpreadLine, b: SpreadLine, plan: Spread): boolean {
    const hold = holdOf(a, plan);
    return hold !== undefined && hold === holdOf(b, plan);
}
