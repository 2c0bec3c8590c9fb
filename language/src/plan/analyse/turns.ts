import { USUAL_SWAY } from '../../physics/sway.ts';
import { courseOfTrail } from '../../physics/turn/course.ts';
import { type Envelope, envelope, type JudgedLine, type Limit } from '../../physics/turn/envelope.ts';
import { layOut, type Manoeuvre, turnTime } from '../../physics/turn/manoeuvre.ts';
import { pairsInTurn } from '../../physics/turn/pairs.ts';
import type { Tightest } from '../../physics/turn/tightest.ts';
import { follow } from '../../physics/turn/trail.ts';
import { slowest } from '../../physics/turn/working.ts';
import type {
    AnalysedPlan,
    CleanTurn,
    Figure,
    LineFigures,
    SideTurnFigures,
    TurnFigures,
    TurnLimit,
} from '../figures.ts';
import { known, leaningOf, silent } from './figure.ts';
import { remembering } from './memory.ts';

type Side = Manoeuvre['side'];

/** What a turn is computed from: numbers only, so that two plans that agree in them share the work. */
interface TurnQuestion {
    readonly lines: readonly JudgedLine[];
    readonly speed: number;
    readonly contact: number;
    readonly asked?: number;
}

/** What was worked out for one side, with lines by their number. */
interface SideAnswer {
    readonly envelope: Envelope;
    readonly pairs: ReturnType<typeof pairsInTurn>;
    readonly lures: readonly { readonly slowest: number; readonly time: number; readonly slackAt?: number }[];
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
    const placed = lines.filter((figures) => judged(figures) !== undefined);
    if (placed.length === 0) return silent('No line of the plan has both a tow point and a distance.');
    const question: TurnQuestion = {
        lines: placed.map((figures) => judged(figures)!),
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

/** A line as the turn models need it; undefined where its place is not known. */
function judged({ line, towPoint, astern, sway }: LineFigures): JudgedLine | undefined {
    if (line.role === 'standby' || !towPoint.known || !astern.known) return undefined;
    const layback = astern.value + towPoint.value[0];
    if (!(layback > 0)) return undefined;
    const leastSpeed = line.role === 'fished' ? line.lure?.value.runs?.from.si : undefined;
    return {
        towPoint: towPoint.value,
        layback,
        sway: sway.known ? sway.value : USUAL_SWAY.sway,
        cap: USUAL_SWAY.cap,
        ...(leastSpeed !== undefined && { leastSpeed }),
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
    const found = envelope(lines, { speed, side, contact });
    if (!found) return undefined;
    const none = { envelope: found, pairs: [], lures: [], fanPairs: found.tally.fanPairs };
    const turn = asked === undefined ? undefined : layOut({ speed, side, radius: asked });
    if (!turn) return none;
    const trails = lines.map((line) => follow(line, turn));
    if (!trails.every((trail) => trail !== undefined)) return none;
    const tally = { fanPairs: 0, boxes: 0 };
    const turning = lines.map((line, index) => ({ ...line, course: courseOfTrail(trails[index]!) }));
    const pairs = pairsInTurn(turning, turn, contact, undefined, tally);
    const lures = trails.map((trail) => {
        const { speed: least, time } = slowest(trail);
        const slackAt = trail.slackAt !== undefined && trail.slackAt <= turn.end ? trail.slackAt : undefined;
        return { slowest: least, time, ...(slackAt !== undefined && { slackAt }) };
    });
    return { envelope: found, pairs, lures, fanPairs: found.tally.fanPairs + tally.fanPairs };
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
