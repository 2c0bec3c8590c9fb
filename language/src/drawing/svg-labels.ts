import type { PlacedLabel } from './chart.ts';
import { type LabelLine, lineHeight, markRoom } from './labels.ts';
import type { Palette } from './palette.ts';
import { circle, path, type Spot, text } from './pen.ts';
import { drawMark } from './svg-marks.ts';

export function drawLeader({ leader, loose }: PlacedLabel, { soft, paper }: Palette): string {
    const end = leader.at(-1);
    if (!end) return '';
    const drawn = path(leader, { stroke: soft, width: 2 });
    return loose ? drawn + circle(end, 9, { fill: paper, stroke: soft, width: 3 }) : drawn;
}

export function drawLabel({ label, box, anchor }: PlacedLabel, palette: Palette): string {
    const edge = anchor === 'end' ? box.x + box.width : box.x;
    let y = box.y;
    let drawn = '';
    for (const words of label.lines) {
        const height = lineHeight(words);
        drawn += drawLine(words, [edge, y + height / 2], anchor, palette);
        y += height;
    }
    return drawn;
}

/** One line from the label's edge, marks next to the edge; `y` its middle. */
function drawLine(
    { words, size, weight, soft, marks = [] }: LabelLine,
    [edge, y]: Spot,
    anchor: PlacedLabel['anchor'],
    palette: Palette,
): string {
    const inward = anchor === 'end' ? -1 : 1;
    const ordered = anchor === 'end' ? [...marks].reverse() : marks;
    const shapes = ordered.map((mark, i) =>
        drawMark([edge + inward * (25 + i * markRoom), y], mark, palette),
    );
    const fill = marks.length > 0 ? palette.accent : soft ? palette.soft : palette.ink;
    const at: Spot = [edge + inward * marks.length * markRoom, y + size * 0.36];
    return shapes.join('') + text(at, words, { size, weight, fill, anchor });
}
