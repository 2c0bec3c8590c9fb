import type { LureMove } from '../../../language/src/editor/protocol.ts';

/*
 * Where a lure goes that a hand lets back or takes in. Distances in metres astern of the transom.
 */

/** A face takes a lure that comes so near to its ideal place, m; to an author who measures any other place is free. */
const PULL = 1;

/** The least that a hand can set, m: a line's mark is not put nearer. */
const LEAST = 0.5;

/** @param free  no face takes hold, where its author measures */
export function snap({ counts, faces }: LureMove, astern: number, free = false): number {
    const wanted = Math.max(LEAST, astern);
    const near = nearest(faces, wanted);
    if (near === undefined) return wanted;
    if (counts === 'waves') return near;
    return !free && Math.abs(near - wanted) <= PULL ? near : wanted;
}

/** The next face nearer the boat (-1) or further back (1); where it is, for a lure that has none that way. */
export function nextFace({ faces }: LureMove, astern: number, way: -1 | 1): number {
    // A lure that was written in whole feet is on its face, though not to the millimetre.
    const beyond = faces.map((face) => face.astern).filter((each) => (each - astern) * way > 0.2);
    return (way > 0 ? beyond[0] : beyond.at(-1)) ?? astern;
}

function nearest(faces: LureMove['faces'], astern: number): number | undefined {
    const off = (each: number) => Math.abs(each - astern);
    return faces
        .map((face) => face.astern)
        .reduce<number | undefined>(
            (best, each) => (best === undefined || off(each) < off(best) ? each : best),
            undefined,
        );
}
