import { markSize } from './labels.ts';
import type { Mark } from './marks.ts';
import type { Palette } from './palette.ts';
import { circle, path, type Spot, text } from './pen.ts';

/**
 * A finding's number in a shape that says how grave it is without colour: a filled octagon stops, a triangle
 * warns, a ring hints.
 */
export function drawMark(
    [x, y]: Spot,
    { severity, number }: Mark,
    { accent, onAccent, paper }: Palette,
): string {
    const r = markSize / 2;
    const digits = String(number);
    const size = digits.length > 1 ? 24 : 29;
    const lettering = { size, weight: 'bold', anchor: 'middle' } as const;
    const middle: Spot = [x, y + size * 0.36];
    if (severity === 'error') {
        const c = r * Math.tan(Math.PI / 8);
        const octagon: Spot[] = [
            [x - c, y - r],
            [x + c, y - r],
            [x + r, y - c],
            [x + r, y + c],
            [x + c, y + r],
            [x - c, y + r],
            [x - r, y + c],
            [x - r, y - c],
        ];
        return path(octagon, { fill: accent }, true) + text(middle, digits, { ...lettering, fill: onAccent });
    }
    if (severity === 'warning') {
        const triangle: Spot[] = [
            [x, y - r * 1.08],
            [x + r * 1.12, y + r * 0.86],
            [x - r * 1.12, y + r * 0.86],
        ];
        return (
            path(triangle, { fill: paper, stroke: accent, width: 5, cap: 'round' }, true) +
            text([x, y + r * 0.66], digits, { ...lettering, size: size * 0.86, fill: accent })
        );
    }
    return (
        circle([x, y], r * 0.9, { fill: paper, stroke: accent, width: 4 }) +
        text(middle, digits, { ...lettering, fill: accent })
    );
}
