import { stiffness, TANGENTIAL_DRAG } from './coefficients.ts';
import { SEA_WATER_DENSITY } from './constants.ts';
import { RUNNING_SPEED } from './drag.ts';
import { isNotNegative, isPositive, isSound } from './sound.ts';

/** A bite, from the moment the fish has the lure. */
export interface StrikeQuestion {
    /**
     * `direct`: the reel stands at hooked drag and drives the hook at the bite. `drop-back`: it stands at set drag,
     * and the lever is pushed to hooked drag when the fish has had its time.
     */
    readonly style: 'direct' | 'drop-back';
    /** On a line held by a clip: the pull that opens it, N, and the line that then falls slack, m (see `dropBack`). */
    readonly clip?: { readonly setting: number; readonly slack: number };
    /** Towing pull of the lure, N. */
    readonly pull: number;
    readonly line: {
        /** From reel to hook, m. */
        readonly out: number;
        /** m */
        readonly diameter: number;
        /** Pa; see `MATERIALS` where nobody measured it. */
        readonly modulus: number;
    };
    /** At the spool as it stands, N. */
    readonly drag: { readonly set: number; readonly hooked: number };
    /** From the clip's opening (without a clip: from the bite) to the push, s. Only with a drop-back. */
    readonly wait?: number;
    /** How long the push takes, s. 0.5 s by default [estimate]. */
    readonly push?: number;
    /** Of the boat through the water, m/s. */
    readonly speed: number;
    readonly fish?: Fish;
}

/** How a fish behaves that has the lure. */
export interface Fish {
    /** Away from the boat along the line, through the water, with nothing to hold it; m/s, negative towards it. */
    readonly speed: number;
    /** The most it can pull, N: its speed falls evenly from `speed` with no load to none at this one. */
    readonly pull: number;
}

/**
 * A fish nobody has met. Estimates both: speed between a tagged blue marlin's bursts of 2.25 m/s (Block et al.,
 * J. Exp. Biol. 166, 1992) and the 8.3 m/s that a sailfish's muscle allows (Svendsen et al., Biology Open 5, 2016);
 * pull a fair share of a 100 kg fish's weight.
 */
export const UNKNOWN_FISH: Fish = { speed: 3, pull: 300 };

/**
 * Between which that fish lies. Estimates: from one that holds its speed, as tagged marlin did (Block et al.), to one
 * that runs as fast as `RUNNING_SPEED` has it; from half the pull to twice.
 */
export const FISH_BETWEEN: readonly Fish[] = [
    { speed: RUNNING_SPEED.low, pull: UNKNOWN_FISH.pull / 2 },
    { speed: RUNNING_SPEED.high, pull: UNKNOWN_FISH.pull * 2 },
];

export type StrikeMoment = {
    readonly name: 'bite' | 'clip opens' | 'line tight' | 'reel slips' | 'push' | 'hooked drag';
    /** s from the bite */
    readonly time: number;
    /** Tension at the hook, N. */
    readonly hook: number;
    /** Line off the reel since the bite, m. */
    readonly lineOff: number;
};

export interface StrikeSample {
    /** s from the bite */
    readonly time: number;
    /** Tension at the hook, N. */
    readonly hook: number;
    /** Tension at the reel, N; none while a clip holds the line. */
    readonly reel: number;
    /** What the reel is set to, N. */
    readonly drag: number;
    /** m */
    readonly slack: number;
    /** Line off the reel since the bite, m. */
    readonly lineOff: number;
}

export type Strike =
    | {
          readonly kind: 'strike';
          /** In order of time; what does not happen within ten seconds is not among them. */
          readonly moments: readonly StrikeMoment[];
          /** Every 0.05 s from 0 to 10 s. */
          readonly series: readonly StrikeSample[];
          /** The highest tension at the hook, N. */
          readonly peak: number;
      }
    | { readonly kind: 'bad-input'; readonly reason: string };

const DURATION = 10;
const STEP = 1e-3;
const SAMPLE = 50;

/**
 * The first ten seconds of a strike.
 *
 * Boat and fish draw apart. While the clip holds, the line behind it stretches until the clip opens; what it then
 * gives up is slack, and nothing pulls until the slack is gone; then the line stretches until the reel slips. Line
 * and reel have no inertia: drag and stretch decide within a second. At the hook the skin friction of the line is
 * added, drawn along its length at the fish's speed. The boat holds its course and speed.
 */
export function strike(question: StrikeQuestion): Strike {
    const fault = faultOf(question);
    if (fault !== undefined) return { kind: 'bad-input', reason: fault };

    const { style, clip, pull, line, drag, wait = 0, push = 0.5, speed, fish = UNKNOWN_FISH } = question;
    const rate = stiffness(line.diameter, line.modulus);
    const friction = 0.5 * SEA_WATER_DENSITY * Math.PI * line.diameter * TANGENTIAL_DRAG.value;

    const moments: StrikeMoment[] = [];
    const series: StrikeSample[] = [];
    let held = clip !== undefined;
    let pushAt = held || style === 'direct' ? Number.POSITIVE_INFINITY : wait;
    let reelDrag = style === 'direct' ? drag.hooked : drag.set;
    let tension = held ? Math.min(pull, clip!.setting) : Math.min(pull, reelDrag);
    let slack = 0;
    let lineOff = 0;
    let water = 0;
    let peak = 0;
    let time = 0;

    const hook = () => (slack > 0 ? 0 : tension + water);
    const noted = new Set<StrikeMoment['name']>();
    const note = (name: StrikeMoment['name']) => {
        if (noted.has(name)) return;
        noted.add(name);
        moments.push({ name, time, hook: hook(), lineOff });
    };
    const slip = () => {
        if (held || tension <= reelDrag) return;
        lineOff += ((tension - reelDrag) * (line.out + lineOff)) / rate;
        tension = reelDrag;
        note('reel slips');
        if (style === 'direct' || time >= pushAt + push) note('hooked drag');
    };
    note('bite');
    for (let step = 0; ; step++) {
        time = step * STEP;
        if (time >= pushAt) {
            note('push');
            const pushed = push > 0 ? Math.min(1, (time - pushAt) / push) : 1;
            reelDrag = drag.set + (drag.hooked - drag.set) * pushed;
            slip();
        }
        peak = Math.max(peak, hook());
        if (step % SAMPLE === 0) {
            series.push({ time, hook: hook(), reel: held ? 0 : tension, drag: reelDrag, slack, lineOff });
        }
        if (time >= DURATION) break;

        const out = line.out + lineOff;
        // Speed of the fish: `free` with no load, `yields` less for every newton.
        const yields = fish.speed > 0 ? fish.speed / fish.pull : 0;
        const free = speed + fish.speed - yields * water;
        if (slack > 0) {
            slack -= (speed + fish.speed) * STEP;
            if (slack > 0) continue;
            tension = (-slack * rate) / out;
            slack = 0;
            note('line tight');
        } else {
            // Linear in the tension, so the step is taken implicitly: stable however stiff the line.
            const grows = (STEP * rate) / out;
            tension = (tension + grows * free) / (1 + grows * yields);
            if (tension < 0) {
                slack = (-tension * out) / rate;
                tension = 0;
            }
        }
        if (held && tension >= clip!.setting) {
            note('clip opens');
            held = false;
            slack = clip!.slack + (tension * out) / rate;
            tension = 0;
            if (style === 'drop-back') pushAt = time + wait;
        }
        slip();
        water = slack > 0 ? 0 : heldByWater(fish, tension, friction * out);
    }
    return { kind: 'strike', moments, series, peak };
}

/** The lowest and the highest of several. */
export interface Between {
    readonly low: number;
    readonly high: number;
}

/**
 * What a strike comes to over everything about it that is only estimated.
 *
 * @param pulls  of the lure, N: the ends of its range, or the one that was measured
 * @returns the peak, N, and the times of the moments that come in every one of these strikes, s; `undefined` where
 *          one of them cannot be
 */
export function strikeBetween(
    question: StrikeQuestion,
    pulls: readonly number[],
    fish: readonly Fish[] = FISH_BETWEEN,
): { readonly peak: Between; readonly times: ReadonlyMap<StrikeMoment['name'], Between> } | undefined {
    const found = [
        question,
        ...pulls.flatMap((pull) => fish.map((each) => ({ ...question, pull, fish: each }))),
    ]
        .map(strike)
        .flatMap((each) => (each.kind === 'strike' ? [each] : []));
    const [first, ...others] = found;
    if (!first || others.length < pulls.length * fish.length) return undefined;
    const timed = first.moments.flatMap(({ name }): [StrikeMoment['name'], Between][] => {
        const times = found.flatMap(({ moments }) => moments.find((each) => each.name === name)?.time ?? []);
        return times.length < found.length ? [] : [[name, between(times)]];
    });
    return { peak: between(found.map(({ peak }) => peak)), times: new Map(timed) };
}

function between(values: readonly number[]): Between {
    return { low: Math.min(...values), high: Math.max(...values) };
}

/**
 * What the water takes from a fish that draws line through it at the speed which it then still makes.
 *
 * @param perSpeed  friction of the whole line at 1 m/s, N
 */
function heldByWater({ speed, pull }: Fish, tension: number, perSpeed: number): number {
    if (speed <= 0) return 0;
    const most = speed * (1 - tension / pull);
    if (most <= 0) return 0;
    const swims = (2 * most) / (1 + Math.sqrt(1 + 4 * (speed / pull) * perSpeed * most));
    return perSpeed * swims ** 2;
}

function faultOf({ clip, pull, line, drag, wait, push, speed, fish }: StrikeQuestion): string | undefined {
    if (clip && !isPositive(clip.setting)) return 'The clip’s setting is not above zero.';
    if (clip && !isNotNegative(clip.slack)) return 'The slack is below zero.';
    if (!isNotNegative(pull)) return 'The lure’s pull is below zero.';
    if (!isPositive(line.out, line.diameter, line.modulus))
        return 'The line’s length, thickness or modulus is not above zero.';
    if (!isPositive(drag.set, drag.hooked)) return 'A drag is not above zero.';
    if (!isNotNegative(wait ?? 0, push ?? 0)) return 'The wait, or the push, is below zero.';
    if (!isNotNegative(speed)) return 'The boat’s speed is below zero.';
    if (fish && !(isSound(fish.speed) && isPositive(fish.pull)))
        return 'The fish’s speed or pull is out of range.';
    return undefined;
}
