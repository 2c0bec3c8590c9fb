import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import type { XY } from './elements.ts';
import { letters, lineHeight, markRoom } from './labels.ts';
import type { Palette } from './palette.ts';
import { circle, line, path, rectangle, type Spot, text } from './pen.ts';
import { roundStep } from './rulers.ts';
import type { TurnScene } from './scene-turn.ts';
import { fromBoat, inWater, pathAt, type TurnSheet } from './sheet-turn.ts';
import type { Group } from './svg-file.ts';
import { drawMark } from './svg-marks.ts';

/** The whole turn: her track, the boat with her lines at some moments, and at the one that matters. */
export function drawTrack(
    scene: TurnScene,
    { water, ghosts, frame }: TurnSheet,
    palette: Palette,
    group: Group,
): string {
    if (!water) return '';
    const { ink, soft, wash, accent, paper } = palette;
    const { box, toPage } = water;
    const track = scene.times.map((_, index) => toPage([scene.boat[3 * index]!, scene.boat[3 * index + 1]!]));
    const ghost = ghosts
        .map((index) => drawBoat(scene, index, toPage, { hull: soft, line: wash, paper, width: 2 }))
        .join('');
    const now = drawBoat(scene, frame, toPage, { hull: ink, line: ink, paper, width: 2.5 });
    const times = [...ghosts, frame].map((index) => {
        const concerned = index === frame && scene.trouble;
        return text(clockSpot(scene, index, toPage), print(Math.round(scene.times[index]!), units.s), {
            size: letters.small,
            weight: concerned ? 'bold' : 'regular',
            fill: concerned ? accent : soft,
            anchor: 'middle',
            halo: paper,
        });
    });
    const ring = troubleSpot(scene, frame);
    return (
        rectangle([box.x, box.y], box.width, box.height, { stroke: ink, width: 2.5 }) +
        path(track, { stroke: soft, width: 1.6, dash: '40 9 6 9' }) +
        group('ghosts', 'The boat and her lines in passing.', ghost, 'ghost') +
        group('moment', scene.trouble?.words ?? '', now, 'moment') +
        (ring && scene.trouble ? circle(toPage(ring), 34, { stroke: accent, width: 4, dash: '9 6' }) : '') +
        times.join('') +
        drawBar(water, palette)
    );
}

/** A bar of round length in the chart's lower corner. */
function drawBar({ box, denominator }: NonNullable<TurnSheet['water']>, { ink }: Palette): string {
    const perMetre = 10_000 / denominator;
    const metres = roundStep(box.width / 6 / perMetre);
    const [x, y] = [box.x + box.width / 2 - (metres * perMetre) / 2, box.y + box.height - 24];
    return (
        line([x, y], [x + metres * perMetre, y], { stroke: ink, width: 5 }) +
        text([x + (metres * perMetre) / 2, y - 12], `${metres} m`, {
            size: letters.caption,
            fill: ink,
            anchor: 'middle',
        })
    );
}

interface BoatInk {
    readonly hull: string;
    readonly line: string;
    readonly paper: string;
    readonly width: number;
}

function drawBoat(
    scene: TurnScene,
    frame: number,
    toPage: (point: XY) => Spot,
    { hull, line: towed, paper, width }: BoatInk,
): string {
    const there = (point: XY) => toPage(inWater(scene, frame, point));
    const lines = scene.lines.map((each) => {
        const drawn = pathAt(each, frame).map(toPage);
        return path(drawn, { stroke: towed, width }) + circle(drawn.at(-1)!, 5, { fill: towed });
    });
    return (
        lines.join('') +
        scene.poles
            .map(([foot, tip]) => path([there(foot), there(tip)], { stroke: hull, width: 2.5 }))
            .join('') +
        path(scene.hull.map(there), { stroke: hull, width: 3, fill: paper }, true)
    );
}

/** Ahead of the bow, where no line runs. */
function clockSpot(scene: TurnScene, frame: number, toPage: (point: XY) => Spot): Spot {
    const bow = Math.max(...scene.hull.map(([x]) => x), ...scene.poles.map(([, [x]]) => x));
    const [x, y] = toPage(inWater(scene, frame, [bow, 0]));
    const [sx, sy] = toPage(inWater(scene, frame, [0, 0]));
    const length = Math.max(1, Math.hypot(x - sx, y - sy));
    return [x + ((x - sx) / length) * 44, y + ((y - sy) / length) * 30 + 10];
}

/** Where what matters happens, in the water's axes. */
function troubleSpot(scene: TurnScene, frame: number): XY | undefined {
    const { trouble, nearest } = scene;
    if (!trouble) return undefined;
    if (nearest && (trouble.kind === 'foul' || trouble.kind === 'nearest')) {
        const [a, b] = nearest.points;
        return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    }
    const line = scene.lines.find(({ position }) => position === trouble.positions[0]);
    return line && pathAt(line, frame).at(-1);
}

/** The moment that matters, the bow up, large enough to tell the lines apart. */
export function drawDetail(
    scene: TurnScene,
    { detail, frame, labels }: TurnSheet,
    palette: Palette,
    group: Group,
): string {
    if (!detail) return '';
    const { ink, soft, accent, paper } = palette;
    const { box, toPage } = detail;
    const concerned = scene.trouble?.positions ?? [];
    const seen = (point: XY) => toPage(fromBoat(scene, frame, point));
    const time = print(Math.round(scene.times[frame]! * 10) / 10, units.s);
    const lines = scene.lines.map((line) => {
        const drawn = pathAt(line, frame).map(seen);
        const isConcerned = concerned.includes(line.position);
        const style =
            line.what === 'teaser'
                ? { stroke: soft, width: 2.5 }
                : { stroke: ink, width: isConcerned ? 5 : 3 };
        return group(
            line.id,
            line.name,
            path(drawn, style) +
                circle(drawn.at(-1)!, 9, {
                    fill: line.what === 'teaser' ? paper : ink,
                    stroke: ink,
                    width: 3,
                }),
            'line',
            line.position,
        );
    });
    const spot = troubleSpot(scene, frame);
    return (
        labels.map(({ leader }) => path(leader, { stroke: soft, width: 1.6 })).join('') +
        lines.join('') +
        scene.poles
            .map(([foot, tip]) => path([toPage(foot), toPage(tip)], { stroke: ink, width: 5, cap: 'round' }))
            .join('') +
        path(scene.hull.map(toPage), { stroke: ink, width: 5, fill: paper }, true) +
        (spot && scene.trouble ? circle(seen(spot), 40, { stroke: accent, width: 4, dash: '9 6' }) : '') +
        labels
            .map(({ line, lines: said, box: { x, y } }) => {
                let at = y;
                const drawn = said.map(({ words, size, weight, soft: quiet, marks = [] }, index) => {
                    const height = lineHeight(said[index]!);
                    const middle = at + height / 2;
                    at += height;
                    return (
                        marks
                            .map((mark, i) => drawMark([x + 25 + i * markRoom, middle], mark, palette))
                            .join('') +
                        text([x, middle + size * 0.36], words, { size, weight, fill: quiet ? soft : ink })
                    );
                });
                return group(`note:${line.position}`, '', drawn.join(''), 'note', line.position);
            })
            .join('') +
        text([box.x + 20, box.y + 20], `After ${time}, seen from above`, {
            size: letters.caption,
            fill: soft,
        })
    );
}
