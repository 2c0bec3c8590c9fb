import { letters } from './labels.ts';
import type { Palette } from './palette.ts';
import { circle, line, path, type Spot, text } from './pen.ts';
import { drawAxes } from './plot.ts';
import type { StrikePlot, StrikeScene } from './scene-strike.ts';
import { type EndLabel, inReach, type StrikeSheet } from './sheet-strike.ts';
import { inMetres } from './words.ts';

/** Tension at the hook, what the reel is set to, and the key moments in words. */
export function drawTension(
    { strike, other, ...scene }: StrikeScene,
    sheet: StrikeSheet,
    palette: Palette,
): string {
    const { tension: plot, moments, levels, shown } = sheet;
    if (!plot || !strike) return '';
    const { ink, soft, water, accent, paper } = palette;
    const { box, toPage } = plot;
    const right = box.x + box.width;
    const over = (times: readonly number[], loads: readonly number[]) =>
        times.map((time, index) => toPage(time, shown(loads[index]!)));
    // What lasts less than a sample, as a clip that opens, would be missing from the curve.
    const curveOf = ({ time, hook, moments: named }: StrikePlot) =>
        [
            ...time.map((at, index) => [at, hook[index]!] as const),
            ...named.map((each) => [each.time, each.hook] as const),
        ]
            .sort(([a], [b]) => a - b)
            .map(([at, force]) => toPage(at, shown(force)));
    const last: Spot = [box.x + box.width - 14, box.y + 34];
    return (
        drawAxes(plot, palette) +
        inReach({ strike, ...(other && { other }), ...scene })
            .map(({ force, kind }) => {
                const [, y] = toPage(0, shown(force));
                return line([box.x, y], [right, y], {
                    stroke: kind === 'weakest' ? accent : soft,
                    width: 1.8,
                    dash: kind === 'weakest' ? '4 7' : '14 9',
                });
            })
            .join('') +
        drawEnds(levels, palette) +
        moments.map(({ leader }) => path(leader, { stroke: soft, width: 1.6 })).join('') +
        (other ? path(curveOf(other), { stroke: water, width: 2.5, dash: '3 6' }) : '') +
        path(over(strike.time, strike.drag), { stroke: soft, width: 3 }) +
        path(curveOf(strike), { stroke: ink, width: 5 }) +
        moments
            .map(({ lines, x, y, width, leader }) => {
                const middle = x + width / 2;
                return (
                    circle(leader.at(-1)!, 10, { fill: paper, stroke: accent, width: 4 }) +
                    lines
                        .map((words, index) =>
                            text([middle, y + 24 + index * 33], words, {
                                size: letters.caption,
                                weight: index === 0 ? 'bold' : 'regular',
                                fill: index === 0 ? accent : ink,
                                anchor: 'middle',
                            }),
                        )
                        .join('')
                );
            })
            .join('') +
        drawKey(
            [
                ['tension at the hook', { stroke: ink, width: 5 }],
                ['what the reel is set to', { stroke: soft, width: 3 }],
                ...(other
                    ? ([
                          [
                              other.style === 'direct' ? 'hooked directly' : 'with a drop-back',
                              { stroke: water, width: 2.5, dash: '3 6' },
                          ],
                      ] as const)
                    : []),
            ],
            last,
            palette,
        )
    );
}

/** Line run off the reel since the bite. */
export function drawRunOff(
    { strike, other }: StrikeScene,
    { run: plot }: StrikeSheet,
    palette: Palette,
): string {
    if (!plot || !strike) return '';
    const { ink, water } = palette;
    const over = (times: readonly number[], metres: readonly number[]) =>
        times.map((time, index) => plot.toPage(time, metres[index]!));
    const end = plot.toPage(strike.time.at(-1)!, strike.lineOff.at(-1)!);
    return (
        drawAxes(plot, palette) +
        (other ? path(over(other.time, other.lineOff), { stroke: water, width: 2.5, dash: '3 6' }) : '') +
        path(over(strike.time, strike.lineOff), { stroke: ink, width: 5 }) +
        text([end[0] + 20, end[1] + 10], `${inMetres(strike.lineOff.at(-1)!)} run off`, {
            size: letters.small,
            fill: ink,
        })
    );
}

/** What it takes to draw line as the spool empties; at the fish a band, for nobody knows how the line lies. */
export function drawSpool(
    { spool }: StrikeScene,
    { spool: plot, ends, shown }: StrikeSheet,
    palette: Palette,
): string {
    if (!plot || !spool) return '';
    const { ink, soft, lower, paper } = palette;
    const { box, toPage } = plot;
    const points = (off: readonly number[], loads: readonly number[]) =>
        off.map((metres, index) => toPage(metres, shown(loads[index]!)));
    const bands = spool.curves.map(({ stage, off, atFish }) =>
        atFish && stage === 'hooked'
            ? path([...points(off, atFish.high), ...points(off, atFish.low).reverse()], { fill: lower }, true)
            : '',
    );
    const at = (metres: number | undefined, words: string) => {
        if (metres === undefined || metres > spool.holds) return '';
        const [x] = toPage(metres, 0);
        const isLate = x > box.x + box.width - 260;
        return (
            line([x, box.y], [x, box.y + box.height], { stroke: soft, width: 1.8, dash: '14 9' }) +
            text([x + (isLate ? -8 : 8), box.y + 26], words, {
                size: letters.caption,
                fill: soft,
                anchor: isLate ? 'end' : 'start',
                halo: paper,
            })
        );
    };
    const banded = spool.curves.some(({ stage, atFish }) => stage === 'hooked' && atFish);
    return (
        bands.join('') +
        drawAxes(plot, palette) +
        at(spool.out, 'while trolling') +
        at(spool.afterRun, 'after the run that is expected') +
        spool.curves
            .map(({ stage, off, force }) =>
                path(points(off, force), {
                    stroke: ink,
                    width: stage === 'hooked' ? 5 : 3,
                    ...(stage === 'set' && { dash: '14 9' }),
                }),
            )
            .join('') +
        drawEnds(ends, palette) +
        (banded
            ? text(
                  [box.x, box.y + box.height + 78],
                  'Shaded: at the fish, at hooked drag, with the water’s hold on the line',
                  {
                      size: letters.caption,
                      fill: soft,
                  },
              )
            : '')
    );
}

function drawEnds(labels: readonly EndLabel[], { ink, soft }: Palette): string {
    return labels
        .map(({ lines, from, x, y, weight }) => {
            const top = y - (lines.length * 29) / 2;
            return (
                path(
                    [
                        [from[0] + 4, from[1]],
                        [x - 10, y],
                    ],
                    { stroke: soft, width: 1.6 },
                ) +
                lines
                    .map((words, index) =>
                        text([x, top + 22 + index * 29], words, {
                            size: letters.caption,
                            weight: index === 0 ? weight : 'regular',
                            fill: ink,
                        }),
                    )
                    .join('')
            );
        })
        .join('');
}

/** Which line is which, its rows below one another from the upper right corner. */
function drawKey(
    rows: readonly (readonly [string, Parameters<typeof path>[1]])[],
    [x, y]: Spot,
    { ink, paper }: Palette,
): string {
    return rows
        .map(([words, stroke], index) => {
            const at = y + index * 32;
            return (
                line([x - 60, at - 8], [x, at - 8], stroke) +
                text([x - 74, at], words, { size: letters.caption, fill: ink, anchor: 'end', halo: paper })
            );
        })
        .join('');
}
