import { crossFlowDrag } from '../coefficients.ts';
import { AIR_VISCOSITY, SEA_WATER_VISCOSITY } from '../constants.ts';
import { isPositive } from '../sound.ts';
import { faultOf, type Tow } from '../towed.ts';
import type { Vec } from '../vector.ts';
import { balance } from './balance.ts';
import { solveBlocks } from './blocks.ts';
import { type Links, linksOf } from './links.ts';
import { type Balance, type Motion, roomFor, type Surroundings } from './motion.ts';

/**
 * A towed line as a chain of elastic links, moving. Nodes run from the lure (0) to the tow point; axes stand still in
 * the water. Written over in place as time goes on.
 */
export interface Chain {
    readonly links: Links;
    readonly around: Surroundings;
    /** Drag across by Reynolds number, or at the coefficients that are set. */
    readonly byReynolds: boolean;
    /** s */
    time: number;
    /** Of the last step, s. */
    lastStep: number;
    /** Now, and one step before. */
    now: Motion;
    before: Motion;
    /** What a step tries. */
    trial: Motion;
    readonly balance: Balance;
    /** How many nodes have been put in balance since the start: what the computation costs. */
    evaluations: number;
}

const MOST_LINKS = 2000;

/** Lays a chain out, at rest in the water, every node at the origin; `undefined` for a tow that cannot be. */
export function layChain(tow: Tow, lineOut: number, count: number, growth = 1): Chain | undefined {
    if (faultOf(tow) !== undefined || !isPositive(lineOut, growth)) return undefined;
    if (!Number.isInteger(count) || count < 1 || count > MOST_LINKS) return undefined;
    const links = linksOf(tow, lineOut, count, growth);
    const motion = (): Motion => ({
        x: new Float64Array(3 * count + 3),
        v: new Float64Array(3 * count + 3),
        a: new Float64Array(3 * count + 3),
    });
    const coefficients = () => new Float64Array(count).fill(tow.normalDrag ?? 1.2);
    return {
        links,
        around: {
            lure: tow.lure,
            wind: tow.wind ?? [0, 0, 0],
            crossFlow: [coefficients(), coefficients()],
            reynolds: [new Float64Array(count), new Float64Array(count)],
        },
        byReynolds: tow.normalDrag === undefined,
        time: 0,
        lastStep: 0.1,
        now: motion(),
        before: motion(),
        trial: motion(),
        balance: roomFor(count),
        evaluations: 0,
    };
}

/** Nodes have settled when none moves further than this in an iteration, m. */
const SETTLED = 5e-5;
const MOST_ITERATIONS = 20;
const MOST_STEPS = 50_000;

/**
 * Moves a chain on by one step, implicitly: backward differences of second order (BDF2, at any ratio to the step
 * before), solved by Newton's method with every move held to half a link.
 *
 * @param towPoint  where the tow point is after the step, m
 * @param step      s
 * @returns whether it settled; if not, the chain is as it was
 */
export function stepChain(chain: Chain, towPoint: Vec, step: number): boolean {
    const { now, before, trial, links } = chain;
    const free = 3 * links.count;
    const ratio = step / chain.lastStep;
    const rate = (1 + 2 * ratio) / ((1 + ratio) * step);
    const ofNow = -(1 + ratio) / step;
    const ofBefore = ratio ** 2 / ((1 + ratio) * step);

    const move = () => {
        for (let i = 0; i < free + 3; i++) {
            trial.v[i] = rate * trial.x[i]! + ofNow * now.x[i]! + ofBefore * before.x[i]!;
            trial.a[i] = rate * trial.v[i]! + ofNow * now.v[i]! + ofBefore * before.v[i]!;
        }
    };
    for (let i = 0; i < free; i++) {
        trial.x[i] = now.x[i]! + step * (now.v[i]! + (ratio / 2) * (now.v[i]! - before.v[i]!));
    }
    trial.x[free] = towPoint[0];
    trial.x[free + 1] = towPoint[1];
    trial.x[free + 2] = towPoint[2];
    move();
    if (chain.byReynolds) followReynolds(chain, trial);
    if (!settle(chain, rate, MOST_ITERATIONS, move)) return false;
    chain.trial = before;
    chain.before = now;
    chain.now = trial;
    chain.lastStep = step;
    chain.time += step;
    return true;
}

/** A step that does not settle is halved so often. */
const MOST_HALVINGS = 7;

/**
 * Moves a chain on to a time, in steps as long as asked or, where one does not settle, shorter.
 *
 * @param towPointAt  m, at a time in s
 * @returns whether it arrived; if not, the chain stands where it last settled
 */
export function advanceChain(
    chain: Chain,
    towPointAt: (time: number) => Vec,
    until: number,
    longest = 0.1,
): boolean {
    let halvings = 0;
    for (let steps = 0; steps < MOST_STEPS; steps++) {
        const left = until - chain.time;
        if (left <= 1e-9) return true;
        const step = longest / 2 ** halvings;
        // Two even steps rather than a long one and a sliver.
        const part = left < step * 1.001 ? left : left < 2 * step ? left / 2 : step;
        if (stepChain(chain, towPointAt(chain.time + part), part)) {
            if (halvings > 0) halvings--;
        } else if (++halvings > MOST_HALVINGS) return false;
    }
    return false;
}

/**
 * Newton's iteration on `chain.trial`.
 *
 * @param rate  see `balance`
 * @param move  brings velocities and accelerations after positions
 */
export function settle(chain: Chain, rate: number, most: number, move: () => void): boolean {
    const { trial, links, around } = chain;
    const { lower, diagonal, upper, missing } = chain.balance;
    const free = 3 * links.count;
    let reach = Number.POSITIVE_INFINITY;
    for (let j = 0; j < links.count; j++) reach = Math.min(reach, links.length[j]! / 2);
    let last = Number.POSITIVE_INFINITY;
    let jumps = 1;
    for (let iteration = 0; iteration < most; iteration++) {
        balance(links, around, trial, rate, chain.balance);
        chain.evaluations += links.count + 1;
        if (!solveBlocks(lower, diagonal, upper, missing, links.count)) return false;
        let furthest = 0;
        for (let i = 0; i < free; i++) furthest = Math.max(furthest, Math.abs(missing[i]!));
        if (!(furthest < Number.POSITIVE_INFINITY)) return false;
        // Where nodes jump to and fro over a kink (the surface, a link just slack), shorter moves end it.
        if (iteration > 3 && furthest < reach)
            jumps = furthest > 0.7 * last ? Math.max(0.1, jumps / 2) : Math.min(1, 2 * jumps);
        const share = jumps * (furthest > reach ? reach / furthest : 1);
        last = furthest;
        for (let i = 0; i < free; i++) trial.x[i]! -= share * missing[i]!;
        move();
        if (furthest < SETTLED) return true;
    }
    return false;
}

/** By how much a Reynolds number changes before the drag follows it; the drag changes by a tenth of that. */
const NOTICED = 0.02;

/** Sets the drag across each link by the Reynolds number at which it moves. */
export function followReynolds({ links, around }: Chain, { x, v }: Motion): void {
    const { wind } = around;
    for (let j = 0; j < links.count; j++) {
        const below = 3 * j;
        const above = below + 3;
        const dx = x[above]! - x[below]!;
        const dy = x[above + 1]! - x[below + 1]!;
        const dz = x[above + 2]! - x[below + 2]!;
        const length = Math.sqrt(dx * dx + dy * dy + dz * dz) + 1e-12;
        const first = Math.min(x[below + 2]!, x[above + 2]!) < 0 ? 0 : 1;
        const last = Math.max(x[below + 2]!, x[above + 2]!) > 0 ? 1 : 0;
        for (let fluid = first; fluid <= last; fluid++) {
            const vx = (v[below]! + v[above]!) / 2 - fluid * wind[0];
            const vy = (v[below + 1]! + v[above + 1]!) / 2 - fluid * wind[1];
            const vz = (v[below + 2]! + v[above + 2]!) / 2 - fluid * wind[2];
            const along = (vx * dx + vy * dy + vz * dz) / length;
            const across = Math.sqrt(Math.max(0, vx * vx + vy * vy + vz * vz - along * along));
            const viscosity = fluid === 0 ? SEA_WATER_VISCOSITY : AIR_VISCOSITY;
            const reynolds = (across * links.diameter[j]!) / viscosity;
            const known = around.reynolds[fluid as 0 | 1];
            if (Math.abs(reynolds - known[j]!) < NOTICED * known[j]!) continue;
            known[j] = reynolds;
            around.crossFlow[fluid as 0 | 1][j] = crossFlowDrag(reynolds);
        }
    }
}
