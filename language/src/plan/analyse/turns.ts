import { chain, compareTaut } from '../../physics/chain/model.ts';
import { USUAL_SWAY } from '../../physics/sway.ts';
import type { Tow } from '../../physics/towed.ts';
import { type Course, courseOf, courseOfTrail } from '../../physics/turn/course.ts';
import {
    type Envelope,
    envelope,
    type JudgedLine,
    type Limit,
    USUAL_RANGE,
} from '../../physics/turn/envelope.ts';
import { layOut, type Manoeuvre, type Turn, tightestHeld, turnTime } from '../../physics/turn/manoeuvre.ts';
import { pairsInTurn } from '../../physics/turn/pairs.ts';
import type { Tightest } from '../../physics/turn/tightest.ts';
import { follow } from '../../physics/turn/trail.ts';
import { slowest } from '../../physics/turn/working.ts';
import { print, printApart } from '../../units/print.ts';
import { units } from '../../units/unit.ts';
import type {
    AnalysedPlan,
    CleanTurn,
    Figure,
    LineFigures,
    LureInTurnFigures,
    SideTurnFigures,
    TurnFigures,
    TurnLimit,
} from '../figures.ts';
import type { Measure } from '../measure.ts';
import type { Spread } from '../model.ts';
import { known, leaningOf, silent } from './figure.ts';
import { remembering } from './memory.ts';
import { isDiver, towOf } from './rest.ts';

type Side = Manoeuvre['side'];

/** What a turn is computed from: numbers only, so that two plans that agree in them share the work. */
interface TurnQuestion {
    readonly lines: readonly TurningLine[];
    readonly speed: number;
    readonly contact: number;
    readonly asked?: number;
}

/** A line that runs under water brings what it is towed with, and is followed as a chain instead of a taut line. */
type TurningLine = JudgedLine & { readonly tow?: Tow };

/** What was worked out for one side, with lines by their number. */
interface SideAnswer {
    readonly envelope: Envelope;
    readonly pairs: ReturnType<typeof pairsInTurn>;
    readonly lures: readonly Omit<LureInTurnFigures, 'line'>[];
    readonly fanPairs: number;
}

/** The plan with its turns. Takes tens of milliseconds: see `turnsInSteps` for doing it beside other work. */
export function withTurns(analysed: AnalysedPlan): AnalysedPlan {
    const steps = turnsInSteps(analysed);
    for (;;) {
        const step = steps.next();
        if (step.done) return { ...analysed, turns: step.value };
    }
}

/** The same one side at a time, so that whoever waits can listen to others in between or give up. */
export function* turnsInSteps(analysed: AnalysedPlan): Generator<void, Figure<TurnFigures>> {
    const { plan, lines, swayAsked, contact } = analysed;
    if (!plan.speed) return silent('The plan has no speed.');
    if (!(plan.speed.si > 0)) return silent('The boat is not under way.');
    const held = tightestHeld(plan.speed.si);
    if (plan.speed.si > FASTEST_TOWED) return silent(tooFast(plan.speed));
    if (plan.turn && plan.turn.si < held) return silent(tooTight(plan.turn, plan.speed, held));
    const placed = lines.filter((figures) => judged(figures, plan) !== undefined);
    if (placed.length === 0) return silent('No line of the plan has both a tow point and a distance.');
    const question: TurnQuestion = {
        lines: placed.map((figures) => judged(figures, plan)!),
        speed: plan.speed.si,
        contact,
        ...(plan.turn && { asked: plan.turn.si }),
    };
    const answers: Partial<Record<Side, SideAnswer>> = {};
    for (const side of ['port', 'starboard'] as const) {
        const answer = remembered({ ...question, side });
        if (!answer) return silent('The plan’s figures are out of what a turn can be computed for.');
        answers[side] = answer;
        yield;
    }
    const leaning = [
        `A sway of ${((swayAsked.value * 180) / Math.PI).toFixed(1)} deg to either side, at most ${USUAL_SWAY.cap} m${swayAsked.standing === 'estimated' ? ' (estimate)' : ''}.`,
        'Lines in air, straight and taut; a half turn without drift, 25 s straight after it.',
        ...placed
            .filter(({ line }) => isDiver(line))
            .map(
                ({ line }) =>
                    `The ${line.position.name} runs under water: a chain in the turn asked, taut in the tightest.`,
            ),
        ...leaningOf(...placed.flatMap(({ towPoint, astern }) => [towPoint, astern])),
    ];
    return known(
        {
            ...(plan.turn && { asked: plan.turn }),
            port: sideFigures(answers.port!, placed, question),
            starboard: sideFigures(answers.starboard!, placed, question),
            fanPairs: answers.port!.fanPairs + answers.starboard!.fanPairs,
        },
        'computed',
        [...new Set(leaning)],
    );
}

function tooTight(turn: Measure, speed: Measure, held: number): string {
    const [asked, least] = printApart(turn.si, held, turn.quantity ?? units.m);
    return `No boat holds a turn of ${asked} at ${spoken(speed)}: inside ${least} it would press sideways with more than half its own weight.`;
}

/** Faster than any lure is towed, m/s: common practice ends at 20 kn. Estimate, with room. */
const FASTEST_TOWED = 15;

function tooFast(speed: Measure): string {
    return `At ${spoken(speed)} no lure is towed, let alone through a turn: look for a slip in the speed.`;
}

function spoken({ si, quantity }: Measure): string {
    return print(si, quantity ?? units.kn);
}

/** A line as the turn models need it; undefined where its place is not known. */
function judged({ line, towPoint, astern, sway }: LineFigures, plan: Spread): TurningLine | undefined {
    if (line.role === 'standby' || !towPoint.known || !astern.known) return undefined;
    const layback = astern.value + towPoint.value[0];
    if (!(layback > 0)) return undefined;
    const leastSpeed = line.role === 'fished' ? line.lure?.value.runs?.from.si : undefined;
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

const remembered = remembering(work, 64);

function work({
    lines,
    speed,
    contact,
    asked,
    side,
}: TurnQuestion & { readonly side: Side }): SideAnswer | undefined {
    const tightest = Math.max(USUAL_RANGE.tightest, tightestHeld(speed));
    const found = envelope(lines, { speed, side, contact, range: { ...USUAL_RANGE, tightest } });
    if (!found) return undefined;
    const none = { envelope: found, pairs: [], lures: [], fanPairs: found.tally.fanPairs };
    const turn = asked === undefined ? undefined : layOut({ speed, side, radius: asked });
    if (!turn) return none;
    const followed = lines.map((line) => followIn(line, turn));
    if (!followed.every((each) => each !== undefined)) return none;
    const tally = { fanPairs: 0, boxes: 0 };
    const turning = lines.map((line, index) => ({ ...line, course: followed[index]!.course }));
    const pairs = pairsInTurn(turning, turn, contact, undefined, tally);
    const lures = followed.map((each) => each!.lure);
    return { envelope: found, pairs, lures, fanPairs: found.tally.fanPairs + tally.fanPairs };
}

/** A line through a turn: by the closed form of the taut line, or as a chain where it runs under water. */
function followIn(
    line: TurningLine,
    turn: Turn,
): { course: Course; lure: SideAnswer['lures'][number] } | undefined {
    const trail = follow(line, turn);
    if (!trail) return undefined;
    const { tow } = line;
    const sunk = tow && followAsChain({ ...line, tow }, turn);
    if (sunk) return sunk;
    const { speed, time } = slowest(trail);
    const slackAt = trail.slackAt !== undefined && trail.slackAt <= turn.end ? trail.slackAt : undefined;
    return {
        course: courseOfTrail(trail),
        lure: { slowest: speed, time, model: 'taut', ...(slackAt !== undefined && { slackAt }) },
    };
}

function followAsChain(line: JudgedLine & { readonly tow: Tow }, turn: Turn) {
    const times = Array.from({ length: Math.floor(turn.end / 0.5) + 1 }, (_, index) => index / 2);
    const motion = chain(line, turn, times);
    const course = motion && courseOf(line, turn, chain, 0.5);
    const taut = compareTaut(line, turn);
    if (!motion || !course) return undefined;
    const slow = motion.states.reduce((least, state) => (state.speed < least.speed ? state : least));
    return {
        course,
        lure: {
            slowest: slow.speed,
            time: slow.time,
            model: 'chain' as const,
            ...(taut.kind === 'compared' && { astray: taut.astray }),
            ...(motion.slackAt !== undefined && { slackAt: motion.slackAt }),
        },
    };
}

function sideFigures(
    answer: SideAnswer,
    placed: readonly LineFigures[],
    { speed }: TurnQuestion,
): SideTurnFigures {
    const named = (limit: Limit): TurnLimit => ({
        ...limit,
        lines: limit.lines.map((index) => placed[index]!),
    });
    const clean = (tightest: Tightest<Limit>): CleanTurn => {
        const radius = tightest.outcome === 'never' ? undefined : tightest.radius;
        const halfTurn = radius === undefined ? undefined : turnTime({ speed, radius, side: 'port' });
        return {
            ...(radius !== undefined && { radius }),
            ...(tightest.outcome !== 'free' && { limit: named(tightest.limit) }),
            ...(halfTurn !== undefined && { halfTurn }),
        };
    };
    return {
        noFoul: clean(answer.envelope.noFoul),
        allWorking: clean(answer.envelope.allWorking),
        pairs: answer.pairs.map(
            ({ lines: [a, b], distance, margin, time, turned, fromTowPoint, passedThrough }) => ({
                a: placed[a]!,
                b: placed[b]!,
                clearance: distance,
                time,
                turned,
                swayMargin: margin.outcome === 'touch' ? margin.sway : Number.POSITIVE_INFINITY,
                fromTowPoint,
                ...(passedThrough !== undefined && { passedThrough }),
            }),
        ),
        lures: answer.lures.map((lure, index) => ({ line: placed[index]!, ...lure })),
    };
}
