import { finish, type Steps } from '../../physics/steps.ts';
import type { Limit } from '../../physics/turn/envelope.ts';
import { tightestHeld, turnTime } from '../../physics/turn/manoeuvre.ts';
import type { PairInTurn } from '../../physics/turn/pairs.ts';
import type { Tightest } from '../../physics/turn/tightest.ts';
import type {
    AnalysedPlan,
    CleanTurn,
    Figure,
    LineFigures,
    PairInTurnFigures,
    SideTurnFigures,
    TurnFigures,
    TurnLimit,
} from '../figures.ts';
import { listed } from '../wording.ts';
import { known, leaningOf, silent, withoutSpeed } from './figure.ts';
import { CAP, metresAtLure } from './pairs.ts';
import { leastSpeedOf } from './rest.ts';
import { type SideAnswer, sideInSteps, type TurnQuestion, turningLine } from './turning.ts';

/** The plan with its turns. Takes tens of milliseconds: see `turnsInSteps` for doing it beside other work. */
export function withTurns(analysed: AnalysedPlan): AnalysedPlan {
    return { ...analysed, turns: finish(turnsInSteps(analysed)) };
}

/** The same a few milliseconds at a time, so that whoever waits can listen to others in between or give up. */
export function* turnsInSteps(analysed: AnalysedPlan): Steps<Figure<TurnFigures>> {
    const asking = turnQuestions(analysed);
    if (!asking.known) return asking;
    const { placed, port, starboard } = asking.value;
    const toPort = yield* sideInSteps(port);
    yield;
    const toStarboard = yield* sideInSteps(starboard);
    if (!toPort || !toStarboard)
        return silent('The plan’s figures are out of what a turn can be computed for.');
    const { plan } = analysed;
    const isAsked = port.asked !== undefined;
    const sunk = (toPort.asked?.lures ?? []).flatMap(({ model }, index) =>
        model === 'chain'
            ? [
                  `The ${nameOf(placed[index]!)} runs under water: a chain in the turn asked, taut in the tightest.`,
              ]
            : [],
    );
    return known(
        {
            ...(isAsked && plan.turn && { asked: plan.turn }),
            port: sideFigures(toPort, placed, port),
            starboard: sideFigures(toStarboard, placed, starboard),
            leastKnown: placed.filter(({ line }) => leastSpeedOf(line)),
            leastUnknown: placed.filter(({ line }) => line.role === 'fished' && !leastSpeedOf(line)),
            fanPairs: toPort.fanPairs + toStarboard.fanPairs,
        },
        'computed',
        [...new Set([...asking.leaning, ...sunk, ...unsettledWords([toPort, toStarboard], placed)])],
    );
}

/** Lines that are out, and that no turn can be followed with. */
function unfollowed(lines: readonly LineFigures[], placed: readonly LineFigures[]): LineFigures[] {
    return lines.filter((each) => each.line.role !== 'standby' && !placed.includes(each));
}

function withoutWords(left: readonly LineFigures[]): string[] {
    if (left.length === 0) return [];
    return [
        `Turns are those of the other lines: the ${listed(left.map(nameOf))} cannot be followed without a tow point and a distance.`,
    ];
}

/** The lines whose turns are judged, and what is to be worked out to either side. */
export interface TurnQuestions {
    readonly placed: readonly LineFigures[];
    readonly port: TurnQuestion;
    readonly starboard: TurnQuestion;
}

export function turnQuestions({ plan, lines, contact }: AnalysedPlan): Figure<TurnQuestions> {
    if (!plan.speed) return withoutSpeed(plan);
    if (!(plan.speed.si > 0)) return silent('The boat is not under way.');
    const judged = lines.flatMap((figures) => {
        const line = turningLine(figures, plan);
        return line ? [{ figures, line }] : [];
    });
    if (judged.length === 0)
        return silent('No line of the plan has both a tow point (`from`) and a distance (`back`).');
    const asked = plan.turn && plan.turn.si >= tightestHeld(plan.speed.si) ? plan.turn.si : undefined;
    const question = {
        lines: judged.map(({ line }) => line),
        speed: plan.speed.si,
        contact,
        ...(asked !== undefined && { asked }),
    };
    const placed = judged.map(({ figures }) => figures);
    return known(
        { placed, port: { ...question, side: 'port' }, starboard: { ...question, side: 'starboard' } },
        'computed',
        [
            CAP,
            ...withoutWords(unfollowed(lines, placed)),
            'Lines in air, straight and taut; a half turn without drift, 25 s straight after it.',
            ...leaningOf(...placed.flatMap(({ towPoint, astern, sway }) => [towPoint, astern, sway])),
        ],
    );
}

function unsettledWords(sides: readonly SideAnswer[], placed: readonly LineFigures[]): string[] {
    return sides.flatMap(({ asked }) =>
        (asked?.unsettled ?? []).map(
            ([a, b]) =>
                `How near ${nameOf(placed[a]!)} and ${nameOf(placed[b]!)} come in the turn asked would take too long to find.`,
        ),
    );
}

function nameOf({ line }: LineFigures): string {
    return line.position.name;
}

function sideFigures(
    { envelope, asked }: SideAnswer,
    placed: readonly LineFigures[],
    { speed }: TurnQuestion,
): SideTurnFigures {
    return {
        noFoul: cleanTurn(envelope.noFoul, placed, speed),
        allWorking: cleanTurn(envelope.allWorking, placed, speed),
        pairs: (asked?.pairs ?? []).map((pair) => pairFigures(pair, placed)),
        lures: (asked?.lures ?? []).map((lure, index) => ({ line: placed[index]!, ...lure })),
    };
}

/** @param placed  the lines that were followed, as the pair counts them */
export function pairFigures(
    { lines: [a, b], distance, margin, time, turned, fromTowPoint, passedThrough }: PairInTurn,
    placed: readonly LineFigures[],
): PairInTurnFigures {
    const touch = margin.outcome === 'touch' ? margin.sway : Number.POSITIVE_INFINITY;
    return {
        a: placed[a]!,
        b: placed[b]!,
        clearance: distance,
        time,
        turned,
        swayMargin: touch,
        swayAtLure: metresAtLure(placed[a]!, placed[b]!, touch),
        fromTowPoint,
        ...(passedThrough !== undefined && { passedThrough }),
    };
}

/** @param speed  of the boat, m/s */
export function cleanTurn(
    tightest: Tightest<Limit>,
    placed: readonly LineFigures[],
    speed: number,
): CleanTurn {
    const radius = tightest.outcome === 'never' ? undefined : tightest.radius;
    const halfTurn = radius === undefined ? undefined : turnTime({ speed, radius, side: 'port' });
    const named = (limit: Limit): TurnLimit => ({
        ...limit,
        lines: limit.lines.map((index) => placed[index]!),
    });
    return {
        ...(radius !== undefined && { radius }),
        ...(tightest.outcome !== 'free' && { limit: named(tightest.limit) }),
        ...(halfTurn !== undefined && { halfTurn }),
    };
}
