import { CONTACT_DISTANCE, clearance, type SwayingLine } from './sway.ts';
import type { Vec } from './vector.ts';

/** What would let two lines sway as far as wanted without touching: each the least by itself, m. */
export interface Remedy {
    /** Letting the longer line out further; absent when no length within reach helps. */
    readonly stagger?: number;
    /** Raising the longer line's tow point. */
    readonly height?: number;
    /** Moving the two apart, tow points and lures, whichever the line moved. */
    readonly width?: number;
}

/** No further than this is looked, m: estimate of what a boat can do. */
const REACH = { stagger: 40, height: 10, width: 15 };

/** Changes closer than this are not told apart, m. */
const CHANGE_STEP = 0.01;

/**
 * How much more stagger, height or width would clear two lines, straight behind the boat, at the sway they have.
 *
 * @returns every figure 0 for lines that are clear already; `undefined` for a line of fewer than two points
 */
export function remedy(
    first: SwayingLine,
    second: SwayingLine,
    contact = CONTACT_DISTANCE,
): Remedy | undefined {
    if (!clearance(first, second)) return undefined;
    const [longer, shorter] = astern(first) >= astern(second) ? [first, second] : [second, first];
    const outward = Math.sign(longer.line[0]![1] - shorter.line[0]![1]) || 1;
    const least = (way: keyof Remedy, changed: (by: number) => readonly Vec[]) => {
        const by = leastChange(
            (change) => clearance({ ...longer, line: changed(change) }, shorter)!.distance,
            contact,
            REACH[way],
        );
        return by === undefined ? {} : { [way]: by };
    };
    return {
        ...least('stagger', (by) => letOut(longer.line, by)),
        ...least('height', (by) => raised(longer.line, by)),
        ...least('width', (by) => longer.line.map(([x, y, z]) => [x, y + outward * by, z])),
    };
}

/**
 * The smallest change after which a distance reaches what is wanted. No point moves further than the change, so what
 * is still missing may always be added at once.
 */
function leastChange(
    distanceAfter: (change: number) => number,
    wanted: number,
    reach: number,
): number | undefined {
    for (let change = 0; change <= reach; ) {
        const missing = wanted - distanceAfter(change);
        if (missing <= 0) return change;
        change += Math.max(CHANGE_STEP, missing);
    }
    return undefined;
}

function astern({ line }: SwayingLine): number {
    return -line[line.length - 1]![0];
}

/** The lure further astern; the points between follow in proportion. */
function letOut(line: readonly Vec[], by: number): readonly Vec[] {
    return line.map(([x, y, z], index) => [x - (by * index) / (line.length - 1), y, z]);
}

/** The tow point higher; the points between follow in proportion. */
function raised(line: readonly Vec[], by: number): readonly Vec[] {
    return line.map(([x, y, z], index) => [x, y, z + by * (1 - index / (line.length - 1))]);
}
