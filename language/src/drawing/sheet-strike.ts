import { print } from '../units/print.ts';
import { fromSI, massOf } from '../units/quantity.ts';
import { units } from '../units/unit.ts';
import { margins } from './chart.ts';
import { letters, place } from './labels.ts';
import type { Spot } from './pen.ts';
import { axisTo, type Plot, plotIn, plotMargins } from './plot.ts';
import { loadWords, type StrikeScene, type WordedMoment } from './scene-strike.ts';
import { textWidth, type Weight, wrap } from './text-width.ts';

/** Where a strike goes on paper, tenths of a millimetre. */
export interface StrikeSheet {
    readonly width: number;
    readonly tension?: Plot;
    readonly run?: Plot;
    readonly spool?: Plot;
    /** The key moments in words, above the tension. */
    readonly moments: readonly MomentLabel[];
    /** What the curves of the spool are called, to the right of it. */
    readonly ends: readonly EndLabel[];
    /** What the levels of the tension are called, likewise. */
    readonly levels: readonly EndLabel[];
    /** In the unit that loads are shown in. */
    readonly shown: (newtons: number) => number;
    readonly bottom: number;
}

export interface MomentLabel {
    readonly moment: WordedMoment;
    readonly lines: readonly string[];
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    /** From the label to its point on the curve. */
    readonly leader: readonly Spot[];
}

/** Words to the right of a plot, led to the height that they name. */
export interface EndLabel {
    readonly lines: readonly string[];
    readonly from: Spot;
    readonly x: number;
    /** Of the middle of the label. */
    readonly y: number;
    readonly weight: Weight;
}

const heading = 80;
const momentLine = 33;
const tensionHeight = 620;
const runHeight = 230;
const spoolHeight = 430;
/** For words to the right of a plot. */
const aside = 330;

export function layOutStrike(scene: StrikeScene, width: number): StrikeSheet {
    const { strike, spool, load } = scene;
    const left = margins.page + plotMargins.left;
    const wide = width - left - margins.page - aside;
    const unit = load?.unit ?? units.kg;
    const shown = (newtons: number) => fromSI(massOf(newtons), unit);
    let y = margins.page + heading;
    const sheet: { tension?: Plot; run?: Plot; spool?: Plot } = {};
    let moments: MomentLabel[] = [];
    let levels: EndLabel[] = [];
    let ends: EndLabel[] = [];
    if (strike) {
        const highest = Math.max(
            strike.peak,
            ...strike.drag,
            scene.other?.peak ?? 0,
            ...inReach(scene).map(({ force }) => force),
        );
        const across = axisTo(strike.time.at(-1)!, 'seconds from the bite', 10);
        const words = strike.moments.map((moment) => momentLines(moment, load));
        const rows = Math.max(...words.map(({ lines }) => lines.length));
        const top = y + 40 + rows * momentLine + 70;
        const box = { x: left, y: top, width: wide, height: tensionHeight };
        const tension = plotIn(box, across, axisTo(1.06 * shown(highest), unit.symbol, 6));
        sheet.tension = tension;
        moments = placeMoments(words, tension, shown, y + 40, rows, margins.page, width - margins.page);
        levels = placeEnds(
            inReach(scene).map(({ force, words: said }) => ({
                lines: wrap(said, aside - 50, letters.caption),
                at: tension.toPage(across.to, shown(force)),
                weight: 'regular',
            })),
            width - margins.page - aside + 44,
            top - 20,
            top + tensionHeight + 20,
        );
        y = top + tensionHeight + plotMargins.below;
        const run = axisTo(
            Math.max(...strike.lineOff, ...(scene.other?.lineOff ?? []), 1),
            'metres of line run off',
            3,
        );
        sheet.run = plotIn({ x: left, y: y + plotMargins.top, width: wide, height: runHeight }, across, run);
        y += plotMargins.top + runHeight + plotMargins.below;
    }
    if (spool) {
        const forces = spool.curves.flatMap(({ force, atFish }) => [...force, ...(atFish?.high ?? [])]);
        const plot = plotIn(
            { x: left, y: y + plotMargins.top + 20, width: wide, height: spoolHeight },
            { ...axisTo(spool.holds, 'metres of line off the spool', 8), to: spool.holds },
            axisTo(1.04 * shown(Math.max(...forces)), `${unit.symbol} to draw line`, 5),
        );
        sheet.spool = plot;
        ends = placeEnds(
            spool.curves.map(({ stage, force }) => ({
                lines: [
                    `${stage} drag`,
                    `${loadWords(force[0]!, load)} full, ${loadWords(force.at(-1)!, load)} empty`,
                ],
                at: plot.toPage(spool.holds, shown(force.at(-1)!)),
                weight: 'bold',
            })),
            width - margins.page - aside + 44,
            plot.box.y - 20,
            plot.box.y + spoolHeight + 20,
        );
        y = plot.box.y + spoolHeight + plotMargins.below;
    }
    return { width, ...sheet, moments, levels, ends, shown, bottom: y + 20 };
}

/** Levels that the plot reaches; a link that holds many times the drag would press everything else to the ground. */
export function inReach({ levels, strike, other }: StrikeScene): StrikeScene['levels'] {
    const peak = Math.max(
        strike?.peak ?? 0,
        other?.peak ?? 0,
        ...levels.filter(({ kind }) => kind !== 'weakest').map(({ force }) => force),
    );
    return levels.filter(({ force }) => force <= 1.5 * peak);
}

const momentWidth = 250;

interface MomentLines {
    readonly moment: WordedMoment;
    readonly lines: readonly string[];
}

function momentLines(moment: WordedMoment, load: StrikeScene['load']): MomentLines {
    const time = print(Math.round(moment.time * 100) / 100, units.s);
    return {
        moment,
        lines: [time, ...wrap(moment.words, momentWidth, letters.caption), loadWords(moment.hook, load)],
    };
}

function placeMoments(
    words: readonly MomentLines[],
    { toPage, box }: Plot,
    shown: StrikeSheet['shown'],
    top: number,
    rows: number,
    from: number,
    to: number,
): MomentLabel[] {
    const sized = words.map(({ moment, lines }) => ({
        moment,
        lines,
        width: Math.max(...lines.map((line) => textWidth(line, letters.caption, 'bold'))),
        spot: toPage(moment.time, shown(moment.hook)),
    }));
    const middles = place(
        sized.map(({ width, spot }) => ({ at: spot[0], size: width })),
        from,
        to,
        26,
    );
    if (!middles) return [];
    const bottom = top + rows * momentLine;
    return sized.map(({ moment, lines, width, spot }, index): MomentLabel => {
        const x = middles[index]! - width / 2;
        return {
            moment,
            lines,
            x,
            y: top,
            width,
            height: lines.length * momentLine,
            leader: [
                [middles[index]!, top + lines.length * momentLine + 4],
                [middles[index]!, bottom + 8],
                [spot[0], box.y - 6],
                spot,
            ],
        };
    });
}

function placeEnds(
    wanted: readonly { readonly lines: readonly string[]; readonly at: Spot; readonly weight: Weight }[],
    x: number,
    from: number,
    to: number,
): EndLabel[] {
    const sorted = [...wanted].sort((a, b) => a.at[1] - b.at[1]);
    const middles = place(
        sorted.map(({ lines, at }) => ({ at: at[1], size: lines.length * 29 })),
        from,
        to,
        8,
    );
    return sorted.map(({ lines, at, weight }, index) => ({
        lines,
        from: at,
        x,
        y: middles?.[index] ?? at[1],
        weight,
    }));
}
