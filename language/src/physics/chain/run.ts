import { MATERIALS } from '../coefficients.ts';
import { lineAtRest } from '../line.ts';
import { isSound } from '../sound.ts';
import type { Tow } from '../towed.ts';
import type { Turn } from '../turn/manoeuvre.ts';
import type { LineState, TowedLine } from '../turn/model.ts';
import { towPointAt } from '../turn/trail.ts';
import type { Vec } from '../vector.ts';
import { tensionOf } from './balance.ts';
import { advanceChain, type Chain, layChain } from './chain.ts';
import { restChain } from './rest.ts';

/** A line that a chain can follow: all that is known of it, not only where it runs. */
export interface ChainLine extends TowedLine {
    /** Wind as it blows over the water, in the axes of the course before the turn. */
    readonly tow: Tow;
    /** How many links; 20 by default. */
    readonly links?: number;
    /** Longest step, s; 0.1 by default. */
    readonly step?: number;
}

export interface ChainState extends LineState {
    readonly tension: number;
    /** At the lure, N. */
    readonly lureTension: number;
}

export type ChainEnd =
    | { readonly kind: 'done'; readonly slackAt?: number; readonly evaluations: number }
    | { readonly kind: 'bad-line'; readonly reason: string }
    /** The computation broke off after so much time, s. */
    | { readonly kind: 'did-not-settle'; readonly at: number };

/** Longest manoeuvre that is followed, s. */
const LONGEST = 3600;

/** On a line mostly in the air the last link is so many times as long as the first: it is at the lure that it bends. */
const GROWTH_IN_AIR = 6;

/**
 * A line in air hangs by its own weight and always pulls a little. It counts as slack when its lure comes so much
 * nearer to the tow point than at rest. Estimate.
 */
export const SLACK_BELOW = 0.95;

/**
 * Follows a line through a turn as a chain of links, one state at a time: ask for the next, or leave off.
 *
 * @param times  s, ascending; before time 0 the line is at rest behind the boat
 */
export function* runChain(
    line: ChainLine,
    turn: Turn,
    times: readonly number[],
): Generator<ChainState, ChainEnd, void> {
    if (!times.every((time, index) => isSound(time) && time >= (times[index - 1] ?? time))) {
        return { kind: 'bad-line', reason: 'The times are not ascending.' };
    }
    if ((times.at(-1) ?? 0) > LONGEST)
        return { kind: 'bad-line', reason: 'The turn lasts longer than an hour.' };
    const chain = startChain(line, turn.manoeuvre.speed);
    if (typeof chain === 'string') return { kind: 'bad-line', reason: chain };

    const longest = Math.min(0.5, Math.max(1e-3, line.step ?? 0.1));
    const taut = SLACK_BELOW * reachOf(chain.now);
    let slackAt: number | undefined;
    for (const time of times) {
        while (chain.time < time) {
            if (!advanceChain(chain, (at) => towPointAt(line, turn, at), chain.time + longest, longest)) {
                return { kind: 'did-not-settle', at: chain.time };
            }
            if (slackAt === undefined && reachOf(chain.now) < taut) slackAt = chain.time;
        }
        yield stateAt(chain, time, turn.manoeuvre.speed, taut);
    }
    return { kind: 'done', evaluations: chain.evaluations, ...(slackAt !== undefined && { slackAt }) };
}

/** The chain at rest at time 0, or why there is none. */
function startChain({ towPoint, layback, tow, links = 20 }: ChainLine, speed: number): Chain | string {
    const sections = tow.sections.map((section) => ({ modulus: MATERIALS.nylon.modulus.value, ...section }));
    const stretchy = { ...tow, sections: sections as unknown as Tow['sections'] };
    const rest = lineAtRest({ ...stretchy, towPoint, speed, length: { astern: layback - towPoint[0] } });
    if (rest.kind === 'too-short') return 'The lure would not run astern of its tow point.';
    if (rest.kind !== 'at-rest') return rest.reason;
    const growth = rest.wet < rest.lineOut / 2 ? GROWTH_IN_AIR : 1;
    const chain = layChain(stretchy, rest.lineOut, links, growth);
    if (!chain) return 'A chain has from 1 to 2000 links.';
    return restChain(chain, [towPoint, ...rest.shape.slice(1)], speed)
        ? chain
        : 'The line finds no rest behind the boat.';
}

/** Straight from the tow point to the lure, m. */
function reachOf({ x }: Chain['now']): number {
    const top = x.length - 3;
    return Math.hypot(x[top]! - x[0]!, x[top + 1]! - x[1]!, x[top + 2]! - x[2]!);
}

/** From the middles of the last two links to the end. */
function endTension(last: number, before: number): number {
    return last > 0 ? Math.max(0, last + (last - before) / 2) : 0;
}

/** Between two steps every node follows the cubic that fits its places and velocities. */
function stateAt(chain: Chain, time: number, speed: number, taut: number): ChainState {
    const { links, now, before, lastStep } = chain;
    const node = cubic(chain, time, speed);
    const line: Vec[] = [];
    for (let i = links.count; i >= 0; i--) line.push([node(3 * i), node(3 * i + 1), node(3 * i + 2)]);
    const part = Math.min(1, Math.max(0, 1 + (time - chain.time) / lastStep));
    const between = (ofBefore: number, ofNow: number) => ofBefore + part * (ofNow - ofBefore);
    const tension = (j: number) => between(tensionOf(links, before, j), tensionOf(links, now, j));
    const [first, second] = [tension(0), tension(Math.min(1, links.count - 1))];
    const top = endTension(tension(links.count - 1), tension(Math.max(0, links.count - 2)));
    const velocity = [0, 1, 2].map((axis) => between(before.v[axis]!, now.v[axis]!));
    return {
        time,
        line,
        speed: Math.hypot(...velocity),
        tension: top,
        lureTension: endTension(first, second),
        slack: between(reachOf(before), reachOf(now)) < taut,
    };
}

function cubic(
    { now, before, lastStep, time: end }: Chain,
    time: number,
    speed: number,
): (i: number) => number {
    if (time <= 0) return (i) => now.x[i]! + (i % 3 === 0 ? speed * (time - end) : 0);
    const t = 1 + (time - end) / lastStep;
    const [a, b] = [t * t * (3 - 2 * t), t * t * (t - 1) * lastStep];
    const c = t * (1 - t) * (1 - t) * lastStep;
    return (i) => (1 - a) * before.x[i]! + a * now.x[i]! + c * before.v[i]! + b * now.v[i]!;
}
