import { fan, type SwayingLine } from '../sway.ts';
import type { Triangle } from '../triangles.ts';
import type { Vec } from '../vector.ts';
import type { Course } from './course.ts';

/** How far a line sways, see `SwayingLine`. */
export type Swaying = Pick<SwayingLine, 'sway' | 'cap'>;

/** What a swaying line sweeps at each moment of a turn, as the boat sees it. */
export interface Swept {
    readonly course: Course;
    readonly at: (time: number) => Moment;
}

export interface Moment {
    readonly fan: readonly Triangle[];
    /** Of each triangle of the fan; none for a fan of one. */
    readonly boxes: readonly Box[];
    /** In the middle of its fan. */
    readonly line: readonly Vec[];
    /** See `Sight`. */
    readonly travelled: number;
    /** Of the whole fan. */
    readonly box: Box;
}

/** Least and greatest coordinates, x, y, z and x, y, z. */
export type Box = readonly [number, number, number, number, number, number];

/** Remembers each moment: in a search of all pairs the same moments come up again and again. */
export function sweep(course: Course, swaying: Swaying): Swept {
    const known = new Map<number, Moment>();
    const at = (time: number) => {
        let moment = known.get(time);
        if (!moment) {
            const { line, travelled } = course.at(time);
            const swept = fan({ line, sway: swaying.sway, cap: swaying.cap });
            const boxes = swept.length > 1 ? swept.map((triangle) => boxOf([triangle])) : [];
            moment = { fan: swept, boxes, line, travelled, box: boxOf(swept) };
            known.set(time, moment);
        }
        return moment;
    };
    return { course, at };
}

function boxOf(triangles: readonly Triangle[]): Box {
    let x0 = Number.POSITIVE_INFINITY;
    let y0 = Number.POSITIVE_INFINITY;
    let z0 = Number.POSITIVE_INFINITY;
    let x1 = Number.NEGATIVE_INFINITY;
    let y1 = Number.NEGATIVE_INFINITY;
    let z1 = Number.NEGATIVE_INFINITY;
    for (let index = 0; index < triangles.length; index++) {
        const triangle = triangles[index]!;
        for (let corner = 0; corner < 3; corner++) {
            const point = triangle[corner]!;
            x0 = Math.min(x0, point[0]);
            y0 = Math.min(y0, point[1]);
            z0 = Math.min(z0, point[2]);
            x1 = Math.max(x1, point[0]);
            y1 = Math.max(y1, point[1]);
            z1 = Math.max(z1, point[2]);
        }
    }
    return [x0, y0, z0, x1, y1, z1];
}

/** How far apart two lines stay, at least, all the while between two moments of each, by their boxes. */
export function boxesApart(a0: Moment, a1: Moment, b0: Moment, b1: Moment): number {
    const stray = strayOf(a0, a1) + strayOf(b0, b1);
    let square = 0;
    for (let axis = 0; axis < 3; axis++) {
        const above = Math.min(a0.box[axis]!, a1.box[axis]!) - Math.max(b0.box[axis + 3]!, b1.box[axis + 3]!);
        const below = Math.min(b0.box[axis]!, b1.box[axis]!) - Math.max(a0.box[axis + 3]!, a1.box[axis + 3]!);
        const apart = Math.max(0, above - stray, below - stray);
        square += apart * apart;
    }
    return Math.sqrt(square);
}

/** Distance of two boxes, m; 0 where they meet. */
export function boxGap(a: Box, b: Box): number {
    const x = Math.max(0, a[0] - b[3], b[0] - a[3]);
    const y = Math.max(0, a[1] - b[4], b[1] - a[4]);
    const z = Math.max(0, a[2] - b[5], b[2] - a[5]);
    return Math.sqrt(x * x + y * y + z * z);
}

/**
 * How far a line may have been outside the box of its two ends between them: for a straight line, whose lure runs a
 * path of known length between two known places, ½·√(length² − chord²).
 */
function strayOf(from: Moment, to: Moment): number {
    const length = to.travelled - from.travelled;
    if (from.line.length !== 2 || to.line.length !== 2) return length / 2;
    const [, lure] = from.line;
    const [, later] = to.line;
    const x = later![0] - lure![0];
    const y = later![1] - lure![1];
    return Math.sqrt(Math.max(0, length * length - x * x - y * y)) / 2;
}
