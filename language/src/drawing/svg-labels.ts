import type { PlacedLabel } from './chart.ts';
import { type LabelLine, lineHeight, lineWidth, markRoom } from './labels.ts';
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
    const right = box.x + box.width;
    let y = box.y;
    let drawn = '';
    for (const words of label.lines) {
        const height = lineHeight(words);
        drawn += drawLine(
            words,
            [anchor === 'end' ? right - lineWidth(words) : box.x, y + height / 2],
            palette,
        );
        y += height;
    }
    return drawn;
}

/** One line from its left end, `y` its middle. */
function drawLine(
    { words, size, weight, soft, marks = [] }: LabelLine,
    [x, y]: Spot,
    palette: Palette,
): string {
    const shapes = marks.map((mark, i) => drawMark([x + i * markRoom + 25, y], mark, palette)).join('');
    const fill = marks.length > 0 ? palette.accent : soft ? palette.soft : palette.ink;
    return shapes + text([x + marks.length * markRoom, y + size * 0.36], words, { size, weight, fill });
}
