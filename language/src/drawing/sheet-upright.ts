import { bySide, type Chart, firstLine, margins, type PlacedLabel, roundScale, targetsOf } from './chart.ts';
import type { XY } from './elements.ts';
import { type Label, labelOf, place } from './labels.ts';
import type { Spot } from './pen.ts';
import type { Scene } from './scene.ts';

/** The least height that is left to the water, and the least width, tenths of a millimetre. */
const leastHeight = 900;
const leastWidth = 260;
const widestLabel = 580;

/** Bow up: the spread runs down the sheet, labels stand in a column to either side of it. */
export function layOutUpright(
    scene: Scene,
    paper: { readonly width: number; readonly height: number },
    below: number,
): Chart & { readonly width: number } {
    const { ahead, astern, half } = scene.extent;
    const around = 2 * (margins.page + margins.band + margins.corridor);
    const room = Math.max(leastHeight, paper.height - 2 * margins.page - 2 * margins.ends - below);
    const most = Math.min(widestLabel, (paper.width - around - leastWidth) / 2);
    const full = bySide(scene.notes.map((note) => labelOf(note, 'full', most)));
    const fits = Math.max(...full.map(stacked)) <= room + 2 * margins.ends;
    const sides = fits ? full : bySide(scene.notes.map((note) => labelOf(note, 'brief', most)));
    const [left, right] = sides.map(widest) as [number, number];
    const free = Math.max(leastWidth, paper.width - around - left - right);
    const denominator = roundScale(Math.max((ahead + astern) / room, (2 * half) / free) * 10_000);
    const perMetre = 10_000 / denominator;
    const water = {
        x: margins.page + left + margins.corridor + margins.band + (free - 2 * half * perMetre) / 2,
        y: margins.page + margins.ends,
        width: 2 * half * perMetre,
        height: (ahead + astern) * perMetre,
    };
    const toPage = ([x, y]: XY): Spot => [water.x + (half - y) * perMetre, water.y + (ahead - x) * perMetre];
    const frame = { water, toPage };
    const targets = targetsOf(scene);
    const least = water.y + water.height + margins.ends;
    const needed = Math.max(...sides.map(stacked));
    const bottom = Math.max(least, margins.page + needed);
    return {
        bow: 'up',
        width: around + left + right + free,
        water,
        perMetre,
        denominator,
        toPage,
        bottom,
        labels: [
            ...column(sides[0], 'left', frame, targets, bottom),
            ...column(sides[1], 'right', frame, targets, bottom),
        ],
    };
}

function column(
    labels: readonly Label[],
    side: 'left' | 'right',
    { water, toPage }: Pick<Chart, 'water' | 'toPage'>,
    targets: ReadonlyMap<string, XY>,
    bottom: number,
): PlacedLabel[] {
    const sign = side === 'left' ? -1 : 1;
    const edge = side === 'left' ? water.x - margins.band : water.x + water.width + margins.band;
    const inner = edge + sign * margins.corridor;
    const wanted = labels
        .map((label) => {
            const { position, astern } = label.note;
            const target = targets.get(position);
            const known = target ?? (astern === undefined ? undefined : ([-astern, 0] as const));
            return { label, target, spot: known && toPage(known) };
        })
        .sort((a, b) => (a.spot?.[1] ?? bottom) - (b.spot?.[1] ?? bottom) || sideOrder(a.spot, b.spot, sign));
    const middles = place(
        wanted.map(({ label, spot }) => ({
            at: (spot?.[1] ?? bottom) - firstLine + label.height / 2,
            size: label.height,
        })),
        margins.page,
        bottom,
        margins.gap,
    )!;
    return wanted.map(({ label, target, spot }, i): PlacedLabel => {
        const y = middles[i]! - label.height / 2;
        const x = side === 'left' ? inner - label.width : inner;
        const at: Spot = [inner - sign * 12, y + firstLine];
        const end: Spot | undefined = spot && [target ? spot[0] + sign * 16 : edge, spot[1]];
        return {
            label,
            box: { x, y, width: label.width, height: label.height },
            anchor: side === 'left' ? 'end' : 'start',
            leader: end ? [at, [edge, end[1]], end] : [],
            loose: !target,
        };
    });
}

function sideOrder(a: Spot | undefined, b: Spot | undefined, sign: number): number {
    return a && b ? sign * (b[0] - a[0]) : 0;
}

function stacked(labels: readonly Label[]): number {
    return labels.reduce((sum, { height }) => sum + height + margins.gap, 0);
}

function widest(labels: readonly Label[]): number {
    return Math.max(0, ...labels.map(({ width }) => width));
}
