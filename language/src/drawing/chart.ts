import type { XY } from './elements.ts';
import { type Label, letters } from './labels.ts';
import type { Spot } from './pen.ts';
import type { Scene } from './scene.ts';

/** A chart on paper, tenths of a millimetre from the sheet's upper left corner. */
export interface Chart {
    readonly bow: Bow;
    /** The water, without its graduated border. */
    readonly water: Rectangle;
    readonly perMetre: number;
    /** The scale is 1 to this. */
    readonly denominator: number;
    readonly labels: readonly PlacedLabel[];
    readonly toPage: (point: XY) => Spot;
    /** Where the chart and its labels end. */
    readonly bottom: number;
}

/** Where the bow points on the sheet: up, with port on the left; or right, with port above. */
export type Bow = 'up' | 'right';

export interface Rectangle {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
}

export interface PlacedLabel {
    readonly label: Label;
    readonly box: Rectangle;
    /** `end` where the chart is to the right of it. */
    readonly anchor: 'start' | 'end';
    /** From the label to what it names; empty where that has no place. */
    readonly leader: readonly Spot[];
    /** The leader ends at a distance, not at a lure: how far to the side is not known. */
    readonly loose: boolean;
}

/** Sizes of what surrounds the water, tenths of a millimetre. */
export const margins = {
    page: 90,
    /** The graduated border, where its numbers stand beside the bars and where above or below them. */
    band: 70,
    ends: 54,
    /** Between border and labels, where leaders bend. */
    corridor: 80,
    /** Between two labels. */
    gap: 24,
    scaleBar: 140,
    foot: 40,
} as const;

/** The smallest round scale that is not larger than what fits. */
export function roundScale(least: number): number {
    const power = 10 ** Math.floor(Math.log10(least));
    // Two figures, even ones from 4 on: a scale bar, not the figure, is what people measure with.
    const tenths = Math.ceil((least / power) * 10 - 1e-6);
    return Math.round(((tenths <= 40 ? tenths : Math.ceil(tenths / 2) * 2) * power) / 10);
}

/** Where each position's label points: its lure, its gear standing by, or else its tow point. */
export function targetsOf(scene: Scene): ReadonlyMap<string, XY> {
    const targets = new Map<string, XY>();
    for (const { position, point } of scene.notes.flatMap(({ position, towPoint }) =>
        towPoint ? [{ position, point: towPoint }] : [],
    )) {
        targets.set(position, point);
    }
    for (const element of scene.elements) {
        if (element.role === 'lure' || element.role === 'standby')
            targets.set(element.position!, element.point);
    }
    return targets;
}

/** Labels of the port and of the starboard gutter; those of the centreline go where there is less. */
export function bySide(labels: readonly Label[]): readonly [port: Label[], starboard: Label[]] {
    const port = labels.filter(({ note }) => note.side === 'port');
    const starboard = labels.filter(({ note }) => note.side === 'starboard');
    for (const label of labels.filter(({ note }) => note.side === 'centre')) {
        (total(port) < total(starboard) ? port : starboard).push(label);
    }
    return [port, starboard];
}

function total(labels: readonly Label[]): number {
    return labels.reduce((sum, { height }) => sum + height, 0);
}

/** Height of the middle of a label's first line. */
export const firstLine = letters.name * 0.68;
