import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import { margins, type Rectangle, roundScale } from './chart.ts';
import type { XY } from './elements.ts';
import { type LabelLine, letters, lineHeight, markRoom, place, setWords } from './labels.ts';
import type { Spot } from './pen.ts';
import { axisTo, type Plot, plotIn, plotMargins } from './plot.ts';
import type { TurningLine, TurnScene } from './scene-turn.ts';
import { wrap } from './text-width.ts';

/** A part of the sheet drawn to a scale of its own. */
export interface ScaledPart {
    readonly box: Rectangle;
    readonly denominator: number;
    readonly toPage: (point: XY) => Spot;
}

/** Where a turn goes on paper, tenths of a millimetre. */
export interface TurnSheet {
    readonly width: number;
    readonly heading: readonly string[];
    /** The turn in the water, her first course up the sheet. */
    readonly water?: ScaledPart;
    /** The moment that matters, the bow up; in the boat's axes. */
    readonly detail?: ScaledPart;
    /** Frame of that moment. */
    readonly frame: number;
    /** Frames at which the turn is shown in passing. */
    readonly ghosts: readonly number[];
    readonly labels: readonly TurnLabel[];
    readonly nearest?: Plot;
    readonly clean: Rectangle;
    readonly moments: Rectangle;
    readonly bottom: number;
}

/** A line's name and speed beside the moment that matters. */
export interface TurnLabel {
    readonly line: TurningLine;
    readonly lines: readonly LabelLine[];
    readonly box: Rectangle;
    /** From the label to the lure. */
    readonly leader: readonly Spot[];
}

const headingLine = 52;
const gutter = 60;
const waterShare = 0.55;
const plotHeight = 250;
const below = 330;
const labelWidth = 320;

export function layOutTurn(scene: TurnScene, width: number): TurnSheet {
    const left = margins.page;
    const whole = width - 2 * margins.page;
    const heading = wrap(scene.heading, whole, letters.name, 'bold');
    const top = margins.page + heading.length * headingLine + 18;
    const under = (y: number) => ({
        clean: { x: left, y, width: whole * 0.46, height: below },
        moments: { x: left + whole * 0.5, y, width: whole * 0.5, height: below },
        bottom: y + below,
    });
    if (scene.radius === undefined || scene.times.length === 0) {
        const none = { x: left, y: top, width: whole, height: 0 };
        return { width, heading, frame: 0, ghosts: [], labels: [], clean: none, moments: none, bottom: top };
    }
    const frame = nearestFrame(scene.times, scene.trouble?.time ?? 0);
    const water = waterPart(scene, left, top, whole * waterShare);
    const detail = detailPart(scene, frame, {
        x: left + water.box.width + gutter,
        y: top,
        width: whole - water.box.width - gutter,
        height: Math.max(water.box.height, 1000),
    });
    const row = Math.max(water.box.height, detail.box.height);
    const plotTop = top + row + gutter + plotMargins.top;
    const nearest = scene.nearest && {
        nearest: plotIn(
            {
                x: left + plotMargins.left,
                y: plotTop,
                width: whole - plotMargins.left - 20,
                height: plotHeight,
            },
            {
                ...axisTo(scene.times.at(-1)!, 'seconds from the helm going over', 10),
                to: scene.times.at(-1)!,
            },
            axisTo(
                Math.max(...scene.nearest.distance, 2 * scene.nearest.contact),
                `metres between ${scene.nearest.positions.join(' and ')}, their sway taken off`,
                4,
            ),
        ),
    };
    const after = nearest ? plotTop + plotHeight + plotMargins.below + 30 : top + row + gutter;
    return {
        width,
        heading,
        water,
        detail,
        frame,
        ghosts: ghostsOf(scene, frame),
        labels: labelsOf(scene, frame, detail),
        ...nearest,
        ...under(after),
    };
}

function waterPart({ extent: { from, to } }: TurnScene, x: number, y: number, width: number): ScaledPart {
    const room = 96;
    const [across, along] = [to[1] - from[1], to[0] - from[0]];
    const denominator = roundScale(Math.max(across / (width - 2 * room), along / (1150 - 2 * room)) * 10_000);
    const perMetre = 10_000 / denominator;
    const height = along * perMetre + 2 * room;
    const middle = x + (width - across * perMetre) / 2;
    return {
        box: { x, y, width, height },
        denominator,
        toPage: ([ahead, toPort]) => [
            middle + (to[1] - toPort) * perMetre,
            y + room + (to[0] - ahead) * perMetre,
        ],
    };
}

function detailPart(scene: TurnScene, frame: number, box: Rectangle): ScaledPart {
    const points = [
        ...scene.hull,
        ...scene.poles.flat(),
        ...scene.lines.flatMap((line) => pathAt(line, frame).map((point) => fromBoat(scene, frame, point))),
    ];
    const room = 50;
    const ahead = Math.max(...points.map(([x]) => x));
    const astern = Math.min(...points.map(([x]) => x));
    const port = Math.max(...points.map(([, y]) => y));
    const starboard = Math.min(...points.map(([, y]) => y));
    const wide = box.width - labelWidth - 110;
    const denominator = roundScale(
        Math.max((port - starboard) / wide, (ahead - astern) / (box.height - 2 * room)) * 10_000,
    );
    const perMetre = 10_000 / denominator;
    return {
        box,
        denominator,
        toPage: ([x, y]) => [box.x + 30 + (port - y) * perMetre, box.y + room + (ahead - x) * perMetre],
    };
}

/** A line in a frame, in the water's axes. */
export function pathAt({ path, points }: TurningLine, frame: number): XY[] {
    return Array.from({ length: points }, (_, point): XY => {
        const at = 2 * (frame * points + point);
        return [path[at]!, path[at + 1]!];
    });
}

/** A point of the boat's axes in the water's. */
export function inWater({ boat }: Pick<TurnScene, 'boat'>, frame: number, [ahead, toPort]: XY): XY {
    const [x, y, heading] = boat.slice(3 * frame, 3 * frame + 3) as [number, number, number];
    const [cosine, sine] = [Math.cos(heading), Math.sin(heading)];
    return [x + ahead * cosine - toPort * sine, y + ahead * sine + toPort * cosine];
}

/** A point of the water's axes in the boat's. */
export function fromBoat({ boat }: Pick<TurnScene, 'boat'>, frame: number, point: XY): XY {
    const [x, y, heading] = boat.slice(3 * frame, 3 * frame + 3) as [number, number, number];
    const [cosine, sine] = [Math.cos(heading), Math.sin(heading)];
    const [dx, dy] = [point[0] - x, point[1] - y];
    return [dx * cosine + dy * sine, dy * cosine - dx * sine];
}

export function nearestFrame(times: readonly number[], time: number): number {
    let found = 0;
    for (const [index, at] of times.entries()) {
        if (Math.abs(at - time) < Math.abs(times[found]! - time)) found = index;
    }
    return found;
}

/** Start, quarters of the turn and its end; none so near to the moment that matters that the two would cover each other. */
function ghostsOf({ times, steadyFrom }: TurnScene, frame: number): number[] {
    const apart = steadyFrom / 8;
    const wanted = [0, 0.25, 0.5, 0.75, 1].map((share) => share * steadyFrom);
    return [...wanted, times.at(-1)!]
        .filter((time) => Math.abs(time - times[frame]!) > apart)
        .map((time) => nearestFrame(times, time));
}

function labelsOf(scene: TurnScene, frame: number, { box, toPage }: ScaledPart): TurnLabel[] {
    const concerned = scene.trouble?.positions ?? [];
    const x = box.x + box.width - labelWidth;
    const wanted = scene.lines
        .map((line) => {
            const lure = toPage(fromBoat(scene, frame, pathAt(line, frame).at(-1)!));
            const lines: LabelLine[] = [
                ...setWords(
                    line.title,
                    letters.small,
                    concerned.includes(line.position) ? 'bold' : 'regular',
                    labelWidth,
                    1,
                ),
                ...setWords(
                    `at ${print(line.speed[frame]!, units.kn)}`,
                    letters.caption,
                    'regular',
                    labelWidth,
                    1,
                ).map((each) => ({ ...each, soft: true })),
                ...(line.marks.length > 0
                    ? [
                          {
                              words: '',
                              size: letters.small,
                              weight: 'bold' as const,
                              marks: line.marks.slice(0, Math.floor(labelWidth / markRoom)),
                          },
                      ]
                    : []),
            ];
            return { line, lure, lines, height: lines.reduce((sum, each) => sum + lineHeight(each), 0) };
        })
        .sort((a, b) => a.lure[1] - b.lure[1] || b.lure[0] - a.lure[0]);
    const middles = place(
        wanted.map(({ lure, height }) => ({ at: lure[1] - 18 + height / 2, size: height })),
        box.y,
        box.y + box.height,
        16,
    );
    if (!middles) return [];
    return wanted.map(({ line, lure, lines, height }, index): TurnLabel => {
        const y = middles[index]! - height / 2;
        return {
            line,
            lines,
            box: { x, y, width: labelWidth, height },
            leader: [
                [x - 10, y + 18],
                [x - 50, y + 18],
                [lure[0] + 14, lure[1]],
            ],
        };
    });
}
