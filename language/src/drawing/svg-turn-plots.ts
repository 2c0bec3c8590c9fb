import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import { roundScale } from './chart.ts';
import { letters } from './labels.ts';
import type { Palette } from './palette.ts';
import { circle, line, path, type Spot, text } from './pen.ts';
import { drawAxes } from './plot.ts';
import type { TurnScene } from './scene-turn.ts';
import type { TurnSheet } from './sheet-turn.ts';
import { wrap } from './text-width.ts';
import { inMetres } from './words.ts';

/** Least distance of the closest pair through the turn, with the moment that matters. */
export function drawNearest(
    { nearest, times, steadyFrom, trouble }: TurnScene,
    { nearest: plot }: TurnSheet,
    palette: Palette,
): string {
    if (!nearest || !plot) return '';
    const { ink, soft, accent, paper } = palette;
    const { box, toPage } = plot;
    const right = box.x + box.width;
    const [, touch] = toPage(0, nearest.contact);
    const [course] = toPage(steadyFrom, 0);
    const small = { size: letters.caption, fill: soft } as const;
    const [lx, ly] = toPage(nearest.time, nearest.least);
    const isLate = nearest.time > times.at(-1)! * 0.6;
    const mark: Spot = [lx + (isLate ? -24 : 24), Math.max(box.y + 30, ly - 24)];
    const grave = trouble?.kind === 'foul';
    return (
        drawAxes(plot, palette) +
        line([box.x, touch], [right, touch], { stroke: ink, width: 2, dash: '14 9' }) +
        text([right - 6, touch - 8], `touching, ${inMetres(nearest.contact)}`, {
            ...small,
            anchor: 'end',
            halo: paper,
        }) +
        line([course, box.y], [course, box.y + box.height], { stroke: soft, width: 1.6, dash: '40 9 6 9' }) +
        text([course + (course > right - 300 ? -8 : 8), box.y + 24], 'new course', {
            ...small,
            ...(course > right - 300 && { anchor: 'end' }),
            halo: paper,
        }) +
        path(
            times.map((time, index) => toPage(time, nearest.distance[index]!)),
            { stroke: ink, width: 4.5 },
        ) +
        circle([lx, ly], 13, { fill: paper, stroke: accent, width: 5 }) +
        text(
            mark,
            `${inMetres(nearest.least)} after ${print(nearest.time, units.s)}${grave ? ': a foul' : ''}`,
            {
                size: letters.small,
                weight: 'bold',
                fill: accent,
                anchor: isLate ? 'end' : 'start',
                halo: paper,
            },
        )
    );
}

/** The tightest clean turns as arcs to one scale, port to the left. */
export function drawCleanTurns(
    { clean }: TurnScene,
    { clean: box }: Pick<TurnSheet, 'clean'>,
    palette: Palette,
): string {
    const { ink, soft, paper } = palette;
    const { port, starboard } = clean;
    if (box.height === 0) return '';
    const widest = Math.max(port.radius ?? 0, starboard.radius ?? 0);
    const title = text([box.x, box.y + 28], 'Tightest clean turns', {
        size: letters.small,
        weight: 'bold',
        fill: ink,
    });
    const foot = widest === 0 ? box.y + 30 : box.y + box.height - 84;
    const middle = box.x + box.width / 2;
    const words = ([side, { words: said }]: readonly ['port' | 'starboard', TurnScene['clean']['port']]) =>
        wrap(said, box.width / 2 - 30, letters.caption)
            .slice(0, 2)
            .map((each, index) =>
                text([side === 'port' ? box.x : middle + 15, foot + 40 + index * 30], each, {
                    size: letters.caption,
                    fill: ink,
                }),
            )
            .join('');
    const told = title + words(['port', port]) + words(['starboard', starboard]);
    if (widest === 0) return told;
    const denominator = roundScale(
        Math.max((4 * widest) / (box.width - 60), widest / (box.height - 150)) * 10_000,
    );
    const perMetre = 10_000 / denominator;
    const arc = ({ radius, told: words = '' }: TurnScene['clean']['port'], sign: number) => {
        if (radius === undefined) return '';
        const r = radius * perMetre;
        const curve = Array.from({ length: 33 }, (_, index): Spot => {
            const angle = (Math.PI * index) / 32;
            return [middle + sign * (r - r * Math.cos(angle)), foot - r * Math.sin(angle)];
        });
        return (
            path(curve, { stroke: ink, width: 4 }) +
            line([middle, foot], [middle + sign * r, foot], { stroke: soft, width: 2 }) +
            line([middle + sign * r, foot - 9], [middle + sign * r, foot + 9], { stroke: soft, width: 2 }) +
            text([middle + (sign * r) / 2, foot - 10], words, {
                size: letters.caption,
                fill: ink,
                anchor: 'middle',
                halo: paper,
            })
        );
    };
    return (
        told +
        arc(port, -1) +
        arc(starboard, 1) +
        circle([middle, foot], 7, { fill: ink }) +
        text([box.x + box.width, box.y + 28], `1 : ${denominator}`, {
            size: letters.caption,
            fill: soft,
            anchor: 'end',
        })
    );
}

/** What happens when, and what a tighter turn would do. */
export function drawMoments(
    { moments, clean }: TurnScene,
    { moments: box }: TurnSheet,
    { ink, soft, accent }: Palette,
): string {
    if (box.height === 0) return '';
    let y = box.y + 28;
    let drawn = text([box.x, y], 'What happens', { size: letters.small, weight: 'bold', fill: ink });
    const indent = 110;
    const last = box.y + box.height;
    for (const { time, words, grave } of moments) {
        const fill = grave ? accent : ink;
        y += 38;
        drawn += text([box.x + indent - 16, y], print(time, units.s), {
            size: letters.caption,
            fill,
            anchor: 'end',
            ...(grave && { weight: 'bold' as const }),
        });
        for (const [index, each] of wrap(words, box.width - indent, letters.caption).entries()) {
            if (index > 0) y += 28;
            drawn += text([box.x + indent, y], each, {
                size: letters.caption,
                fill,
                ...(grave && { weight: 'bold' as const }),
            });
        }
    }
    for (const limit of [clean.port.limit, clean.starboard.limit]) {
        if (!limit) continue;
        y += 10;
        for (const each of wrap(limit, box.width, letters.caption)) {
            y += 28;
            if (y < last) drawn += text([box.x, y], each, { size: letters.caption, fill: soft });
        }
    }
    return drawn;
}
