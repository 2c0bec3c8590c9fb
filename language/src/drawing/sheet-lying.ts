import { bySide, type Chart, margins, type PlacedLabel, roundScale, targetsOf } from './chart.ts';
import type { XY } from './elements.ts';
import { type Label, labelOf, place } from './labels.ts';
import type { Spot } from './pen.ts';
import type { Scene } from './scene.ts';

/** The least height that is left to the water; between these widths a label may wrap. Tenths of a millimetre. */
const leastHeight = 320;
const narrowestLabel = 270;
const widestLabel = 540;
const narrowestFull = 360;
const gap = 60;

/** Bow right: the spread runs from right to left, labels stand in a row above it and below it. */
export function layOutLying(
    scene: Scene,
    paper: { readonly width: number; readonly height: number },
    below: number,
): Chart & { readonly width: number } {
    const { ahead, astern, half } = scene.extent;
    const counted = bySide(scene.notes.map((note) => labelOf(note, 'brief', widestLabel)));
    const most = Math.max(1, ...counted.map((labels) => labels.length));
    const each = Math.min(widestLabel, (paper.width - 2 * margins.page) / most - gap);
    const label = Math.max(narrowestLabel, each);
    const width = Math.max(paper.width, 2 * margins.page + most * (label + gap));
    const fullness = each >= narrowestFull ? 'full' : 'brief';
    const relabel = (labels: readonly Label[]) => labels.map(({ note }) => labelOf(note, fullness, label));
    const sides = [relabel(counted[0]), relabel(counted[1])] as const;
    const [above, under] = sides.map(highest) as [number, number];
    const around = 2 * (margins.page + margins.band + margins.corridor) + above + under;
    const room = Math.max(leastHeight, paper.height - around - below);
    const along = width - 2 * (margins.page + margins.ends);
    const denominator = roundScale(Math.max((ahead + astern) / along, (2 * half) / room) * 10_000);
    const perMetre = 10_000 / denominator;
    const water = {
        x: margins.page + margins.ends + (along - (ahead + astern) * perMetre) / 2,
        y: margins.page + above + margins.corridor + margins.band,
        width: (ahead + astern) * perMetre,
        height: 2 * half * perMetre,
    };
    const toPage = ([x, y]: XY): Spot => [water.x + (x + astern) * perMetre, water.y + (half - y) * perMetre];
    const frame = { water, toPage };
    const targets = targetsOf(scene);
    return {
        bow: 'right',
        width,
        water,
        perMetre,
        denominator,
        toPage,
        bottom: water.y + water.height + margins.band + margins.corridor + under,
        labels: [
            ...row(sides[0], 'above', frame, targets, width),
            ...row(sides[1], 'below', frame, targets, width),
        ],
    };
}

/** How far into a label its leader begins. */
const foothold = 30;

function row(
    labels: readonly Label[],
    side: 'above' | 'below',
    { water, toPage }: Pick<Chart, 'water' | 'toPage'>,
    targets: ReadonlyMap<string, XY>,
    width: number,
): PlacedLabel[] {
    const sign = side === 'above' ? -1 : 1;
    const edge = side === 'above' ? water.y - margins.band : water.y + water.height + margins.band;
    const inner = edge + sign * margins.corridor;
    const wanted = labels
        .map((label) => {
            const { position, astern } = label.note;
            const target = targets.get(position);
            const known = target ?? (astern === undefined ? undefined : ([-astern, 0] as const));
            return { label, target, spot: known && toPage(known) };
        })
        .sort((a, b) => (a.spot?.[0] ?? 0) - (b.spot?.[0] ?? 0));
    const middles = place(
        wanted.map(({ label, spot }) => ({
            at: (spot?.[0] ?? 0) - foothold + label.width / 2,
            size: label.width,
        })),
        margins.page,
        width - margins.page,
        gap,
    )!;
    return wanted.map(({ label, target, spot }, i): PlacedLabel => {
        const x = middles[i]! - label.width / 2;
        const y = side === 'above' ? inner - label.height : inner;
        const at: Spot = [x + foothold, inner - sign * 10];
        const end: Spot | undefined = spot && [spot[0], target ? spot[1] + sign * 16 : edge];
        return {
            label,
            box: { x, y, width: label.width, height: label.height },
            anchor: 'start',
            leader: end ? [at, [end[0], edge], end] : [],
            loose: !target,
        };
    });
}

function highest(labels: readonly Label[]): number {
    return Math.max(0, ...labels.map(({ height }) => height));
}
