import { type Bow, type Chart, margins } from './chart.ts';
import type { SceneElement } from './elements.ts';
import { type PlacedFoot, placeFoot, planFoot } from './foot.ts';
import type { Spot } from './pen.ts';
import type { Scene } from './scene.ts';
import { layOutLying } from './sheet-lying.ts';
import { layOutUpright } from './sheet-upright.ts';

export interface SheetWishes {
    readonly bow?: Bow;
    /** mm; A4 by default, upright for `up`, lying for `right`. Grown where it could not be read otherwise. */
    readonly paper?: { readonly width: number; readonly height: number };
    /** Title block, findings and remarks below the chart; true by default. */
    readonly foot?: boolean;
}

/** A scene on paper: where everything goes, tenths of a millimetre. */
export interface Sheet extends Chart {
    readonly width: number;
    readonly height: number;
    /** Lures are drawn this many times their size. */
    readonly enlargement: number;
    /** Left end of the scale bar's base line. */
    readonly scaleBar: Spot;
    readonly foot?: PlacedFoot;
}

/** The length that the longest lure gets on paper: what can be told apart, without reaching into the next wave. */
export function lureOnPaper({ perMetre }: Pick<Chart, 'perMetre'>): number {
    return Math.min(108, Math.max(78, 2.8 * perMetre));
}

/** The share of the sheet's height that findings and remarks may take from the picture. */
const notesShare = 0.18;

export function layOut(scene: Scene, wishes: SheetWishes = {}): Sheet {
    const bow = wishes.bow ?? 'up';
    const paper = wishes.paper ?? (bow === 'up' ? { width: 210, height: 297 } : { width: 297, height: 210 });
    const size = { width: paper.width * 10, height: paper.height * 10 };
    const footFor = (width: number, denominator: number) =>
        wishes.foot === false
            ? undefined
            : planFoot(scene, {
                  width: width - 2 * margins.page,
                  beside: bow === 'right',
                  room: size.height * notesShare,
                  cells: [{ caption: 'Scale on this sheet', value: `1 : ${denominator}` }],
              });
    // The block is as high for any scale of four figures: measured once to know the room, then as it is.
    const room = footFor(size.width, 1000);
    const below = margins.scaleBar + (room ? room.height + margins.foot : 0);
    const chart = (bow === 'up' ? layOutUpright : layOutLying)(scene, size, below);
    const width = Math.ceil(Math.max(size.width, chart.width));
    const foot = footFor(width, chart.denominator);
    const height = Math.ceil(Math.max(size.height, chart.bottom + below + margins.page));
    return {
        ...chart,
        width,
        height,
        enlargement: enlargementOf(scene.elements, chart),
        scaleBar: [margins.page, chart.bottom + 70],
        ...(foot && { foot: placeFoot(foot, margins.page, height - margins.page) }),
    };
}

function enlargementOf(elements: readonly SceneElement[], chart: Chart): number {
    const lengths = elements.flatMap((element) => (element.role === 'lure' && element.length) || []);
    const longest = Math.max(...lengths.filter((length) => length < 1), 0.15);
    return Math.max(1, Math.floor(lureOnPaper(chart) / (longest * chart.perMetre)));
}
