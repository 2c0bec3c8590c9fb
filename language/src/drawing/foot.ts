import type { Rectangle } from './chart.ts';
import { letters } from './labels.ts';
import type { Mark } from './marks.ts';
import type { Spot } from './pen.ts';
import type { Scene } from './scene.ts';
import { textWidth, wrap } from './text-width.ts';
import type { Cell } from './title.ts';

/** What a scene says below its chart. */
export type Worded = Pick<Scene, 'title' | 'marks' | 'unknown' | 'remarks'>;

/** A paragraph below the chart, broken into lines; a finding's begins with its mark. */
export interface Paragraph {
    readonly mark?: Mark;
    readonly lines: readonly string[];
    /** `finding` has its mark in front, `unknown` an open circle, `remark` nothing. */
    readonly as: 'finding' | 'unknown' | 'remark';
    readonly id?: string;
}

/** A cell of the title block, placed in its row: tenths of a millimetre. */
export interface PlacedCell extends Cell {
    readonly x: number;
    readonly width: number;
}

/** Everything below the chart, measured. */
export interface Foot {
    readonly paragraphs: readonly Paragraph[];
    readonly paragraphsHeight: number;
    readonly titleLines: readonly string[];
    /** The plan's own comment. */
    readonly docLines: readonly string[];
    readonly rows: readonly (readonly PlacedCell[])[];
    readonly caution: readonly string[];
    readonly blockHeight: number;
}

/** Sizes of the foot, tenths of a millimetre. */
export const foot = {
    text: letters.small,
    line: 39,
    between: 14,
    indent: 62,
    title: 60,
    titleLine: 74,
    row: 92,
    pad: 18,
    value: 36,
    caution: 26,
    cautionLine: 33,
} as const;

/** However crowded, a sheet spells out so many findings; the rest are counted, and named at their positions. */
const fewestFindings = 3;

/**
 * @param notes       for findings and remarks: their width, and the height that they should not exceed
 * @param blockWidth  for the title block
 * @param more        what the sheet says of its scale: more cells for the block
 */
function measureFoot(
    scene: Worded,
    notes: { readonly width: number; readonly room: number },
    blockWidth: number,
    more: readonly Cell[],
): Foot {
    const paragraphs = paragraphsOf(scene, notes.width - foot.indent, notes.room);
    const { title, doc, cells, caution } = scene.title;
    const docLines = doc ? wrap(doc, blockWidth - 2 * foot.pad, foot.text).slice(0, 2) : [];
    const titleLines = wrap(title, blockWidth - 2 * foot.pad, foot.title, 'bold').slice(0, 2);
    const cautionLines = wrap(caution, blockWidth - 2 * foot.pad, foot.caution, 'italic');
    const rows = flow([...cells, ...more], blockWidth);
    return {
        paragraphs,
        paragraphsHeight: heightOf(paragraphs),
        titleLines,
        docLines,
        rows,
        caution: cautionLines,
        blockHeight:
            titleLines.length * foot.titleLine +
            docLines.length * foot.line +
            foot.pad +
            rows.length * foot.row +
            cautionLines.length * foot.cautionLine +
            foot.pad,
    };
}

/** @param room  height that the paragraphs should not exceed; findings give way, gravest last */
function paragraphsOf({ marks, unknown, remarks }: Worded, width: number, room: number): Paragraph[] {
    const lines = (words: string) => wrap(words, width, foot.text);
    const others = [
        ...unknown.map((sentence): Paragraph => ({ as: 'unknown', lines: lines(`Not known: ${sentence}`) })),
        ...remarks.map((sentence): Paragraph => ({ as: 'remark', lines: lines(sentence) })),
    ];
    const findings = marks.map(
        (mark): Paragraph => ({
            as: 'finding',
            mark,
            id: mark.id,
            lines: lines(`${mark.severity}, ${mark.rule.replaceAll('-', ' ')}: ${mark.message}`),
        }),
    );
    const spelt = [...findings];
    while (spelt.length > fewestFindings && heightOf(spelt) + heightOf(others) > room) spelt.pop();
    const rest = marks
        .slice(spelt.length)
        .map(({ number, rule }) => `${number} ${rule.replaceAll('-', ' ')}`);
    const more = `Further findings, told in full where plans are checked: ${rest.join(', ')}.`;
    return [...spelt, ...(rest.length > 0 ? [{ as: 'remark', lines: lines(more) } as const] : []), ...others];
}

function heightOf(paragraphs: readonly Paragraph[]): number {
    return paragraphs.reduce((sum, { lines }) => sum + lines.length * foot.line + foot.between, 0);
}

/** A foot with its parts side by side or one above the other. */
export interface FootPlan {
    readonly foot: Foot;
    readonly width: number;
    readonly blockWidth: number;
    readonly height: number;
}

export interface PlacedFoot {
    readonly foot: Foot;
    readonly notes: Spot;
    readonly block: Rectangle;
}

export interface FootWishes {
    readonly width: number;
    /** Notes to the left of the title block instead of above it. */
    readonly beside: boolean;
    /** Height that findings and remarks should not exceed. */
    readonly room: number;
    readonly cells: readonly Cell[];
}

export function planFoot(scene: Worded, { width, beside, room, cells }: FootWishes): FootPlan {
    const blockWidth = beside ? Math.round(width * 0.56) : width;
    const notes = { width: beside ? width - blockWidth - 60 : width, room };
    const foot = measureFoot(scene, notes, blockWidth, cells);
    const { paragraphsHeight, blockHeight } = foot;
    const height = beside ? Math.max(paragraphsHeight, blockHeight) : paragraphsHeight + blockHeight;
    return { foot, width, blockWidth, height };
}

export function placeFoot(
    { foot, width, blockWidth, height }: FootPlan,
    left: number,
    bottom: number,
): PlacedFoot {
    const { blockHeight } = foot;
    return {
        foot,
        notes: [left, bottom - height],
        block: {
            x: left + width - blockWidth,
            y: bottom - blockHeight,
            width: blockWidth,
            height: blockHeight,
        },
    };
}

/** Cells in as few rows as can be, about as long as each other, then stretched to the block's width. */
function flow(cells: readonly Cell[], width: number): PlacedCell[][] {
    const needed = cells.map((cell) => Math.min(width, cellWidth(cell)));
    const fewest = breakRows(needed, width);
    const limits = Array.from({ length: 20 }, (_, i) => (width * (i + 1)) / 20);
    const rows = limits
        .map((limit) => breakRows(needed, limit))
        .find(({ length }) => length === fewest.length);
    return (rows ?? fewest).map((row) => {
        const slack = (width - row.reduce((sum, i) => sum + needed[i]!, 0)) / row.length;
        let x = 0;
        return row.map((i) => {
            const cell: PlacedCell = { ...cells[i]!, x, width: needed[i]! + slack };
            x += cell.width;
            return cell;
        });
    });
}

/** Which cells go in which row when none may be longer than the limit. */
function breakRows(needed: readonly number[], limit: number): number[][] {
    const rows: number[][] = [];
    let used = Number.POSITIVE_INFINITY;
    for (const [i, wide] of needed.entries()) {
        if (used + wide > limit) {
            rows.push([]);
            used = 0;
        }
        rows.at(-1)!.push(i);
        used += wide;
    }
    return rows;
}

function cellWidth({ caption, value }: Cell): number {
    return 2 * foot.pad + Math.max(textWidth(caption, letters.caption), textWidth(value, foot.value));
}
