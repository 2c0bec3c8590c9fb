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
    /** The running line meets it while the fish runs straight astern of the struck lure. */
    | { readonly kind: 'astern'; readonly at: Vec }
    /** The running line meets it when the fish has gone so far to the side of the struck lure, m. */
    | { readonly kind: 'run'; readonly side: 'port' | 'starboard'; readonly aside: number; readonly at: Vec }
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
    /** How far astern of the transom the fish may run before it goes to the side, m. 100 m by default [estimate]. */
    readonly run?: number;
    /** Lines nearer than this are taken to touch, m. */
    readonly contact?: number;
}

/** A fish is followed so far to either side, m. Estimate: as far as it runs. */
const WIDEST = 100;

/** The first metres aside are looked at this closely, m, further ones by this factor more coarsely. */
const FIRST = 0.5;
const COARSER = 1.25;

/**
 * The order in which to clear the other lines after a strike: first what the hooked line falls across, then what the
 * running line meets while the fish runs straight astern of the struck lure, then what it meets once the fish goes to
 * a side, nearest first on whichever side that is, then the rest, shortest first; and always after what would be swept
 * across on the way in.
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
        if (reason.kind === 'release') return -2;
        if (reason.kind === 'astern') return -1;
        return reason.kind === 'run' ? reason.aside : Number.MAX_VALUE;
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
    const falling = nearestPlace([[hooked.towPoint, hooked.rodTip, lureOf(hooked)]], obstacle, contact);
    if (falling.distance <= contact) return { kind: 'release', at: falling.at[1] };
    const running = nearestPlace([away(hooked, run, 0)], obstacle, contact);
    if (running.distance <= contact) return { kind: 'astern', at: running.at[1] };
    const [port, starboard] = (['port', 'starboard'] as const).map((side) =>
        meeting(hooked, obstacle, side, run, contact),
    );
    if (!port || !starboard) return port ?? starboard ?? { kind: 'rest' };
    return port.aside <= starboard.aside ? port : starboard;
}

function lureOf({ astern, towPoint }: HandledLine): Vec {
    return [-astern, towPoint[1], 0];
}

/** All places of the running line while a fish so far aside of the struck lure, to port, runs away astern. */
function away(hooked: HandledLine, run: number, aside: number): Triangle {
    const [x, y] = lureOf(hooked);
    return [hooked.rodTip, [x, y + aside, 0], [Math.min(x, -run), y + aside, 0]];
}

/** Where a line that runs from the rod tip to a fish going to one side, anywhere on its way astern, first meets a set line. */
function meeting(
    hooked: HandledLine,
    obstacle: readonly Vec[],
    side: 'port' | 'starboard',
    run: number,
    contact: number,
): Extract<Reason, { kind: 'run' }> | undefined {
    const sign = side === 'port' ? 1 : -1;
    // The space between two places aside is met through the surfaces around it: near, far and furthest aside.
    const swept = (from: number, to: number): Triangle[] => {
        const [tip, near, far] = away(hooked, run, sign * from);
        const [, nearNext, farNext] = away(hooked, run, sign * to);
        return [
            [tip, near, nearNext],
            [tip, far, farNext],
            [tip, nearNext, farNext],
            [near, nearNext, far],
            [nearNext, far, farNext],
        ];
    };
    for (let [from, step] = [0, FIRST]; from < WIDEST; from += step, step *= COARSER) {
        const found = nearestPlace(swept(from, from + step), obstacle, contact);
        if (found.distance > contact) continue;
        let [clear, met, at] = [from, from + step, found.at[1]];
        for (let halving = 0; halving < 12; halving++) {
            const middle = (clear + met) / 2;
            const nearer = nearestPlace(swept(from, middle), obstacle, contact);
            if (nearer.distance > contact) clear = middle;
            else [met, at] = [middle, nearer.at[1]];
        }
        return { kind: 'run', side, aside: met, at };
    }
    return undefined;
}
