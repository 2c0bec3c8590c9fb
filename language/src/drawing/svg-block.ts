import { type PlacedFoot, foot as sizes } from './foot.ts';
import { letters } from './labels.ts';
import type { Palette } from './palette.ts';
import { circle, line, rectangle, text } from './pen.ts';
import { drawMark } from './svg-marks.ts';
import { cutToWidth } from './text-width.ts';

/** Findings, what is not known, and remarks, below the chart. */
export function drawNotes(
    { foot, notes }: PlacedFoot,
    palette: Palette,
    group: (id: string, drawn: string) => string,
): string {
    const [x, top] = notes;
    let y = top;
    return foot.paragraphs
        .map(({ as, mark, lines, id }) => {
            const middle = y + sizes.line / 2;
            let drawn = '';
            if (mark) drawn += drawMark([x + 25, middle], mark, palette);
            if (as === 'unknown') drawn += circle([x + 25, middle], 9, { stroke: palette.ink, width: 3 });
            const indent = as === 'remark' ? 0 : sizes.indent;
            const fill = as === 'remark' ? palette.soft : palette.ink;
            for (const words of lines) {
                drawn += text([x + indent, y + sizes.line / 2 + sizes.text * 0.36], words, {
                    size: sizes.text,
                    fill,
                });
                y += sizes.line;
            }
            y += sizes.between;
            return id ? group(id, drawn) : drawn;
        })
        .join('');
}

/** The title block, ruled as on an engineering drawing. */
export function drawBlock({ foot, block }: PlacedFoot, { ink, soft }: Palette): string {
    const { x, y, width, height } = block;
    let drawn = rectangle([x, y], width, height, { stroke: ink, width: 5 });
    let at = y;
    for (const words of foot.titleLines) {
        at += sizes.titleLine;
        drawn += text([x + sizes.pad, at - 16], words, { size: sizes.title, weight: 'bold', fill: ink });
    }
    for (const words of foot.docLines) {
        at += sizes.line;
        drawn += text([x + sizes.pad, at - 12], words, { size: sizes.text, fill: soft });
    }
    at += sizes.pad / 2;
    for (const row of foot.rows) {
        drawn += line([x, at], [x + width, at], { stroke: ink, width: 2 });
        for (const cell of row) {
            if (cell.x > 0)
                drawn += line([x + cell.x, at], [x + cell.x, at + sizes.row], { stroke: ink, width: 2 });
            const left = x + cell.x + sizes.pad;
            const value = cutToWidth(cell.value, cell.width - 2 * sizes.pad, sizes.value);
            drawn +=
                text([left, at + 32], cell.caption, { size: letters.caption, fill: soft }) +
                text([left, at + 74], value, { size: sizes.value, fill: ink });
        }
        at += sizes.row;
    }
    drawn += line([x, at], [x + width, at], { stroke: ink, width: 2 });
    at += sizes.pad / 2;
    for (const words of foot.caution) {
        at += sizes.cautionLine;
        drawn += text([x + sizes.pad, at - 8], words, { size: sizes.caution, weight: 'italic', fill: ink });
    }
    return drawn;
}
