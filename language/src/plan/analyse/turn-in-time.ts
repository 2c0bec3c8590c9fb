import { finish, type Steps } from '../../physics/steps.ts';
import { clearance, WIDEST_SWAY } from '../../physics/sway.ts';
import type { Course } from '../../physics/turn/course.ts';
import { type BoatPose, boatAt, layOut, type Turn } from '../../physics/turn/manoeuvre.ts';
import { newTally } from '../../physics/turn/meeting.ts';
import { type PairInTurn, pairsInSteps, type TurningLine } from '../../physics/turn/pairs.ts';
import type { Vec } from '../../physics/vector.ts';
import type { AnalysedPlan, Figure, LineFigures, LureInTurnFigures, PairInTurnFigures } from '../figures.ts';
import { known, silent } from './figure.ts';
import { followInSteps } from './turning.ts';
import { pairFigures, turnQuestions } from './turns.ts';

/** A plan through one half turn, seen moment by moment. Axes stand still in the water, see `BoatPose`. */
export interface TurnInTime {
    readonly side: 'port' | 'starboard';
    /** Of the circle that the transom's centre follows, m. */
    readonly radius: number;
    /** When the boat is on its new course, and when the straight run after it ends; s from the helm going over. */
    readonly steadyFrom: number;
    readonly end: number;
    /** s, ascending; first the helm going over, last the end, and every moment that is named below. */
    readonly times: readonly number[];
    /** At each time. */
    readonly boat: readonly BoatPose[];
    /** The lines that can be followed, in the plan's order. */
    readonly lines: readonly LineInTime[];
    /** Every two of them, the nearest first, as the analysis judges the turn that a plan allows. */
    readonly pairs: readonly PairInTurnFigures[];
    /** The first of those, all through the turn. */
    readonly nearest?: NearestInTime;
}

export interface LineInTime {
    readonly figures: LineFigures;
    /** At each time from tow point to lure. */
    readonly paths: readonly (readonly Vec[])[];
    /** Of the lure through the water at each time, m/s. */
    readonly speeds: readonly number[];
    readonly lure: LureInTurnFigures;
    /** Slower than this the lure does not work, m/s. */
    readonly leastSpeed?: number;
}

export interface NearestInTime {
    readonly pair: PairInTurnFigures;
    /** Least distance of the two fans at each time, m. */
    readonly distances: readonly number[];
    /** Where on each the two are nearest. */
    readonly at: readonly [Vec, Vec];
}

/** However long a turn, it is seen at so many evenly spread moments and at those that are named. */
const EVENLY = 96;

/**
 * A half turn of a plan. A few milliseconds for surface lures, tens where a line runs under water.
 *
 * @param radius  m; any that a turn can be laid out for
 * @returns silent with the reason where no line can be followed
 */
export function turnInTime(
    analysed: AnalysedPlan,
    side: TurnInTime['side'],
    radius: number,
): Figure<TurnInTime> {
    return finish(turnInTimeInSteps(analysed, side, radius));
}

/** The same a little at a time. */
export function* turnInTimeInSteps(
    analysed: AnalysedPlan,
    side: TurnInTime['side'],
    radius: number,
): Steps<Figure<TurnInTime>> {
    const asking = turnQuestions(analysed);
    if (!asking.known) return asking;
    const { lines, speed } = asking.value.port;
    const turn = layOut({ speed, side, radius });
    if (!turn) return silent('No turn can be laid out with that radius.');
    const followed: { course: Course; lure: LureInTurnFigures }[] = [];
    for (const [index, line] of lines.entries()) {
        const one = yield* followInSteps(line, turn);
        if (!one) return silent('The plan’s figures are out of what a turn can be computed for.');
        followed.push({ course: one.course, lure: { line: asking.value.placed[index]!, ...one.lure } });
    }
    const turning = lines.map((line, index) => ({ ...line, course: followed[index]!.course }));
    const found = yield* pairsInSteps(turning, turn, analysed.contact, WIDEST_SWAY, newTally());
    const named = [
        turn.steadyFrom,
        ...followed.flatMap(({ lure }) => [lure.time, ...(lure.slackAt === undefined ? [] : [lure.slackAt])]),
        ...found.pairs.slice(0, 1).map(({ time }) => time),
    ];
    const times = momentsOf(turn, named);
    const [first] = found.pairs;
    return known(
        {
            side,
            radius,
            steadyFrom: turn.steadyFrom,
            end: turn.end,
            times,
            boat: times.map((time) => boatAt(turn, time)),
            lines: followed.map(({ course, lure }, index) => {
                const { leastSpeed } = lines[index]!;
                return {
                    figures: lure.line,
                    paths: times.map((time) => inWater(course.at(time).line, turn, time)),
                    speeds: times.map((time) => speedOf(course, turn, time)),
                    lure,
                    ...(leastSpeed !== undefined && { leastSpeed }),
                };
            }),
            pairs: found.pairs.map((pair) => pairFigures(pair, asking.value.placed)),
            ...(first && { nearest: nearestOf(first, turning, asking.value.placed, turn, times) }),
        },
        'computed',
        asking.leaning,
    );
}

function momentsOf(turn: Turn, named: readonly number[]): number[] {
    const evenly = Array.from({ length: EVENLY + 1 }, (_, index) => (turn.end * index) / EVENLY);
    const inside = named.filter((time) => time >= 0 && time <= turn.end);
    return [...new Set([...evenly, ...inside])].sort((a, b) => a - b);
}

function nearestOf(
    pair: PairInTurn,
    lines: readonly TurningLine[],
    placed: readonly LineFigures[],
    turn: Turn,
    times: readonly number[],
): NearestInTime {
    const [a, b] = pair.lines.map((index) => lines[index]!) as [TurningLine, TurningLine];
    const swaying = ({ course, sway, cap }: TurningLine, time: number) => ({
        line: course.at(time).line,
        sway,
        ...(cap !== undefined && { cap }),
    });
    return {
        pair: pairFigures(pair, placed),
        distances: times.map((time) => clearance(swaying(a, time), swaying(b, time))!.distance),
        at: inWater(pair.at, turn, pair.time) as [Vec, Vec],
    };
}

/** Points of the boat's axes in those of the water. */
function inWater(points: readonly Vec[], turn: Turn, time: number): Vec[] {
    const { x, y, heading } = boatAt(turn, time);
    const [cosine, sine] = [Math.cos(heading), Math.sin(heading)];
    return points.map(([ahead, toPort, up]) => [
        x + ahead * cosine - toPort * sine,
        y + ahead * sine + toPort * cosine,
        up,
    ]);
}

/** Over so long the way of a lure is straight, s. */
const INSTANT = 0.02;

/** Of the lure through the water, from its way about a moment, m/s: within 1 % where its speed does not jump. */
function speedOf(course: Course, turn: Turn, time: number): number {
    const [from, to] = [Math.max(course.start, time - INSTANT), Math.min(course.end, time + INSTANT)];
    const [before, after] = [from, to].map((at) => inWater(course.at(at).line, turn, at).at(-1)!) as [
        Vec,
        Vec,
    ];
    return Math.hypot(after[0] - before[0], after[1] - before[1]) / (to - from);
}
