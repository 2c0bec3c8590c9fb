import type { DrawnLure, LureShape, Pole, SceneElement, Standby, TowedLine, TowPoint } from './elements.ts';
import { lureShapes } from './lure-shapes.ts';
import type { Palette } from './palette.ts';
import { circle, line, path, rectangle, type Spot } from './pen.ts';
import { lureOnPaper, type Sheet } from './sheet.ts';

/** Marks on a sheet for everything that is not water; widths in tenths of a millimetre. */
export function drawGearElement(element: SceneElement, sheet: Sheet, palette: Palette): string {
    switch (element.role) {
        case 'hull':
            return (
                path(
                    element.outline.map(sheet.toPage),
                    { fill: palette.paper, stroke: palette.ink, width: 6 },
                    true,
                ) + path(element.deck.map(sheet.toPage), { stroke: palette.soft, width: 2 }, true)
            );
        case 'transom':
            return (
                line(sheet.toPage(element.across[0]), sheet.toPage(element.across[1]), {
                    stroke: palette.ink,
                    width: 6,
                }) +
                (element.keel
                    ? line(sheet.toPage(element.keel[0]), sheet.toPage(element.keel[1]), {
                          stroke: palette.ink,
                          width: 3,
                          dash: '20 12',
                      })
                    : '')
            );
        case 'pole':
            return drawPole(element, sheet, palette);
        case 'fan':
            return path(
                element.outline.map(sheet.toPage),
                { stroke: palette.fan, width: 2, dash: '10 6' },
                true,
            );
        case 'line':
            return drawLine(element, sheet, palette);
        case 'tow point':
            return drawTowPoint(element, sheet, palette);
        case 'standby':
            return drawStandby(element, sheet, palette);
        case 'lure':
            return drawLure(element, sheet, palette);
        default:
            return '';
    }
}

function drawPole({ foot, tip, halyards }: Pole, { toPage }: Sheet, { ink, paper }: Palette): string {
    return (
        line(toPage(foot), toPage(tip), { stroke: ink, width: 7, cap: 'round' }) +
        circle(toPage(foot), 9, { fill: ink }) +
        halyards.map((halyard) => circle(toPage(halyard), 8, { fill: paper, stroke: ink, width: 3 })).join('')
    );
}

function drawLine({ what, rod, air, water }: TowedLine, { toPage }: Sheet, { ink, soft }: Palette): string {
    const style = what === 'teaser' ? { stroke: soft, width: 3 } : { stroke: ink, width: 4 };
    return (
        path(rod.map(toPage), { stroke: soft, width: 2.5 }) +
        path(air.map(toPage), style) +
        path(water.map(toPage), { ...style, dash: '14 9' })
    );
}

function drawTowPoint({ kind, point }: TowPoint, { toPage }: Sheet, { ink, paper }: Palette): string {
    const [x, y] = toPage(point);
    if (kind === 'halyard') return circle([x, y], 9, { fill: ink });
    if (kind === 'flat clip') return rectangle([x - 9, y - 9], 18, 18, { fill: ink });
    if (kind === 'rod tip') return circle([x, y], 8, { fill: paper, stroke: ink, width: 4 });
    return path(
        [
            [x, y - 12],
            [x + 12, y],
            [x, y + 12],
            [x - 12, y],
        ],
        { fill: paper, stroke: ink, width: 4 },
        true,
    );
}

function drawStandby({ point }: Standby, { toPage }: Sheet, { ink, paper }: Palette): string {
    const spot = toPage(point);
    return (
        circle(spot, 19, { fill: paper, stroke: ink, width: 3, dash: '7 5' }) + circle(spot, 6, { fill: ink })
    );
}

/** Shapes that stand for a whole arrangement; they are drawn alike, whatever its size. */
const symbols: ReadonlySet<LureShape> = new Set(['squid chain', 'dredge', 'bridge teaser', 'teaser']);

/** Length on the sheet. */
function lureSize({ shape, length }: DrawnLure, sheet: Sheet): number {
    const longest = lureOnPaper(sheet);
    if (symbols.has(shape)) return longest * 1.15;
    if (length === undefined) return longest * 0.7;
    return Math.max(34, Math.min(longest * 1.6, length * sheet.enlargement * sheet.perMetre));
}

function drawLure(lure: DrawnLure, sheet: Sheet, palette: Palette): string {
    const size = lureSize(lure, sheet);
    const nose = sheet.toPage(lure.point);
    const [ahead, aside] = [Math.cos(lure.heading), Math.sin(lure.heading)];
    const toSpot = ([x, y]: readonly [number, number]): Spot => {
        const [along, out] = [(x * ahead - y * aside) * size, (x * aside + y * ahead) * size];
        return sheet.bow === 'up' ? [nose[0] - out, nose[1] - along] : [nose[0] + along, nose[1] - out];
    };
    const { ink, paper } = palette;
    // Without a length the outline is broken, so that nobody measures it.
    const dash = lure.length === undefined && !symbols.has(lure.shape) ? { dash: '6 5' } : {};
    return lureShapes[lure.shape]
        .map(({ as, points }) => {
            const spots = points.map(toSpot);
            if (as === 'solid') return path(spots, { fill: ink, stroke: ink, width: 2 }, true);
            if (as === 'hollow') return path(spots, { fill: paper, stroke: ink, width: 3, ...dash }, true);
            if (as === 'dashed')
                return path(spots, { fill: paper, stroke: ink, width: 3, dash: '6 5' }, true);
            return path(spots, as === 'cut' ? { stroke: paper, width: 4 } : { stroke: ink, width: 2 });
        })
        .join('');
}
