import { trustIn } from '../../physics/chain/model.ts';
import { type ChainState, runChain } from '../../physics/chain/run.ts';
import type { Steps } from '../../physics/steps.ts';
import { USUAL_SWAY, WIDEST_SWAY } from '../../physics/sway.ts';
import type { Tow } from '../../physics/towed.ts';
import { type Course, courseOfMotion, courseOfTrail } from '../../physics/turn/course.ts';
import {
    type Envelope,
    envelopeInSteps,
    type JudgedLine,
    type Looked,
    USUAL_RANGE,
} from '../../physics/turn/envelope.ts';
import { layOut, type Manoeuvre, type Turn, tightestHeld } from '../../physics/turn/manoeuvre.ts';
import { newTally } from '../../physics/turn/meeting.ts';
import { type PairsInTurn, pairsInSteps } from '../../physics/turn/pairs.ts';
import { follow } from '../../physics/turn/trail.ts';
import { slowest } from '../../physics/turn/working.ts';
import type { LineFigures, LureInTurnFigures } from '../figures.ts';
import type { Spread } from '../model.ts';
import { rememberingSteps } from './memory.ts';
import { isDiver, leastSpeedOf, towOf } from './rest.ts';

/** What the turns to one side are computed from: numbers only, so that plans that agree in them share the work. */
export interface TurnQuestion {
    readonly lines: readonly TurningLine[];
    readonly speed: number;
    readonly contact: number;
    readonly side: Manoeuvre['side'];
    /** Radius of the turn that the plan allows, m. */
    readonly asked?: number;
}

/** A line that runs under water brings what it is towed with, and is followed as a chain instead of a taut line. */
export type TurningLine = JudgedLine & { readonly tow?: Tow };

/** What was worked out for one side, with lines by their number. */
export interface SideAnswer {
    readonly envelope: Envelope;
    readonly asked?: PairsInTurn & { readonly lures: readonly Omit<LureInTurnFigures, 'line'>[] };
    readonly fanPairs: number;
}

/** A line as the turn models need it; undefined where its place is not known. */
export function turningLine(
    { line, towPoint, astern, sway }: LineFigures,
    plan: Spread,
): TurningLine | undefined {
    if (line.role === 'standby' || !towPoint.known || !astern.known) return undefined;
    const layback = astern.value + towPoint.value[0];
    if (!(layback > 0)) return undefined;
    const leastSpeed = leastSpeedOf(line)?.si;
    const tow = isDiver(line) ? towOf(line, plan) : undefined;
    return {
        towPoint: towPoint.value,
        layback,
        sway: sway.known ? sway.value : USUAL_SWAY.sway,
        cap: USUAL_SWAY.cap,
        ...(leastSpeed !== undefined && { leastSpeed }),
        ...(tow?.known && { tow: tow.value }),
    };
}

/** The turns that are looked at to one side: none that no boat can be held to. */
export function lookedAt({ speed, side, contact }: Omit<TurnQuestion, 'lines'>): Looked {
    const tightest = Math.min(USUAL_RANGE.widest, Math.max(USUAL_RANGE.tightest, tightestHeld(speed)));
    return { speed, side, contact, range: { ...USUAL_RANGE, tightest } };
}

/** The tightest clean turns to one side, and the turn that the plan allows; a few milliseconds at a time. */
export const sideInSteps = rememberingSteps(function* (
    question: TurnQuestion,
): Steps<SideAnswer | undefined> {
    const { lines, speed, side, contact, asked } = question;
    const envelope = yield* envelopeInSteps(lines, lookedAt(question));
    if (!envelope) return undefined;
    const none = { envelope, fanPairs: envelope.tally.fanPairs };
    const turn = asked === undefined ? undefined : layOut({ speed, side, radius: asked });
    if (!turn) return none;
    const followed: Followed[] = [];
    for (const line of lines) {
        const one = yield* followInSteps(line, turn);
        if (!one) return none;
        followed.push(one);
    }
    const tally = newTally();
    const turning = lines.map((line, index) => ({ ...line, course: followed[index]!.course }));
    const pairs = yield* pairsInSteps(turning, turn, contact, WIDEST_SWAY, tally);
    return {
        envelope,
        asked: { ...pairs, lures: followed.map(({ lure }) => lure) },
        fanPairs: envelope.tally.fanPairs + tally.fanPairs,
    };
}, 64);

export interface Followed {
    readonly course: Course;
    readonly lure: Omit<LureInTurnFigures, 'line'>;
}

/** A line through a turn: by the closed form of the taut line, or as a chain where it runs under water. */
export function* followInSteps(line: TurningLine, turn: Turn): Steps<Followed | undefined> {
    const trail = follow(line, turn);
    if (!trail) return undefined;
    const { tow } = line;
    const sunk = tow && (yield* followAsChain({ ...line, tow }, turn));
    if (sunk) return sunk;
    const { speed, time } = slowest(trail);
    const slackAt = trail.slackAt !== undefined && trail.slackAt <= turn.end ? trail.slackAt : undefined;
    return {
        course: courseOfTrail(trail),
        lure: { slowest: speed, time, model: 'taut', ...(slackAt !== undefined && { slackAt }) },
    };
}

/** A chain is seen so often, s. */
const SEEN = 0.5;

/** Longer turns are not followed as chains, s: nobody holds one, and the lines in it run as good as straight. */
const LONGEST = 900;

/** So many of its moments at a time: a few milliseconds. */
const AT_ONCE = 10;

/** `undefined` for a line that does not settle, or a turn too long for it. */
function* followAsChain(line: JudgedLine & { readonly tow: Tow }, turn: Turn): Steps<Followed | undefined> {
    if (turn.end > LONGEST) return undefined;
    const times = Array.from({ length: Math.floor(turn.end / SEEN) + 1 }, (_, index) => index * SEEN);
    const run = runChain(line, turn, times);
    const states: ChainState[] = [];
    for (;;) {
        const { value, done } = run.next();
        if (!done) {
            states.push(value);
            if (states.length % AT_ONCE === 0) yield;
            continue;
        }
        if (value.kind !== 'done') return undefined;
        const { slackAt } = value;
        const motion = { states, ...(slackAt !== undefined && { slackAt }) };
        const course = courseOfMotion(motion, turn);
        if (!course) return undefined;
        const taut = trustIn(line, turn, motion);
        const slow = states.reduce((least, state) => (state.speed < least.speed ? state : least));
        return {
            course,
            lure: {
                slowest: slow.speed,
                time: slow.time,
                model: 'chain',
                ...(taut.kind === 'compared' && { astray: taut.astray }),
                ...(slackAt !== undefined && { slackAt }),
            },
        };
    }
}
