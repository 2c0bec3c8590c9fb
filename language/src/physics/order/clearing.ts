import { CONTACT_DISTANCE } from '../sway.ts';
import type { Triangle } from '../triangles.ts';
import type { Vec } from '../vector.ts';
import { type HandledLine, nearestPlace, setLine } from './crossing.ts';
import { arrange, type Before } from './precedence.ts';
import { type Demand, retrievingOrder } from './setting.ts';

/** Why a line is cleared when it is. Lines are named by their place in the list. */
export type Reason =
    /** The hooked line falls across it as the clip opens. */
    | { readonly kind: 'release'; readonly at: Vec }
    /** The running line meets it when the fish has gone that far to the side, rad from the hooked line's bearing. */
    | { readonly kind: 'run'; readonly side: 'port' | 'starboard'; readonly angle: number; readonly at: Vec }
    /** It is in the way of taking in another that has to be cleared sooner. */
    | { readonly kind: 'in the way'; readonly of: number }
    /** The running line does not meet it. */
    | { readonly kind: 'rest' };

export interface Clearance {
    readonly line: number;
    readonly reason: Reason;
}

export interface ClearingOrder {
    /** All lines but the hooked one. */
    readonly order: readonly Clearance[];
    /** What must come in before what, for `atOnce`. */
    readonly demands: readonly Demand[];
    readonly cycles: readonly (readonly number[])[];
}

export interface Strike {
    /** The hooked line's place in the list. */
    readonly hooked: number;
    /** How far off the fish is taken to be while it goes to the side, m. 100 m by default [estimate]. */
    readonly run?: number;
    /** Lines nearer than this are taken to touch, m. */
    readonly contact?: number;
}

/** A running line is followed from the hooked line's bearing so far to either side, rad: 90°. */
const WIDEST = Math.PI / 2;

/** It is swept in pieces of this, rad: 5°. */
const PIECE = Math.PI / 36;

/**
 * The order in which to clear the other lines after a strike: first what the hooked line falls across, then what the
 * running line would meet, soonest first on whichever side the fish runs, then the rest, shortest first; and always
 * after what would be swept across on the way in.
 *
 * @returns `undefined` when no line of the list is hooked
 */
export function clearingOrder(lines: readonly HandledLine[], strike: Strike): ClearingOrder | undefined {
    const { hooked, run = 100, contact = CONTACT_DISTANCE } = strike;
    const line = lines[hooked];
    if (!line) return undefined;
    const others = lines.flatMap((_, index) => (index === hooked ? [] : [index]));
    const reasons = new Map(others.map((other) => [other, reasonFor(line, lines[other]!, run, contact)]));
    const urgency = (other: number) => {
        const reason = reasons.get(other)!;
        return reason.kind === 'release' ? -1 : reason.kind === 'run' ? reason.angle : Number.MAX_VALUE;
    };

    const demands = retrievingOrder(lines, contact).demands.filter(
        ({ first, second }) => first !== hooked && second !== hooked,
    );
    // A line in the way of a more urgent one is as urgent as that.
    const pressed = new Map(others.map((other) => [other, { urgency: urgency(other), by: other }]));
    for (const _ of others) {
        for (const { first, second } of demands) {
            const [one, other] = [pressed.get(first)!, pressed.get(second)!];
            if (other.urgency < one.urgency) pressed.set(first, { urgency: other.urgency, by: second });
        }
    }
    const prefer = (one: number, other: number) =>
        pressed.get(one)!.urgency - pressed.get(other)!.urgency || lines[one]!.astern - lines[other]!.astern;
    const { order, cycles } = arrange(
        others.length,
        demands.map(
            ({ first, second }): Before => ({ first: others.indexOf(first), second: others.indexOf(second) }),
        ),
        (one, other) => prefer(others[one]!, others[other]!),
    );
    return {
        order: order.map((place) => {
            const other = others[place]!;
            const { by } = pressed.get(other)!;
            return {
                line: other,
                reason: by === other ? reasons.get(other)! : { kind: 'in the way', of: by },
            };
        }),
        demands,
        cycles: cycles.map((cycle) => cycle.map((place) => others[place]!)),
    };
}

function reasonFor(hooked: HandledLine, other: HandledLine, run: number, contact: number): Reason {
    const obstacle = setLine(other);
    const lure: Vec = [-hooked.astern, hooked.towPoint[1], 0];
    const falling = nearestPlace([[hooked.towPoint, hooked.rodTip, lure]], obstacle);
    if (falling.distance <= contact) return { kind: 'release', at: falling.at[1] };
    const [port, starboard] = (['port', 'starboard'] as const).map((side) =>
        meeting(hooked, obstacle, side, run, contact),
    );
    if (!port || !starboard) return port ?? starboard ?? { kind: 'rest' };
    return port.angle <= starboard.angle ? port : starboard;
}

/** Where a line that runs from the rod tip to a fish going to one side first meets a set line. */
function meeting(
    hooked: HandledLine,
    obstacle: readonly Vec[],
    side: 'port' | 'starboard',
    run: number,
    contact: number,
): Extract<Reason, { kind: 'run' }> | undefined {
    const { rodTip, towPoint, astern } = hooked;
    const distance = Math.max(run, Math.hypot(astern + rodTip[0], towPoint[1] - rodTip[1]));
    const straight = Math.atan2(towPoint[1] - rodTip[1], astern + rodTip[0]);
    const fish = (angle: number): Vec => {
        const bearing = straight + (side === 'port' ? angle : -angle);
        return [rodTip[0] - distance * Math.cos(bearing), rodTip[1] + distance * Math.sin(bearing), 0];
    };
    const swept = (from: number, to: number): Triangle => [rodTip, fish(from), fish(to)];
    for (let from = 0; from < WIDEST - 1e-9; from += PIECE) {
        if (nearestPlace([swept(from, from + PIECE)], obstacle).distance > contact) continue;
        let [clear, met] = [from, from + PIECE];
        for (let halving = 0; halving < 12; halving++) {
            const middle = (clear + met) / 2;
            if (nearestPlace([swept(from, middle)], obstacle).distance > contact) clear = middle;
            else met = middle;
        }
        return { kind: 'run', side, angle: met, at: nearestPlace([swept(from, met)], obstacle).at[1] };
    }
    return undefined;
}
