import { GUIDE_FRICTION } from './coefficients.ts';
import { isNotNegative, isPositive, isSound } from './sound.ts';
import { dot, norm, subtract, type Vec } from './vector.ts';

/**
 * How far a lure's pull rises above its mean as the boat surges, as a factor: 1.2 in a slight sea, rising to 1.5
 * at 1.5 m. Estimate.
 *
 * @param seaHeight  m; not a number counts as the rough end, the safe side for a clip that should hold
 */
export function surgeFactor(seaHeight: number): number {
    if (Number.isNaN(seaHeight)) return 1.5;
    return 1.2 + 0.3 * Math.min(Math.max(seaHeight - 0.5, 0), 1);
}

export type ClipMargin =
    | {
          readonly kind: 'margin';
          /** Setting ÷ (pull × surge): below 1 the clip opens for a sea. */
          readonly ratio: number;
          /** N; negative where the clip opens for a sea. */
          readonly spare: number;
      }
    | { readonly kind: 'unknown'; readonly reason: string };

/**
 * How well a clip holds the lure that it tows.
 *
 * The clip carries the whole pull, the reel nothing: so it is until the clip opens.
 *
 * @param setting  pull along the line at which the clip opens, N
 * @param pull     of the lure at the clip while towed steadily, N
 * @param surge    see `surgeFactor`
 */
export function clipMargin(setting: number, pull: number, surge: number): ClipMargin {
    if (!isPositive(setting, pull, surge)) {
        return { kind: 'unknown', reason: 'The clip’s setting, the pull or the surge is not above zero.' };
    }
    return { kind: 'margin', ratio: setting / (pull * surge), spare: setting - pull * surge };
}

/** Where the line runs, in the boat's frame, m. */
export interface ClipGeometry {
    /** Rod tip. */
    readonly tip: Vec;
    readonly clip: Vec;
    readonly lure: Vec;
}

export interface OpeningQuestion extends ClipGeometry {
    /** Force at which the clip opens, N: what a scale on the lure's side reads with nothing on the reel's side. */
    readonly setting: number;
    /** Whether the clip pinches the line (or a band is wrapped on it), or lets it slide round a roller. */
    readonly line: 'held' | 'slides';
    /** Pull on the reel's side of the clip, N: for a line that slides, the drag at which the reel slips. */
    readonly reel: number;
    /** Of the line on the clip. 0.1 by default, from memory 0.05 to 0.15. */
    readonly friction?: number;
}

export type Opening =
    /** The fish must pull so hard, N, on the line at the clip; the lure's own pull is part of it. */
    | { readonly kind: 'opens'; readonly pull: number; readonly turn: number }
    /** The reel gives line first: it runs through the clip at this pull, N, and the clip never opens. */
    | { readonly kind: 'runs-through'; readonly pull: number; readonly turn: number }
    /** The reel's side alone opens the clip. */
    | { readonly kind: 'opens-alone'; readonly turn: number }
    | { readonly kind: 'unknown'; readonly reason: string };

/**
 * What a fish must pull to open the clip.
 *
 * The clip feels the sum of the two pulls on the line that it holds, as vectors: to the lure and to the rod tip,
 * both straight. A line that slides pulls harder on the fish's side by exp(friction × angle turned) (capstan,
 * Eytelwein 1808); the pull on the reel's side cannot pass the drag. `turn` is the angle by which the line changes
 * direction at the clip, rad.
 */
export function openingPull(question: OpeningQuestion): Opening {
    const { setting, reel, line, friction = GUIDE_FRICTION.value } = question;
    if (!isPositive(setting) || !isNotNegative(reel) || !isNotNegative(friction)) {
        return { kind: 'unknown', reason: 'The clip’s setting, the drag or the friction is out of range.' };
    }
    const turn = turnAt(question);
    if (turn === undefined)
        return { kind: 'unknown', reason: 'Rod tip, clip and lure are not three places.' };

    // Of the angle between the two parts of the line, seen from the clip.
    const cosine = -Math.cos(turn);
    if (line === 'held') {
        if (reel >= setting) return { kind: 'opens-alone', turn };
        const across = reel ** 2 * (1 - cosine ** 2);
        return { kind: 'opens', pull: Math.sqrt(setting ** 2 - across) - reel * cosine, turn };
    }
    const gain = capstan(1, friction, turn);
    const feltPerReel = Math.sqrt(Math.max(0, gain ** 2 + 1 + 2 * gain * cosine));
    if (reel * feltPerReel < setting) return { kind: 'runs-through', pull: reel * gain, turn };
    return { kind: 'opens', pull: (setting / feltPerReel) * gain, turn };
}

/**
 * Pull on the far side of a bend that a line slides round, N. Eytelwein's capstan, 1808.
 *
 * @param hold   pull on the near side, N
 * @param angle  by which the line turns, rad
 */
export function capstan(hold: number, friction: number, angle: number): number {
    return hold * Math.exp(friction * angle);
}

export type DropBack =
    | {
          readonly kind: 'drop-back';
          /** What the detour over the clip sets free when it opens, m. */
          readonly detour: number;
          /** With the loop left below the clip, m. */
          readonly slack: number;
          /** How long the lure lies still until the boat has taken the slack, s. */
          readonly stall: number;
      }
    | { readonly kind: 'unknown'; readonly reason: string };

/**
 * Line that falls slack when the clip opens: |tip→clip| + |clip→lure| − |tip→lure| and the loop.
 *
 * Straight lines; a fish that swims off shortens the stall, line stretch lengthens it a little.
 *
 * @param loop   left hanging at the clip, m, ≥ 0
 * @param speed  of the boat through the water, m/s, > 0
 */
export function dropBack({ tip, clip, lure }: ClipGeometry, loop: number, speed: number): DropBack {
    if (!isNotNegative(loop)) return { kind: 'unknown', reason: 'The loop is shorter than nothing.' };
    if (!isPositive(speed)) return { kind: 'unknown', reason: 'The boat is not under way.' };
    if (!isSound(...tip, ...clip, ...lure)) {
        return { kind: 'unknown', reason: 'Rod tip, clip and lure are not three places.' };
    }
    const detour = norm(subtract(tip, clip)) + norm(subtract(clip, lure)) - norm(subtract(tip, lure));
    const slack = Math.max(0, detour) + loop;
    return { kind: 'drop-back', detour: Math.max(0, detour), slack, stall: slack / speed };
}

function turnAt({ tip, clip, lure }: ClipGeometry): number | undefined {
    if (!isSound(...tip, ...clip, ...lure)) return undefined;
    const out = subtract(lure, clip);
    const back = subtract(tip, clip);
    const lengths = norm(out) * norm(back);
    if (!isPositive(lengths)) return undefined;
    return Math.PI - Math.acos(Math.min(1, Math.max(-1, dot(out, back) / lengths)));
}
