import type { LineFigures, Point } from '../plan/figures.ts';
import type { Boat, SpreadLine } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';
import type {
    DrawnLure,
    Fan,
    LureShape,
    SceneElement,
    Standby,
    TowedLine,
    TowPoint,
    XY,
} from './elements.ts';
import type { Note } from './notes.ts';
import { noteWords } from './notes.ts';
import { fromWords, inMetres, sideways } from './words.ts';

/** A line with what it is towed from and what it tows, as far as their places are known. */
export function drawGear(figures: LineFigures, note: Note, boat: Boat | undefined): SceneElement[] {
    if (figures.line.role === 'standby') return [drawStandby(figures, note, boat)];
    const { towPoint } = figures;
    const lure =
        note.point && drawLure(figures.line, note, note.point, towPoint.known ? towPoint.value : undefined);
    if (!towPoint.known) return lure ? [lure] : [];
    const drawn: SceneElement[] = [];
    if (note.point) {
        const fan = drawFan(figures, note.title, towPoint.value, note.point);
        if (fan) drawn.push(fan);
        drawn.push(drawLine(figures, note.title, towPoint.value, note.point));
    }
    drawn.push(drawTowPoint(figures.line, note.title, towPoint.value));
    if (lure) drawn.push(lure);
    return drawn;
}

function drawTowPoint(line: SpreadLine, title: string, [x, y, z]: Point): TowPoint {
    const kind = line.from?.kind ?? 'point';
    return {
        id: `tow:${line.position.name}`,
        role: 'tow point',
        name: `${title}: towed from ${fromWords(line.from) ?? 'a point'}, ${inMetres(z)} up, ${sideways(y)}.`,
        at: line.from?.origin.place ?? line.origin.place,
        position: line.position.name,
        kind,
        point: [x, y],
    };
}

function drawLine(figures: LineFigures, title: string, [x, y]: Point, lure: XY): TowedLine {
    const { line, rodTip, entry } = figures;
    const tow: XY = [x, y];
    const under: XY = entry?.known ? [entry.value[0], entry.value[1]] : lure;
    const submerged = Math.hypot(under[0] - lure[0], under[1] - lure[1]) > 1e-6;
    return {
        id: `line:${line.position.name}`,
        role: 'line',
        name: `${title}: line${submerged ? `, in the water for its last ${inMetres(distance(under, lure))}` : ''}.`,
        at: backPlace(line),
        position: line.position.name,
        what: line.role === 'teaser' ? 'teaser' : 'fished',
        rod: rodTip?.known && line.from?.kind !== 'rod tip' ? [[rodTip.value[0], rodTip.value[1]], tow] : [],
        air: [tow, under],
        water: submerged ? [under, lure] : [],
    };
}

function drawLure(line: SpreadLine, note: Note, point: XY, towPoint: Point | undefined): DrawnLure {
    const gear = line.lure ?? line.teaser ?? line.bait;
    const length = gear?.value.length?.si;
    return {
        id: `lure:${line.position.name}`,
        role: 'lure',
        name: noteWords(note),
        at: (gear?.origin ?? line.origin).place,
        position: line.position.name,
        shape: lureShapeOf(line),
        ...(length && { length }),
        point,
        heading: towPoint ? Math.atan2(towPoint[1] - point[1], towPoint[0] - point[0]) : 0,
    };
}

export function lureShapeOf({ lure, teaser, bait, position }: SpreadLine): LureShape {
    if (teaser) return teaserShapes.find((shape) => shape === position.place) ?? 'teaser';
    if (bait) return 'bait';
    return lure?.value.kind?.value ?? 'unknown';
}

const teaserShapes: readonly LureShape[] = ['bridge teaser', 'squid chain', 'dredge'];

/** The line's segment turned about the vertical through its tow point by the sway, to either side. */
function drawFan({ line, sway }: LineFigures, title: string, tow: Point, lure: XY): Fan | undefined {
    if (!sway.known || sway.value <= 0 || sway.value >= Math.PI / 2) return undefined;
    const turned = (angle: number): XY => {
        const [x, y] = [lure[0] - tow[0], lure[1] - tow[1]];
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
        return [tow[0] + x * cos - y * sin, tow[1] + x * sin + y * cos];
    };
    return {
        id: `fan:${line.position.name}`,
        role: 'fan',
        name: `${title}: wanders ${inMetres(distance(tow, lure) * Math.sin(sway.value))} to either side.`,
        at: line.origin.place,
        position: line.position.name,
        outline: [[tow[0], tow[1]], turned(sway.value), lure, turned(-sway.value)],
    };
}

/** At its holder where the boat has one for it, else at its tow point, else in the cockpit. */
function drawStandby({ line, towPoint }: LineFigures, note: Note, boat: Boat | undefined): Standby {
    const holder = boat?.holders.find(({ position }) => position.name === line.position.name);
    const sign = { port: 1, starboard: -1, centre: 0 }[line.position.side];
    const out = holder?.out?.si ?? 0.25 * (boat?.beam?.si ?? 2);
    const ahead = holder?.ahead?.si ?? 0.12 * (boat?.length?.si ?? 8);
    return {
        id: `standby:${line.position.name}`,
        role: 'standby',
        name: noteWords(note),
        at: line.origin.place,
        position: line.position.name,
        point: !holder && towPoint.known ? [towPoint.value[0], towPoint.value[1]] : [ahead, sign * out],
    };
}

/** Where the text says how far back: the distance or the wave, else the position. */
export function backPlace({ back, origin }: SpreadLine): Place {
    if (!back) return origin.place;
    return (back.kind === 'distance' ? back.distance : back.wave).origin.place;
}

type Planar = readonly [x: number, y: number, ...rest: number[]];

function distance(a: Planar, b: Planar): number {
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
