import type { AnalysedPlan, LineFigures, Point } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import type { SideElement, XZ } from './elements-side.ts';
import { backPlace, lureShapeOf } from './gear.ts';
import { poleName } from './hull.ts';
import { type Mark, markFindings } from './marks.ts';
import { type Note, noteOf, noteWords, silencesOf } from './notes.ts';
import { type Ruler, roundStep } from './rulers.ts';
import { type Title, titleOfPlan } from './title.ts';
import { drawWavesFromSide } from './water-side.ts';
import { inMetres } from './words.ts';

/** A plan as seen from the starboard side, m; the bow to the right, heights not yet exaggerated. */
export interface SideScene {
    readonly view: 'side';
    readonly plan: string;
    readonly at: Place;
    readonly title: Title;
    readonly extent: { readonly ahead: number; readonly astern: number; readonly up: number };
    readonly rulers: { readonly astern: Ruler; readonly up: Ruler };
    readonly elements: readonly SideElement[];
    readonly notes: readonly Note[];
    readonly marks: readonly Mark[];
    readonly remarks: readonly string[];
    readonly unknown: readonly string[];
}

export function sceneFromSide(analysed: AnalysedPlan, findings: readonly Finding[] = []): SideScene {
    const { plan, lines, poles = [], waves } = analysed;
    const marks = markFindings(findings, plan.name);
    const notes = lines.map((figures) => noteOf(figures, marks));
    const extent = extentOf(analysed);
    const boat = plan.boat;
    const length = boat?.value.length?.si;
    const gear = lines.flatMap((figures, i) => drawGear(figures, notes[i]!));
    return {
        view: 'side',
        plan: plan.name,
        at: plan.origin.place,
        title: titleOfPlan(plan),
        extent,
        rulers: {
            astern: rulerOf(roundStep(extent.astern / 7), -extent.ahead, extent.astern),
            up: rulerOf(roundStep(extent.up / 4), 0, extent.up),
        },
        elements: [
            ...(waves.known ? drawWavesFromSide(waves.value, extent.astern) : []),
            ...(boat && length
                ? [
                      {
                          id: 'hull',
                          role: 'hull' as const,
                          name: `${boat.value.title}: ${inMetres(length)} long; the height of her sides is not to scale.`,
                          at: boat.origin.place,
                          outline: profile(length),
                      },
                  ]
                : []),
            ...poles.map((pole) => ({
                id: `pole:${pole.side}`,
                role: 'pole' as const,
                name: poleName(pole),
                at: pole.origin.place,
                foot: fromSide(pole.foot),
                tip: fromSide(pole.tip),
            })),
            ...gear.filter(({ role }) => role === 'line'),
            ...gear.filter(({ role }) => role !== 'line'),
        ],
        notes,
        marks,
        remarks: remarksOn(analysed),
        unknown: waves.known ? silencesOf(notes) : [waves.reason, ...silencesOf(notes, [waves.reason])],
    };
}

/** The side view as sentences. */
export function sideWords(scene: SideScene): string[] {
    return [
        `${scene.title.title}, seen from the side.`,
        ...scene.elements.filter(({ role }) => role === 'line' || role === 'pole').map(({ name }) => name),
        ...scene.notes.map(noteWords),
        ...scene.remarks,
        ...scene.unknown,
    ];
}

function extentOf({ plan, lines, poles = [], waves }: AnalysedPlan): SideScene['extent'] {
    let ahead = plan.boat?.value.length?.si ?? 0;
    let astern = 10;
    let up = 2;
    for (const { tip } of poles) {
        ahead = Math.max(ahead, tip[0]);
        up = Math.max(up, tip[2]);
    }
    for (const { towPoint, astern: back } of lines) {
        if (towPoint.known) {
            ahead = Math.max(ahead, towPoint.value[0]);
            up = Math.max(up, towPoint.value[2]);
        }
        if (back.known) astern = Math.max(astern, back.value);
    }
    const wave = waves.known ? waves.value.wavelength / 2 : 0;
    return { ahead: ahead + 1.5, astern: astern + Math.max(4, Math.min(wave, 0.2 * astern)), up: up * 1.12 };
}

function rulerOf(step: number, from: number, to: number): Ruler {
    return { step, bar: step / 2, from, to };
}

function drawGear(figures: LineFigures, note: Note): SideElement[] {
    const { line, towPoint, rodTip, entry, astern } = figures;
    if (line.role === 'standby') return [];
    const drawn: SideElement[] = [];
    const common = { position: line.position.name };
    const lure: XZ | undefined = astern.known ? [-astern.value, 0] : undefined;
    if (towPoint.known && lure) {
        const under: XZ = entry?.known ? fromSide(entry.value) : lure;
        const tow = fromSide(towPoint.value);
        const angle = angleOf(towPoint.value, entry?.known ? entry.value : [lure[0], towPoint.value[1], 0]);
        drawn.push({
            id: `line:${line.position.name}`,
            role: 'line',
            name: `${note.title}: line from ${inMetres(tow[1])} up, ${degrees(angle)} at the water.`,
            at: backPlace(line),
            ...common,
            what: line.role,
            rod: rodTip?.known && line.from?.kind !== 'rod tip' ? [fromSide(rodTip.value), tow] : [],
            air: [tow, under],
            water: under[0] - lure[0] > 1e-6 ? [under, lure] : [],
            angle,
        });
    }
    if (towPoint.known) {
        drawn.push({
            id: `tow:${line.position.name}`,
            role: 'tow point',
            name: `${note.title}: towed from ${inMetres(towPoint.value[2])} up.`,
            at: (line.from?.origin ?? line.origin).place,
            ...common,
            point: fromSide(towPoint.value),
        });
    }
    if (lure) {
        const gear = line.lure ?? line.teaser ?? line.bait;
        const length = gear?.value.length?.si;
        drawn.push({
            id: `lure:${line.position.name}`,
            role: 'lure',
            name: noteWords(note),
            at: (gear?.origin ?? line.origin).place,
            ...common,
            shape: lureShapeOf(line),
            ...(length && { length }),
            point: lure,
        });
    }
    return drawn;
}

/** `9°`; tenths where they matter. */
export function degrees(angle: number): string {
    const value = (angle * 180) / Math.PI;
    return `${value < 10 ? Math.round(value * 10) / 10 : Math.round(value)}°`;
}

function angleOf(from: Point, to: Point): number {
    return Math.atan2(from[2] - to[2], Math.hypot(from[0] - to[0], from[1] - to[1]));
}

function remarksOn({ waves }: AnalysedPlan): string[] {
    if (!waves.known) return [];
    const { height, doubt } = waves.value;
    const told = height?.known
        ? `Waves as on the centreline, about ${inMetres(height.value)} high (rough estimate); off it the crests lie further astern.`
        : `Waves as on the centreline; drawn flat: ${height ? height.reason : 'their height is not known.'}`;
    return [told, 'Lines are drawn straight; a line sags a little.', ...(doubt ? [doubt] : [])];
}

function profile(length: number): XZ[] {
    const sheer: XZ[] = [
        [0, 0.08],
        [0.3, 0.085],
        [0.6, 0.11],
        [0.85, 0.145],
        [1, 0.165],
        [0.93, 0.05],
        [0.9, 0],
        [0, 0],
    ];
    return sheer.map(([along, up]) => [along * length, up * length]);
}

function fromSide([x, , z]: Point): XZ {
    return [x, z];
}
