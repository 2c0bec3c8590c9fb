import type { Rectangle } from '../../language/src/drawing/chart.ts';
import type { XY } from '../../language/src/drawing/elements.ts';
import type { Palette } from '../../language/src/drawing/palette.ts';
import { circle, line, path, rectangle, type Spot, short, text } from '../../language/src/drawing/pen.ts';
import { roundStep } from '../../language/src/drawing/rulers.ts';
import { inWater, nearestFrame, pathAt } from '../../language/src/drawing/sheet-turn.ts';
import { grouper, svgFile } from '../../language/src/drawing/svg-file.ts';
import { wrap } from '../../language/src/drawing/text-width.ts';
import type { TurnScene } from '../../language/src/editor/protocol.ts';
import type { Size } from './camera.ts';

/** Lettering that can be read on a screen, tenths of a millimetre. */
const letter = 38;

/** The water that a turn is made in, her first course up; what moves is drawn at its first frame. */
export function drawWater(
    scene: TurnScene,
    palette: Palette,
    size: Size,
): { readonly svg: string; readonly toPage: (point: XY) => Spot } {
    const { ink, soft, wash, accent, paper } = palette;
    const { box, denominator, toPage } = waterIn(scene, size);
    const group = grouper(true);
    const trouble = nearestFrame(scene.times, scene.trouble?.time ?? 0);
    const track = scene.times.map((_, frame) => toPage(inWater(scene, frame, [0, 0])));
    const spot = troubleSpot(scene, trouble);
    const [ringX, ringY] = spot ? toPage(spot) : [0, 0];
    const ghost =
        scene.lines
            .map((each) => path(pathAt(each, trouble).map(toPage), { stroke: wash, width: 3 }))
            .join('') +
        path(
            scene.hull.map((point) => toPage(inWater(scene, trouble, point))),
            { stroke: wash, width: 3, dash: '12 8' },
            true,
        );
    const [startX, startY] = toPage([0, 0]);
    const body = [
        rectangle([0, 0], size.width, size.height, { fill: paper }),
        path(track, { stroke: soft, width: 3, dash: '40 9 6 9' }),
        line([startX - 24, startY], [startX + 24, startY], { stroke: soft, width: 3 }),
        text([startX - 34, startY + 12], 'helm over', {
            size: letter,
            fill: soft,
            anchor: 'end',
            halo: paper,
        }),
        scene.trouble
            ? ghost +
              circle([ringX, ringY], 44, { stroke: accent, width: 6, dash: '12 8' }) +
              text([ringX + 58, ringY - 34], scene.trouble.grave ? '▲ trouble' : 'nearest', {
                  size: letter,
                  weight: 'bold',
                  fill: accent,
                  halo: paper,
              })
            : '',
        ...scene.lines.map((each) => {
            const isNear = scene.nearest?.positions.includes(each.position) ?? false;
            const style = { stroke: each.what === 'teaser' ? soft : ink, width: isNear ? 7 : 3.5 };
            return group(
                each.id,
                each.name,
                path(pathAt(each, 0).map(toPage), style) +
                    circle([0, 0], isNear ? 13 : 9, { fill: style.stroke }),
                'towed',
                each.position,
            );
        }),
        group(
            'boat',
            'The boat.',
            path(
                scene.hull.map((point) => toPage(inWater(scene, 0, point))),
                {
                    stroke: ink,
                    width: 5,
                    fill: paper,
                },
                true,
            ),
            'hull',
        ),
        ...(scene.nearest?.positions ?? []).map((position) =>
            group(
                `name:${position}`,
                '',
                text([20, -12], position, { size: letter, weight: 'bold', fill: ink, halo: paper }),
                'name',
            ),
        ),
        drawBar(box, denominator, palette),
    ];
    return {
        svg: svgFile(size, [scene.heading], body, {
            live: true,
            facts: { plan: scene.plan, view: 'turn', side: scene.side },
        }),
        toPage,
    };
}

/** In the water's place where there is no turn to be seen: why. */
export function drawNoTurn(
    { plan, heading, unknown }: TurnScene,
    { paper, ink }: Palette,
    size: Size,
): string {
    const said = [heading, ...unknown].flatMap((words) => wrap(words, size.width - 120, letter));
    const lines = said.map((words, index) =>
        text([60, 100 + index * letter * 1.4], words, { size: letter, fill: ink }),
    );
    const body = [rectangle([0, 0], size.width, size.height, { fill: paper }), ...lines];
    return svgFile(size, [heading], body, { live: true, facts: { plan, view: 'turn' } });
}

/** Puts what moves where it is between two frames. */
export function moveTo(
    svg: SVGSVGElement,
    scene: TurnScene,
    time: number,
    toPage: (point: XY) => Spot,
): void {
    const now = frameAt(scene, time);
    const part = (id: string) => svg.querySelector<SVGGElement>(`g[data-id="${CSS.escape(id)}"]`);
    for (const [index, each] of now.lines.entries()) {
        const spots = pathAt(each, 0).map(toPage);
        const drawn = part(each.id);
        const lure = spots.at(-1)!;
        drawn?.querySelector('path')?.setAttribute('d', lay(spots));
        const dot = drawn?.querySelector('circle');
        dot?.setAttribute('cx', short(lure[0]));
        dot?.setAttribute('cy', short(lure[1]));
        part(`name:${scene.lines[index]!.position}`)?.setAttribute(
            'transform',
            `translate(${short(lure[0])} ${short(lure[1])})`,
        );
    }
    const hull = scene.hull.map((point) => toPage(inWater(now, 0, point)));
    part('boat')
        ?.querySelector('path')
        ?.setAttribute('d', `${lay(hull)}Z`);
}

/** Between which two frames a moment lies: the later one, and how much of the way to it is gone. */
function framesAround(
    times: readonly number[],
    time: number,
): { readonly after: number; readonly share: number } {
    const after = Math.max(
        1,
        times.findIndex((each) => each >= time),
    );
    const [from, to] = [times[after - 1]!, times[after] ?? times[after - 1]!];
    return { after, share: to > from ? Math.min(1, Math.max(0, (time - from) / (to - from))) : 0 };
}

/** The scene at one moment, as its only frame. */
function frameAt(scene: TurnScene, time: number): Pick<TurnScene, 'boat' | 'lines'> {
    const { after, share } = framesAround(scene.times, time);
    const between = (numbers: readonly number[], width: number) =>
        Array.from({ length: width }, (_, index) => {
            const [a, b] = [numbers[(after - 1) * width + index]!, numbers[after * width + index]!];
            return a + (b - a) * share;
        });
    return {
        boat: between(scene.boat, 3),
        lines: scene.lines.map((each) => ({ ...each, path: between(each.path, 2 * each.points) })),
    };
}

/** Least distance of the closest pair at a moment, m. */
export function distanceAt({ times, nearest }: TurnScene, time: number): number | undefined {
    if (!nearest) return undefined;
    const { after, share } = framesAround(times, time);
    const [a, b] = [nearest.distance[after - 1]!, nearest.distance[after] ?? nearest.distance[after - 1]!];
    return a + (b - a) * share;
}

function lay(spots: readonly Spot[]): string {
    return spots.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('');
}

/** Where what matters happens, in the water's axes. */
function troubleSpot({ trouble, nearest, lines }: TurnScene, frame: number): XY | undefined {
    if (!trouble) return undefined;
    if (nearest && (trouble.kind === 'foul' || trouble.kind === 'nearest')) {
        const [a, b] = nearest.points;
        return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    }
    const concerned = lines.find(({ position }) => position === trouble.positions[0]);
    return concerned && pathAt(concerned, frame).at(-1);
}

function waterIn({ extent: { from, to } }: TurnScene, { width, height }: Size) {
    const room = 100;
    const [across, along] = [Math.max(1, to[1] - from[1]), Math.max(1, to[0] - from[0])];
    // Nobody measures on a screen: a bar says how long a metre is, and every bit of room is used.
    const denominator = Math.max(across / (width - 2 * room), along / (height - 2 * room)) * 10_000;
    const perMetre = 10_000 / denominator;
    const left = (width - across * perMetre) / 2;
    const top = (height - along * perMetre) / 2;
    const box: Rectangle = { x: 0, y: 0, width, height };
    return {
        box,
        denominator,
        toPage: ([ahead, toPort]: XY): Spot => [
            left + (to[1] - toPort) * perMetre,
            top + (to[0] - ahead) * perMetre,
        ],
    };
}

function drawBar({ width, height }: Rectangle, denominator: number, { ink, paper }: Palette): string {
    const perMetre = 10_000 / denominator;
    const metres = roundStep(width / 5 / perMetre);
    const [x, y] = [width - 40 - metres * perMetre, height - 30];
    return (
        line([x, y], [x + metres * perMetre, y], { stroke: ink, width: 6 }) +
        text([x + (metres * perMetre) / 2, y - 14], `${metres} m`, {
            size: letter,
            fill: ink,
            anchor: 'middle',
            halo: paper,
        })
    );
}
