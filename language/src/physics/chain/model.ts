import type { Turn } from '../turn/manoeuvre.ts';
import type { LineMotion, TurnModel } from '../turn/model.ts';
import { taut } from '../turn/taut.ts';
import { type ChainLine, type ChainState, runChain } from './run.ts';

/**
 * A line as a chain of links with weight, stretch, drag and inertia, in air and water: for submerged lines, divers,
 * leads and slack. `undefined` for a line that cannot be or does not settle (`runChain` says which).
 */
export const chain: TurnModel<ChainLine> = (line, turn, times) => {
    const run = runChain(line, turn, times);
    const states: ChainState[] = [];
    for (;;) {
        const { value, done } = run.next();
        if (!done) states.push(value);
        else if (value.kind !== 'done') return undefined;
        else return { states, ...(value.slackAt !== undefined && { slackAt: value.slackAt }) };
    }
};

export type TautTrust =
    | {
          readonly kind: 'compared';
          /** Farthest that the taut line's lure strays from the chain's, m, and when, s. */
          readonly astray: number;
          readonly at: number;
          /** Deepest that the lure sinks in the turn, m below the surface. */
          readonly sinks: number;
          /** Whether either line falls slack. */
          readonly slack: boolean;
          /** Whether the taut line may stand for this one: never slack, and astray by no more than `within`. */
          readonly trusted: boolean;
      }
    | { readonly kind: 'no-answer'; readonly reason: string };

/** How far the simple model may stray: as far as lures sway on their own. Estimate. */
export const TRUSTED_WITHIN = 1;

/** Follows one line by both models, every half second of a turn. */
export function compareTaut(line: ChainLine, turn: Turn, within = TRUSTED_WITHIN): TautTrust {
    const times = Array.from({ length: Math.floor(turn.end / 0.5) + 1 }, (_, index) => index / 2);
    const full = chain(line, turn, times);
    return full
        ? trustIn(line, turn, full, within)
        : { kind: 'no-answer', reason: 'The line cannot be followed through this turn.' };
}

/** How far the taut line strays from a chain that was followed already, at the moments at which that one was seen. */
export function trustIn(line: ChainLine, turn: Turn, full: LineMotion, within = TRUSTED_WITHIN): TautTrust {
    const simple = taut(
        line,
        turn,
        full.states.map(({ time }) => time),
    );
    if (!simple) return { kind: 'no-answer', reason: 'The line cannot be followed through this turn.' };
    let astray = 0;
    let at = 0;
    let sinks = 0;
    full.states.forEach(({ time, line }, index) => {
        const [x, y, z] = line.at(-1)!;
        const other = simple.states[index]!.line.at(-1)!;
        const apart = Math.hypot(x - other[0], y - other[1], z - other[2]);
        if (apart > astray) [astray, at] = [apart, time];
        sinks = Math.max(sinks, -z);
    });
    const slack = full.slackAt !== undefined || simple.slackAt !== undefined;
    return { kind: 'compared', astray, at, sinks, slack, trusted: !slack && astray <= within };
}
