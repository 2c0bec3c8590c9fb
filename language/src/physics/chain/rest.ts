import type { Vec } from '../vector.ts';
import { advanceChain, type Chain, followReynolds, settle } from './chain.ts';

/**
 * Puts a chain at rest behind a boat on a straight course along x: a guess of its shape is settled link by link.
 *
 * @param shape  from the tow point (first) to the lure (last), m
 * @param speed  of the boat through the water, m/s
 * @returns whether it came to rest
 */
export function restChain(chain: Chain, shape: readonly Vec[], speed: number): boolean {
    spread(chain, shape);
    const { trial } = chain;
    for (let i = 0; i < trial.x.length; i += 3) {
        trial.v[i] = speed;
        trial.v[i + 1] = trial.v[i + 2] = 0;
    }
    trial.a.fill(0);
    for (let round = 0; round < (chain.byReynolds ? 3 : 1); round++) {
        if (chain.byReynolds) followReynolds(chain, trial);
        if (!settle(chain, 0, 60, () => {})) return settleUnderWay(chain, shape, speed);
    }
    hold(chain, speed);
    return true;
}

/** Nodes along a shape, as far apart as their links are long. */
function spread({ trial, links }: Chain, shape: readonly Vec[]): void {
    const along = [0];
    for (let i = 1; i < shape.length; i++) {
        const [a, b] = [shape[i - 1]!, shape[i]!];
        along.push(along[i - 1]! + Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]));
    }
    const whole = along.at(-1)!;
    const lineOut = links.length.reduce((sum, length) => sum + length, 0);
    let piece = 1;
    let out = 0;
    for (let node = links.count; node >= 0; node--) {
        const at = (whole * out) / lineOut;
        out += node > 0 ? links.length[node - 1]! : 0;
        while (piece < shape.length - 1 && along[piece]! < at) piece++;
        const [a, b] = [shape[piece - 1]!, shape[piece]!];
        const span = along[piece]! - along[piece - 1]!;
        const part = span > 0 ? Math.min(1, (at - along[piece - 1]!) / span) : 0;
        for (let axis = 0; axis < 3; axis++) {
            trial.x[3 * node + axis] = a[axis]! + part * (b[axis]! - a[axis]!);
        }
    }
}

/** How long the boat tows a guess before the line counts as lying still, s. */
const TOWED = 60;

/** Where no balance is found at once, the boat tows the guess until it lies still. */
function settleUnderWay(chain: Chain, shape: readonly Vec[], speed: number): boolean {
    spread(chain, shape);
    hold(chain, speed);
    const [x, y, z] = shape[0]!;
    const at = (time: number): Vec => [x + speed * time, y, z];
    if (!advanceChain(chain, at, TOWED, 0.2)) return false;
    for (let i = 0; i < chain.now.x.length; i += 3) chain.now.x[i]! -= speed * TOWED;
    chain.trial.x.set(chain.now.x);
    hold(chain, speed);
    return true;
}

/** Takes the trial as the chain's past and present, moving with the boat. */
function hold(chain: Chain, speed: number): void {
    const { now, before, trial } = chain;
    for (const motion of [now, before]) {
        motion.v.fill(0);
        motion.a.fill(0);
        for (let i = 0; i < motion.v.length; i += 3) motion.v[i] = speed;
    }
    now.x.set(trial.x);
    before.x.set(trial.x);
    for (let i = 0; i < before.x.length; i += 3) before.x[i]! -= speed * chain.lastStep;
    chain.time = 0;
}
