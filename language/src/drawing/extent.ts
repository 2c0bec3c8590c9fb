import type { AnalysedPlan } from '../plan/figures.ts';
import type { XY } from './elements.ts';

/** The stretch of water that a picture shows, m from the transom's middle; as wide to port as to starboard. */
export interface Extent {
    readonly ahead: number;
    readonly astern: number;
    readonly half: number;
}

/** Everything whose place is known, with room around it. */
export function extentOf({ plan, lines, poles = [], wash, waves }: AnalysedPlan): Extent {
    const boat = plan.boat?.value;
    let ahead = boat?.length?.si ?? 0;
    let astern = Math.max(10, wash?.known ? wash.value.length : 0);
    let half = Math.max(2, (boat?.beam?.si ?? 0) / 2);
    const reach = (x: number, y: number) => {
        ahead = Math.max(ahead, x);
        astern = Math.max(astern, -x);
        half = Math.max(half, Math.abs(y));
    };
    for (const pole of poles) reach(pole.tip[0], pole.tip[1]);
    for (const { towPoint, astern: back, lateral } of lines) {
        if (towPoint.known) reach(towPoint.value[0], towPoint.value[1]);
        if (back.known) reach(-back.value, lateral.known ? lateral.value : 0);
    }
    return {
        ahead: ahead + 1.5,
        astern: roomAstern(astern, waves),
        half: Math.max(half + Math.max(1.5, 0.3 * half), 0.1 * astern),
    };
}

/** As far as the crest that the last lure runs in front of, so that it is seen on its wave. */
function roomAstern(astern: number, waves: AnalysedPlan['waves']): number {
    const least = astern + Math.max(4, 0.08 * astern);
    if (!waves.known) return least;
    const { firstCrest, wavelength } = waves.value;
    const crest = firstCrest + Math.ceil((astern - firstCrest) / wavelength) * wavelength;
    return Math.max(least, Math.min(crest, 1.5 * least) + 1);
}

/** A closed outline cut to the water that is shown. */
export function clipOutline(outline: readonly XY[], { ahead, astern, half }: Extent): XY[] {
    let kept = cut(outline, ([, y]) => half - y);
    kept = cut(kept, ([, y]) => half + y);
    kept = cut(kept, ([x]) => astern + x);
    return cut(kept, ([x]) => ahead - x);
}

/** An open curve cut likewise; it leaves the water shown at most once at either end. */
export function clipCurve(curve: readonly XY[], { ahead, astern, half }: Extent): XY[] {
    let kept = cut(curve, ([, y]) => half - y, false);
    kept = cut(kept, ([, y]) => half + y, false);
    kept = cut(kept, ([x]) => astern + x, false);
    return cut(kept, ([x]) => ahead - x, false);
}

function cut(outline: readonly XY[], room: (point: XY) => number, closed = true): XY[] {
    const kept: XY[] = [];
    for (const [i, point] of outline.entries()) {
        const before = i > 0 || closed ? outline.at(i - 1)! : point;
        if (room(before) < 0 !== room(point) < 0) kept.push(between(before, point, room));
        if (room(point) >= 0) kept.push(point);
    }
    return kept;
}

/** Where the room runs out between two points of which one has some and the other has none. */
function between(a: XY, b: XY, room: (point: XY) => number): XY {
    const t = room(a) / (room(a) - room(b));
    return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}
