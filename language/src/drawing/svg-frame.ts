import { margins } from './chart.ts';
import { letters } from './labels.ts';
import type { Palette } from './palette.ts';
import { line, rectangle, type Spot, text } from './pen.ts';
import { type Ruler, roundStep, type ScaleBar } from './rulers.ts';
import type { Scene } from './scene.ts';
import type { Sheet } from './sheet.ts';
import { wrap } from './text-width.ts';

/** Thickness of the graduated bars. */
const bars = 9;

/** The chart's border, graduated in metres astern along its sides and sideways along its after end. */
export function drawFrame(scene: Scene, sheet: Sheet, palette: Palette): string {
    const { water, bow } = sheet;
    const { ink } = palette;
    const outer = {
        x: water.x - (bow === 'up' ? margins.band : margins.ends),
        y: water.y - (bow === 'up' ? margins.ends : margins.band),
    };
    return (
        rectangle([water.x, water.y], water.width, water.height, { stroke: ink, width: 2.5 }) +
        rectangle([water.x - bars, water.y - bars], water.width + 2 * bars, water.height + 2 * bars, {
            stroke: ink,
            width: 2,
        }) +
        rectangle(
            [outer.x, outer.y],
            water.width + 2 * (water.x - outer.x),
            water.height + 2 * (water.y - outer.y),
            { stroke: ink, width: 5 },
        ) +
        drawAstern(scene, sheet, palette) +
        drawSideways(scene, sheet, palette) +
        drawSides(sheet, palette)
    );
}

/** The boat's track, dash and dot as engineers draw an axis. */
export function drawTrack({ extent }: Scene, { toPage }: Sheet, { soft }: Palette): string {
    return line(toPage([extent.ahead, 0]), toPage([-extent.astern, 0]), {
        stroke: soft,
        width: 1.6,
        dash: '40 9 6 9',
    });
}

function drawAstern({ extent, rulers }: Scene, sheet: Sheet, { ink, paper }: Palette): string {
    const { water, bow, toPage } = sheet;
    let drawn = '';
    for (const [from, to] of blackBars(rulers.astern)) {
        const [ax, ay] = toPage([-from, extent.half]);
        const [bx, by] = toPage([-to, extent.half]);
        for (const far of [0, 1]) {
            const corner: Spot =
                bow === 'up'
                    ? [far ? water.x + water.width : water.x - bars, Math.min(ay, by)]
                    : [Math.min(ax, bx), far ? water.y + water.height : water.y - bars];
            const [w, h] = bow === 'up' ? [bars, Math.abs(by - ay)] : [Math.abs(bx - ax), bars];
            drawn += rectangle(corner, w, h, { fill: ink });
        }
    }
    for (const metres of numbers(rulers.astern).filter((number) => number >= 0)) {
        const [x, y] = toPage([-metres, 0]);
        const words = metres === 0 ? '0 m' : String(metres);
        const style = { size: letters.small, fill: ink, anchor: 'middle', halo: paper } as const;
        const drop = letters.small * 0.36;
        const out = bars + (margins.band - bars) / 2;
        const spots: Spot[] =
            bow === 'up'
                ? [
                      [water.x - out, y + drop],
                      [water.x + water.width + out, y + drop],
                  ]
                : [
                      [x, water.y - out + drop],
                      [x, water.y + water.height + out + drop],
                  ];
        drawn += spots.map((spot) => text(spot, words, style)).join('');
    }
    return drawn;
}

function drawSideways({ extent, rulers }: Scene, sheet: Sheet, { ink }: Palette): string {
    const { water, bow, toPage } = sheet;
    let drawn = '';
    for (const [from, to] of blackBars(rulers.sideways)) {
        const [ax, ay] = toPage([-extent.astern, from]);
        const [bx, by] = toPage([-extent.astern, to]);
        drawn +=
            bow === 'up'
                ? rectangle([Math.min(ax, bx), water.y + water.height], Math.abs(bx - ax), bars, {
                      fill: ink,
                  })
                : rectangle([water.x - bars, Math.min(ay, by)], bars, Math.abs(by - ay), { fill: ink });
    }
    const style = { size: letters.small, fill: ink, anchor: 'middle' } as const;
    const out = bars + (margins.ends - bars) / 2;
    for (const metres of numbers(rulers.sideways)) {
        const [x, y] = toPage([-extent.astern, metres]);
        const words = String(Math.abs(metres));
        const drop = letters.small * 0.36;
        drawn += text(
            bow === 'up' ? [x, water.y + water.height + out + drop] : [water.x - out, y + drop],
            words,
            style,
        );
    }
    return drawn;
}

function drawSides({ water, bow }: Sheet, { soft }: Palette): string {
    const style = { size: letters.small, fill: soft } as const;
    const right = water.x + water.width;
    if (bow === 'up') {
        return (
            text([water.x, water.y - bars - 12], 'port', style) +
            text([right, water.y - bars - 12], 'starboard', { ...style, anchor: 'end' })
        );
    }
    // As far out as they go: the ends of the poles are near.
    return (
        text([right - 10, water.y + letters.small + 2], 'port', { ...style, anchor: 'end' }) +
        text([right - 10, water.y + water.height - 9], 'starboard', { ...style, anchor: 'end' })
    );
}

/** A bar with room for a number at either end, however small the picture is drawn. */
function scaleBarFor({ metres, feet }: ScaleBar, perMetre: number): ScaleBar {
    const least = leastBar / perMetre;
    return metres >= least
        ? { metres, feet }
        : { metres: roundStep(least), feet: roundStep((0.7 * roundStep(least)) / 0.3048) };
}

/** Half of `0`, half of `1000 m`, and a letter between. */
const leastBar = letters.small * 3;

/** Metres above, feet below, black and white in turn. */
export function drawScaleBar(scene: Scene, sheet: Sheet, palette: Palette): string {
    const { scaleBar, perMetre, enlargement } = sheet;
    const { ink, soft } = palette;
    const { metres, feet } = scaleBarFor(scene.rulers.scaleBar, perMetre);
    const [x, y] = scaleBar;
    const style = { size: letters.small, fill: ink, anchor: 'middle' } as const;
    const width = metres * perMetre;
    const wide = feet * 0.3048 * perMetre;
    const fifth = width / 5;
    const right = x + Math.max(width, wide) + 100;
    return (
        rectangle([x, y - bars], width, bars, { stroke: ink, width: 2 }) +
        [0, 2, 4].map((i) => rectangle([x + i * fifth, y - bars], fifth, bars, { fill: ink })).join('') +
        rectangle([x, y], wide, bars, { stroke: ink, width: 2 }) +
        [1, 3].map((i) => rectangle([x + (i * wide) / 5, y], wide / 5, bars, { fill: ink })).join('') +
        text([x, y - bars - 10], '0', style) +
        text([x + width, y - bars - 10], `${metres} m`, style) +
        text([x + wide, y + bars + 32], `${feet} ft`, style) +
        wrap(legend(scene, enlargement), sheet.width - margins.page - right, letters.small)
            .map((words, i) => text([right, y - 10 + i * 39], words, { size: letters.small, fill: soft }))
            .join('')
    );
}

function legend({ elements }: Scene, enlargement: number): string {
    const lures = elements.some((element) => element.role === 'lure' && element.length !== undefined);
    const faces = elements.some(({ role }) => role === 'face');
    const doubtful = elements.some((element) => element.role === 'crest' && element.doubtful);
    return [
        lures && enlargement > 1 && `Lures are drawn ${enlargement} times their size, noses in place.`,
        faces && 'Front faces of waves are shaded, their lower third twice.',
        doubtful && 'Crests are dashed: the waves are in doubt.',
    ]
        .filter(Boolean)
        .join(' ');
}

/** Every second bar between two distances. */
function blackBars({ bar, from, to }: Ruler): [number, number][] {
    const first = Math.floor(from / bar);
    const last = Math.ceil(to / bar);
    return Array.from({ length: last - first }, (_, i) => first + i)
        .filter((i) => i % 2 === 0)
        .map((i): [number, number] => [Math.max(from, i * bar), Math.min(to, (i + 1) * bar)])
        .filter(([a, b]) => b > a);
}

function numbers({ step, from, to }: Ruler): number[] {
    const first = Math.ceil(from / step);
    const last = Math.floor(to / step);
    return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}
