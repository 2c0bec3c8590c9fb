import type { Crest, SceneElement, Wash } from './elements.ts';
import { letters } from './labels.ts';
import type { Palette } from './palette.ts';
import { line, path, type Spot, text } from './pen.ts';
import type { Scene } from './scene.ts';
import type { Sheet } from './sheet.ts';

export function drawWaterElement(element: SceneElement, sheet: Sheet, palette: Palette): string {
    const { toPage } = sheet;
    switch (element.role) {
        case 'face':
            return (
                path(element.outline.map(toPage), { fill: palette.face }, true) +
                path(element.lower.map(toPage), { fill: palette.lower }, true)
            );
        case 'crest':
            return path(element.curve.map(toPage), {
                stroke: palette.water,
                width: 3,
                ...(element.doubtful && { dash: '24 14' }),
            });
        case 'wedge':
            return element.arms
                .map(([from, to]) =>
                    line(toPage(from), toPage(to), { stroke: palette.water, width: 2, dash: '2 9' }),
                )
                .join('');
        case 'wash':
            return drawWash(element, sheet, palette);
        default:
            return '';
    }
}

/** Rows of dots that run astern, as far apart across as along. */
function drawWash({ outline }: Wash, { toPage, perMetre }: Sheet, { wash }: Palette): string {
    const [near, far] = [outline[0]!, outline[1]!];
    const rows = Math.max(2, Math.round((near[1] * perMetre) / 12));
    let dots = '';
    for (let row = -rows; row <= rows; row++) {
        const share = row / rows;
        const begin = row % 2 === 0 ? 0 : (7 / perMetre) * Math.sign(far[0]);
        dots += line(toPage([begin, near[1] * share]), toPage([far[0], far[1] * share]), {
            stroke: wash,
            width: 3.4,
            dash: '3.4 11',
        });
    }
    return dots;
}

/** Half the room that a wave's number takes. */
const numberRoom: Spot = [26, 22];

/** The waves' numbers, in one column along the track, where they cross the fewest lines and lures. */
export function drawWaveNumbers(scene: Scene, sheet: Sheet, palette: Palette): string {
    const crests = scene.elements.filter((element): element is Crest => element.role === 'crest');
    const gear = obstacles(scene, sheet);
    const columns = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6]
        .map((step) => (step * 26) / sheet.perMetre)
        .filter((column) => Math.abs(column) < scene.extent.half * 0.8);
    const counted = crests.map((crest) => columns.map((column) => count(gear, spotOn(crest, column, sheet))));
    const shared = least(columns.map((_, column) => counted.reduce((sum, hits) => sum + hits[column]!, 0)));
    return crests
        .map((crest, i) => {
            const column = counted[i]![shared] === 0 ? shared : least(counted[i]!);
            const spot = spotOn(crest, columns[column]!, sheet);
            if (!spot) return '';
            const size = letters.small;
            return text([spot[0], spot[1] + size * 0.36], String(crest.wave), {
                size,
                weight: 'italic',
                anchor: 'middle',
                fill: palette.ink,
                halo: palette.paper,
            });
        })
        .join('');
}

/** Which of them is the least, the first of equals. */
function least(costs: readonly number[]): number {
    return costs.indexOf(Math.min(...costs));
}

/** Where a crest crosses a column, if it reaches so far out. */
function spotOn({ curve }: Crest, aside: number, { toPage }: Sheet): Spot | undefined {
    for (const [i, [x, y]] of curve.entries()) {
        const before = curve[i - 1];
        if (!before || before[1] > aside || y < aside) continue;
        const t = y === before[1] ? 0 : (aside - before[1]) / (y - before[1]);
        return toPage([before[0] + (x - before[0]) * t, aside]);
    }
    return undefined;
}

/** Spots strung along every line and at every lure, close enough that no number slips between two. */
function obstacles({ elements }: Scene, { toPage }: Sheet): Spot[] {
    const spots: Spot[] = [];
    for (const element of elements) {
        if (element.role !== 'line' && element.role !== 'lure') continue;
        const ends = element.role === 'line' ? [...element.air, ...element.water] : [element.point];
        for (const [i, point] of ends.entries()) {
            const [x, y] = toPage(point);
            const [px, py] = i > 0 ? toPage(ends[i - 1]!) : [x, y];
            const steps = Math.ceil(Math.hypot(x - px, y - py) / 20) || 1;
            for (let step = 1; step <= steps; step++) {
                spots.push([px + ((x - px) * step) / steps, py + ((y - py) * step) / steps]);
            }
        }
    }
    return spots;
}

function count(spots: readonly Spot[], at: Spot | undefined): number {
    if (!at) return 100;
    let hits = 0;
    for (const [x, y] of spots) {
        if (Math.abs(x - at[0]) < numberRoom[0] && Math.abs(y - at[1]) < numberRoom[1]) hits++;
    }
    return hits;
}
