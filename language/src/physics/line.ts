import { type Climb, climb, type LinePoint, type Stop } from './climb.ts';
import { SEA_WATER_DENSITY, STANDARD_GRAVITY } from './constants.ts';
import { rootFrom } from './root.ts';
import { isPositive, isSound } from './sound.ts';
import { faultOf, type Tow } from './towed.ts';
import { add, cross, dot, norm, scale, subtract, type Vec } from './vector.ts';

/** A line towed on a straight course, in the boat's frame. */
export interface LineQuestion extends Tow {
    readonly towPoint: Vec;
    /** Through the water, m/s, > 0. */
    readonly speed: number;
    /** What is known: unstretched line from tow point to lure, or how far the lure runs astern of the transom; m. */
    readonly length: { readonly out: number } | { readonly astern: number };
    /**
     * `free` (default): at the surface where the line can hold the lure up, else as deep as its weight takes it.
     * `surface`: held there by its face whatever the line pulls. `depth`: m below the surface.
     */
    readonly runs?: 'free' | 'surface' | { readonly depth: number };
}

export type LineAtRest =
    | RestingLine
    /** It would need at least so much line, or distance astern, in m. */
    | { readonly kind: 'too-short'; readonly least: number }
    | { readonly kind: 'bad-input'; readonly reason: string }
    | { readonly kind: 'no-answer'; readonly reason: string };

export interface RestingLine {
    readonly kind: 'at-rest';
    /** Unstretched line from tow point to lure, m. */
    readonly lineOut: number;
    /** What the pull adds to it, m; 0 for pieces without a modulus. */
    readonly stretch: number;
    readonly lure: Vec;
    readonly atSurface: boolean;
    /** N */
    readonly tension: { readonly lure: number; readonly towPoint: number };
    /** Of the line below the horizontal, seen from the boat, rad. */
    readonly angle: { readonly lure: number; readonly towPoint: number };
    /** Where the line goes into the water, at which angle; absent for a line wholly in air or wholly under water. */
    readonly entry?: { readonly point: Vec; readonly angle: number };
    /** Line under water, m. */
    readonly wet: number;
    /** The line's pull on the lure, upwards, N, and as a multiple of the lure's weight in air. */
    readonly upward: { readonly pull: number; readonly ofWeight: number };
    /** Farthest that the line in air hangs below, and is blown aside of, the straight way; m. */
    readonly sag: { readonly down: number; readonly aside: number };
    /** From the tow point (first) to the lure (last), m. */
    readonly shape: readonly Vec[];
}

/** How closely the tow point is met, m. */
const CLOSE = 1e-7;

/**
 * Where a line just grazes the surface it dips in or not by the least change of slope, and the end of it jumps: then
 * this near will do, m.
 */
const GRAZING = 2e-3;

/** Points of a shape, at least. */
const POINTS = 24;

/**
 * A line at rest in the boat's frame: tow point, line in air, through the surface, line in water, lure.
 *
 * The pull of the line on the lure balances the lure's drag; what it is upwards follows from where the lure runs, or
 * where it runs from what it weighs. The one unknown, its slope at the lure or the lure's depth, is found so that
 * the climb up the line meets the tow point. Side wind shifts the lure to leeward of its tow point.
 *
 * Checked in tests/physics/line.test.ts against integrations by two other solvers and a general-purpose mooring code.
 */
export function lineAtRest(question: LineQuestion): LineAtRest {
    const { towPoint, speed, sections, length, lure, runs = 'free' } = question;
    const fault = faultOf(question) ?? faultOfPlace(question);
    if (fault !== undefined) return { kind: 'bad-input', reason: fault };

    const [forward, , height] = towPoint;
    const reach = 'out' in length ? length.out : length.astern + forward;
    const stop: Stop = 'out' in length ? { out: reach } : { ahead: reach };
    const depth = typeof runs === 'object' ? runs.depth : 0;
    const rise = height + depth;
    if ('out' in length && reach <= (runs === 'free' ? height : Math.abs(rise))) {
        return { kind: 'too-short', least: runs === 'free' ? height : Math.abs(rise) };
    }
    if (!isPositive(reach)) return { kind: 'too-short', least: 'out' in length ? 0 : -forward };

    const pressure = 0.5 * SEA_WATER_DENSITY * speed ** 2;
    const drag = pressure * lure.dragArea;
    const sinks = lure.weightInWater + pressure * (lure.diveArea ?? 0);
    const miss = (upward: number, from: number, afloat = 0) => {
        const found = climb(question, speed, [drag, 0, upward], from, afloat, stop);
        return found ? found.end.position[2] - height : Number.NaN;
    };
    const settled = (upward: number, from: number, afloat = 0): LineAtRest => {
        const trace: LinePoint[] = [];
        const longest = Math.max(reach, 1) / POINTS;
        const found = climb(question, speed, [drag, 0, upward], from, afloat, stop, trace, longest);
        return found ? describe(question, found, trace) : NO_ANSWER;
    };

    const reachesSurface = 'ahead' in stop || Math.abs(height) < reach;
    const tooHigh = reachesSurface ? miss(sinks, 0) : 1;
    if (runs === 'free' && tooHigh > 0) {
        const shallowest = 'out' in length ? Math.max(0, -height - reach) : 0;
        const deepest = 'out' in length ? reach - height : Number.POSITIVE_INFINITY;
        const depths = [-deepest, -shallowest] as const;
        const below = rootFrom((z) => miss(sinks, z), -shallowest, 0.2 * tooHigh, CLOSE, ...depths);
        if (below) return settled(sinks, below.x);
        // What is left is a line that floats and bears the little that the lure weighs.
    }
    const flat = 'out' in length ? Math.sqrt(Math.max(reach ** 2 - rise ** 2, reach ** 2 * 1e-6)) : reach;
    const guess = rise / flat;
    // A line that floats cannot pull the lure down from the surface: it lies on the water until it would not.
    const floats = height > 0 && depth === 0 && sections[0].density < SEA_WATER_DENSITY;
    const pull = (slope: number) => (floats && slope < 0 ? 0 : slope * drag);
    const afloat = (slope: number) => (floats && slope < 0 ? -slope * reach : 0);
    let nearest = { x: guess, residual: Number.POSITIVE_INFINITY };
    const missAt = (p: number) => {
        const residual = miss(pull(p), 0 - depth, afloat(p));
        if (Math.abs(residual) < Math.abs(nearest.residual)) nearest = { x: p, residual };
        return residual;
    };
    const met = rootFrom(
        missAt,
        guess,
        0.02 + 0.1 * Math.abs(guess),
        CLOSE,
        floats ? -1 : Number.NEGATIVE_INFINITY,
    );
    const slope = met ?? (Math.abs(nearest.residual) < GRAZING ? nearest : undefined);
    return slope ? settled(pull(slope.x), 0 - depth, afloat(slope.x)) : NO_ANSWER;
}

const NO_ANSWER = { kind: 'no-answer', reason: 'No shape of the line meets its tow point.' } as const;

function faultOfPlace({ towPoint, speed, length, runs }: LineQuestion): string | undefined {
    if (!isSound(...towPoint)) return 'The tow point is out of range.';
    if (!isPositive(speed)) return 'The boat is not under way.';
    if (!isSound('out' in length ? length.out : length.astern)) return 'The line’s length is out of range.';
    if (typeof runs === 'object' && !(isSound(runs.depth) && runs.depth >= 0)) {
        return 'The depth is above the water.';
    }
    return undefined;
}

function describe(question: LineQuestion, found: Climb, trace: LinePoint[]): RestingLine {
    const { towPoint, lure } = question;
    const { end, entry, wet, stretched } = found;
    const shift = subtract(towPoint, end.position);
    const inBoat = ({ position }: LinePoint): Vec => [
        position[0] + shift[0],
        position[1] + shift[1],
        position[2] + 0,
    ];
    const [first] = trace as [LinePoint];
    const dry = trace.filter(({ from }) => from >= (entry?.from ?? (wet > 0 ? end.from : 0)));
    return {
        kind: 'at-rest',
        lineOut: end.from,
        stretch: stretched - end.from,
        lure: inBoat(first),
        atSurface: first.position[2] === 0,
        tension: { lure: norm(first.force), towPoint: norm(end.force) },
        angle: { lure: slopeOf(first.force), towPoint: slopeOf(end.force) },
        ...(entry && { entry: { point: inBoat(entry), angle: slopeOf(entry.force) } }),
        wet,
        upward: { pull: first.force[2], ofWeight: first.force[2] / (lure.mass * STANDARD_GRAVITY) },
        sag: sagOf(dry.map(inBoat)),
        shape: trace.map(inBoat).reverse(),
    };
}

function slopeOf([x, y, z]: Vec): number {
    return Math.atan2(z, Math.hypot(x, y));
}

/** Farthest below and aside of the chord between the ends of a line. */
function sagOf(points: readonly Vec[]): { down: number; aside: number } {
    const [first] = points;
    const last = points.at(-1);
    if (!first || !last || points.length < 3) return { down: 0, aside: 0 };
    const chord = subtract(last, first);
    const across = cross([0, 0, 1], chord);
    const sideways = norm(across) > 0 ? scale(across, 1 / norm(across)) : across;
    let down = 0;
    let aside = 0;
    for (const point of points) {
        const off = subtract(point, first);
        const along = add(first, scale(chord, dot(off, chord) / dot(chord, chord)));
        down = Math.max(down, along[2] - point[2]);
        aside = Math.max(aside, Math.abs(dot(off, sideways)));
    }
    return { down, aside };
}
