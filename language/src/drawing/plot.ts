import type { Rectangle } from './chart.ts';
import { letters } from './labels.ts';
import type { Palette } from './palette.ts';
import { line, type Spot, text } from './pen.ts';
import { roundStep } from './rulers.ts';

/** An axis of a plot, in the figure's own unit. */
export interface Axis {
    readonly from: number;
    readonly to: number;
    /** Between numbers. */
    readonly step: number;
    /** What it counts, with its unit: `seconds from the bite`. */
    readonly title: string;
}

/** A plot on paper, tenths of a millimetre. */
export interface Plot {
    readonly box: Rectangle;
    readonly across: Axis;
    readonly up: Axis;
    readonly toPage: (across: number, up: number) => Spot;
}

/** An axis from 0 that reaches at least as far as asked, to a round number. */
export function axisTo(most: number, title: string, numbers: number): Axis {
    const step = roundStep(Math.max(most, 1e-6) / numbers);
    return { from: 0, to: Math.ceil(most / step - 1e-9) * step, step, title };
}

/** What surrounds the box of a plot: numbers and a title to the left, and below. */
export const plotMargins = { left: 80, top: 50, below: 84 } as const;

export function plotIn(box: Rectangle, across: Axis, up: Axis): Plot {
    return {
        box,
        across,
        up,
        toPage: (x, y) => [
            box.x + ((x - across.from) / (across.to - across.from)) * box.width,
            box.y + box.height - ((y - up.from) / (up.to - up.from)) * box.height,
        ],
    };
}

/** The frame with its numbers and faint rules at them. */
export function drawAxes({ box, across, up, toPage }: Plot, { ink, soft, wash }: Palette): string {
    const bottom = box.y + box.height;
    const style = { size: letters.small, fill: ink } as const;
    let drawn = '';
    for (const number of numbersOf(up)) {
        const [, y] = toPage(across.from, number);
        if (number > up.from && number < up.to)
            drawn += line([box.x, y], [box.x + box.width, y], { stroke: wash, width: 1, dash: '3 9' });
        drawn += text([box.x - 14, y + 11], String(number), { ...style, anchor: 'end' });
    }
    for (const number of numbersOf(across)) {
        const [x] = toPage(number, up.from);
        if (number > across.from && number < across.to)
            drawn += line([x, box.y], [x, bottom], { stroke: wash, width: 1, dash: '3 9' });
        drawn +=
            line([x, bottom], [x, bottom + 9], { stroke: ink, width: 2.5 }) +
            text([x, bottom + 42], String(number), { ...style, anchor: 'middle' });
    }
    return (
        drawn +
        line([box.x, box.y], [box.x, bottom], { stroke: ink, width: 2.5 }) +
        line([box.x, bottom], [box.x + box.width, bottom], { stroke: ink, width: 2.5 }) +
        text([box.x - plotMargins.left + 4, box.y - 22], up.title, { size: letters.small, fill: soft }) +
        text([box.x + box.width, bottom + 78], across.title, {
            size: letters.small,
            fill: soft,
            anchor: 'end',
        })
    );
}

function numbersOf({ from, to, step }: Axis): number[] {
    const count = Math.floor((to - from) / step + 1e-9);
    return Array.from({ length: count + 1 }, (_, index) => Number((from + index * step).toPrecision(12)));
}
