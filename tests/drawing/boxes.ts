import type { Rectangle } from '../../language/src/drawing/chart.ts';

/** Pairs of boxes that cover each other, by their places in the list. */
export function overlaps(boxes: readonly Rectangle[]): [number, number][] {
    const found: [number, number][] = [];
    for (const [i, a] of boxes.entries()) {
        for (const [j, b] of boxes.entries()) {
            if (j <= i) continue;
            const apart =
                a.x + a.width <= b.x ||
                b.x + b.width <= a.x ||
                a.y + a.height <= b.y ||
                b.y + b.height <= a.y;
            if (!apart) found.push([i, j]);
        }
    }
    return found;
}
