import type { TurnInTime } from '../plan/analyse/turn-in-time.ts';
import type { AnalysedPlan, Figure, LineFigures, SideTurnFigures } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { capital } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import type { XY } from './elements.ts';
import { drawHull } from './hull.ts';
import { type Mark, markFindings } from './marks.ts';
import { type Title, titleOfPlan } from './title.ts';
import { type CleanTurnWords, cleanRadius, cleanWords } from './turn-clean.ts';
import { momentsOfTurn, type TurnMoment } from './turn-moments.ts';
import { andList, asWritten, titleOf } from './words.ts';

/**
 * A plan through a half turn, for a sheet and for a player. Lengths in m, times in s from the helm going over; axes
 * stand still in the water: x along the course before the turn, y to port, the transom at the origin when the helm
 * goes over. Plain numbers in flat arrays, rounded to a centimetre, so that it goes over a wire as it is: about a
 * hundred frames, at most eight points a line, some 40 kB for a full spread.
 */
export interface TurnScene {
    readonly view: 'turn';
    readonly plan: string;
    readonly at: Place;
    readonly title: Title;
    readonly side: TurnSide;
    /** Of the circle that the transom's centre follows; absent where no turn can be followed. */
    readonly radius?: number;
    /** Where the radius comes from. */
    readonly chosen: 'wished' | 'asked' | 'clean' | 'usual';
    /** What its author gives the radius in, and how many metres one of these is. */
    readonly unit: { readonly symbol: string; readonly metres: number };
    /** In a sentence: `A half turn to port at 50 m, the tightest that the plan allows.` */
    readonly heading: string;
    readonly clean: { readonly port: CleanTurnWords; readonly starboard: CleanTurnWords };
    /** Time of each frame, ascending. None where no turn can be followed. */
    readonly times: readonly number[];
    /** When the boat is on her new course. */
    readonly steadyFrom: number;
    /** Three numbers a frame: x and y of the transom's centre, and the heading, rad anticlockwise from x. */
    readonly boat: readonly number[];
    /** In the boat's axes (x ahead of the transom, y to port): closed, and what stands on deck. */
    readonly hull: readonly XY[];
    readonly poles: readonly (readonly [foot: XY, tip: XY])[];
    readonly lines: readonly TurningLine[];
    readonly nearest?: NearestPair;
    /** What happens when, in order of time. */
    readonly moments: readonly TurnMoment[];
    /** The moment that matters: the first of `moments` that is grave, else when the two are nearest. */
    readonly trouble?: TurnMoment;
    readonly extent: { readonly from: XY; readonly to: XY };
    readonly marks: readonly Mark[];
    readonly remarks: readonly string[];
    readonly unknown: readonly string[];
}

export type TurnSide = 'port' | 'starboard';

/** A line in its frames: frame `i`, point `p` from the tow point (0) to the lure stands at `2 * (i * points + p)`. */
export interface TurningLine {
    readonly id: string;
    readonly position: string;
    readonly title: string;
    readonly name: string;
    readonly at: Place;
    readonly what: 'fished' | 'teaser';
    readonly points: number;
    readonly path: readonly number[];
    /** Of the lure through the water, m/s, one a frame. */
    readonly speed: readonly number[];
    /** Slower than this it does not work, m/s. */
    readonly leastSpeed?: number;
    readonly marks: readonly Mark[];
}

/** The two lines that come nearest. */
export interface NearestPair {
    readonly positions: readonly [string, string];
    readonly words: string;
    /** Of their fans, one a frame, m. */
    readonly distance: readonly number[];
    /** Distance at which two lines count as touching, m. */
    readonly contact: number;
    /** The analysis's own figure. */
    readonly least: number;
    readonly time: number;
    /** Where on each of the two. */
    readonly points: readonly [XY, XY];
}

/** Which turn is wanted; by default the one that the plan allows, to the side that needs more room. */
export interface TurnWishes {
    readonly side?: TurnSide;
    /** m */
    readonly radius?: number;
}

/** Where nothing says how tightly to turn, m. Estimate: an easy turn of a boat of this kind. */
const USUAL_RADIUS = 60;

export interface ChosenTurn {
    readonly side: TurnSide;
    readonly radius: number;
    readonly chosen: TurnScene['chosen'];
}

/** The turn to look at. `analysed` has its turns (see `withTurns`). */
export function turnToLookAt({ plan, turns }: AnalysedPlan, wishes: TurnWishes = {}): ChosenTurn {
    const found = turns?.known ? turns.value : undefined;
    const needed = (of: SideTurnFigures | undefined) => (of && cleanRadius(of)) ?? Number.POSITIVE_INFINITY;
    const side =
        wishes.side ?? (found && needed(found.starboard) > needed(found.port) ? 'starboard' : 'port');
    if (wishes.radius !== undefined) return { side, radius: wishes.radius, chosen: 'wished' };
    const asked = found ? found.asked : plan.turn;
    if (asked) return { side, radius: asked.si, chosen: 'asked' };
    const clean = found && cleanRadius(found[side]);
    if (clean !== undefined) return { side, radius: clean, chosen: 'clean' };
    return { side, radius: USUAL_RADIUS, chosen: 'usual' };
}

/**
 * @param analysed  with its turns (see `withTurns`)
 * @param turn      the turn chosen, followed moment by moment (see `turnToLookAt`, `turnInTime`)
 */
export function sceneOfTurn(
    analysed: AnalysedPlan,
    { side, chosen, radius }: ChosenTurn,
    turn: Figure<TurnInTime>,
    findings: readonly Finding[] = [],
): TurnScene {
    const { plan, turns, poles = [] } = analysed;
    const marks = markFindings(findings, plan.name);
    const like = plan.turn?.quantity;
    const clean = {
        port: cleanWords(turns?.known ? turns.value.port : undefined, 'port', like),
        starboard: cleanWords(turns?.known ? turns.value.starboard : undefined, 'starboard', like),
    };
    const hull = drawHull(plan.boat);
    const followed = turn.known ? turn.value : undefined;
    const lines = followed?.lines.map((line) => turningLine(line, marks)) ?? [];
    const moments = followed ? momentsOfTurn(followed, analysed.contact) : [];
    const nearest = followed && nearestPair(followed, analysed.contact);
    const unfollowed = analysed.lines.filter(
        ({ line }) =>
            line.role !== 'standby' && !lines.some(({ position }) => position === line.position.name),
    );
    const trouble = moments.find(({ grave }) => grave) ?? moments.find(({ kind }) => kind === 'nearest');
    const told = asWritten(radius, like);
    const unit = like?.unit.dimension === 'length' ? like.unit : units.m;
    return {
        view: 'turn',
        plan: plan.name,
        at: plan.origin.place,
        title: titleOfPlan(plan),
        side,
        ...(followed && { radius }),
        chosen,
        unit: { symbol: unit.symbol, metres: unit.toSI },
        heading: followed
            ? `A half turn to ${side} at ${told}${chosenWords[chosen]}`
            : 'No turn can be shown.',
        clean,
        times: (followed?.times ?? []).map(thousandths),
        steadyFrom: followed?.steadyFrom ?? 0,
        boat: (followed?.boat ?? []).flatMap(({ x, y, heading }) => [
            hundredths(x),
            hundredths(y),
            thousandths(heading),
        ]),
        hull: hull.role === 'hull' ? hull.outline : [...hull.across, ...(hull.keel?.slice(1) ?? [])],
        poles: poles.map(({ foot, tip }) => [flat(foot), flat(tip)] as const),
        lines,
        ...(nearest && { nearest }),
        moments,
        ...(trouble && { trouble }),
        extent: extentOf(followed),
        marks,
        remarks: [
            ...(turn.known ? [turn.leaning.join(' ')].filter(Boolean) : []),
            ...(!turns || turns.known || (!turn.known && turn.reason === turns.reason) ? [] : [turns.reason]),
        ],
        unknown: [
            ...(turn.known ? [] : [turn.reason]),
            ...(followed && unfollowed.length > 0
                ? [
                      `${andList(unfollowed.map(({ line }) => titleOf(line.position)))}: not followed, its tow point or its distance is not known.`,
                  ]
                : []),
        ],
    };
}

const chosenWords: Readonly<Record<TurnScene['chosen'], string>> = {
    wished: '.',
    asked: ', the tightest that the plan allows.',
    clean: ', the tightest clean one.',
    usual: ': the plan does not say how tightly it turns, and no turn that was looked at is clean.',
};

/** The turn as sentences. */
export function turnWords(scene: TurnScene): string[] {
    return [
        `${scene.title.title}, in a turn.`,
        scene.heading,
        ...[scene.clean.port, scene.clean.starboard].flatMap(({ words, limit }) => [
            `Tightest clean turn: ${words}.`,
            ...(limit ? [limit] : []),
        ]),
        ...scene.moments.map(({ time, words }) => `${print(time, units.s)}: ${words}`),
        ...scene.lines.map(({ name }) => name),
        ...scene.marks.map(({ number, severity, message }) => `Finding ${number}, ${severity}: ${message}`),
        ...scene.remarks,
        ...scene.unknown,
    ];
}

function turningLine(
    { figures, paths, speeds, leastSpeed }: TurnInTime['lines'][number],
    marks: readonly Mark[],
): TurningLine {
    const { line } = figures;
    const position = line.position.name;
    const kept = pointsKept(paths[0]?.length ?? 0);
    const title = titleOf(line.position);
    const slowest = Math.min(...speeds);
    return {
        id: `line:${position}`,
        position,
        title,
        name: `${title}: in this turn its lure runs at ${print(slowest, units.kn)} or more.`,
        at: line.origin.place,
        what: line.role === 'teaser' ? 'teaser' : 'fished',
        points: kept.length,
        path: paths.flatMap((path) => kept.flatMap((index) => flat(path[index]!).map(hundredths))),
        speed: speeds.map(hundredths),
        ...(leastSpeed !== undefined && { leastSpeed }),
        marks: marks.filter(({ positions }) => positions.includes(position)),
    };
}

const MOST_POINTS = 8;

/** A chain of many points is shown by some of them, evenly chosen, both ends among them. */
function pointsKept(count: number): number[] {
    const most = Math.min(count, MOST_POINTS);
    return Array.from({ length: most }, (_, index) =>
        Math.round((index * (count - 1)) / Math.max(1, most - 1)),
    );
}

function nearestPair({ nearest }: TurnInTime, contact: number): NearestPair | undefined {
    if (!nearest) return undefined;
    const { pair, distances, at } = nearest;
    const nameOf = ({ line }: LineFigures) => line.position.name;
    return {
        positions: [nameOf(pair.a), nameOf(pair.b)],
        words: `${capital(nameOf(pair.a))} and ${nameOf(pair.b)}`,
        distance: distances.map(thousandths),
        contact,
        least: pair.clearance,
        time: pair.time,
        points: [flat(at[0]), flat(at[1])],
    };
}

/** Everything that moves. */
function extentOf(turn: TurnInTime | undefined): TurnScene['extent'] {
    const all: XY[] = [
        [0, 0],
        ...(turn?.boat ?? []).map(({ x, y }): XY => [x, y]),
        ...(turn?.lines ?? []).flatMap(({ paths }) => paths.flatMap((path) => path.map(flat))),
    ];
    const xs = all.map(([x]) => hundredths(x));
    const ys = all.map(([, y]) => hundredths(y));
    return { from: [least(xs), least(ys)], to: [most(xs), most(ys)] };
}

function least(numbers: readonly number[]): number {
    return numbers.reduce((a, b) => Math.min(a, b));
}

function most(numbers: readonly number[]): number {
    return numbers.reduce((a, b) => Math.max(a, b));
}

function flat([x, y]: readonly [number, number, number]): XY {
    return [x, y];
}

function hundredths(number: number): number {
    return Math.round(number * 100) / 100 || 0;
}

function thousandths(number: number): number {
    return Math.round(number * 1000) / 1000 || 0;
}
