import type { PicturePlace } from '../../../language/src/editor/protocol.ts';

interface At {
    readonly line: number;
    readonly character: number;
}

/** The elements that stand for what a caret is in: those of the innermost place around it. */
export function elementsAt(places: readonly PicturePlace[], uri: string, caret: At): readonly string[] {
    const around = places.filter((place) => place.uri === uri && holds(place.range, caret));
    const innermost = around.reduce<PicturePlace | undefined>(
        (best, each) => (!best || isInside(each.range, best.range) ? each : best),
        undefined,
    );
    if (!innermost) return [];
    const { position } = innermost;
    // A line belongs together: its lure, its tow point and what stands beside it.
    return places
        .filter((place) => (position === undefined ? place === innermost : place.position === position))
        .map(({ id }) => id);
}

function holds({ start, end }: PicturePlace['range'], at: At): boolean {
    return compare(start, at) <= 0 && compare(at, end) <= 0;
}

function isInside(inner: PicturePlace['range'], outer: PicturePlace['range']): boolean {
    return compare(outer.start, inner.start) <= 0 && compare(inner.end, outer.end) <= 0;
}

function compare(a: At, b: At): number {
    return a.line - b.line || a.character - b.character;
}
