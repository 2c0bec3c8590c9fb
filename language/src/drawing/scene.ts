import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import type { SceneElement } from './elements.ts';
import { type Extent, extentOf } from './extent.ts';
import { drawGear } from './gear.ts';
import { drawHull, drawPole } from './hull.ts';
import { type Mark, markFindings } from './marks.ts';
import { type Note, noteOf, noteWords, silencesOf } from './notes.ts';
import { type Rulers, rulersOf } from './rulers.ts';
import { type Title, titleOfPlan } from './title.ts';
import { drawWater } from './water.ts';
import { inMetres } from './words.ts';

/**
 * A plan as seen from above, before anybody chose paper, ink or pixels: metres in the boat's frame (x ahead of
 * the transom, y to port). Every number in it is the analysis's.
 */
export interface Scene {
    readonly view: 'above';
    /** The definition that it draws. */
    readonly plan: string;
    readonly at: Place;
    readonly title: Title;
    readonly extent: Extent;
    readonly rulers: Rulers;
    /** In the order of painting: the water first, the lures last. */
    readonly elements: readonly SceneElement[];
    /** One for each line of the plan, in its order. */
    readonly notes: readonly Note[];
    /** Findings, numbered, gravest first. */
    readonly marks: readonly Mark[];
    /** What a reader must know of the figures: sentences. */
    readonly remarks: readonly string[];
    /** What is not drawn, and why: sentences. */
    readonly unknown: readonly string[];
}

export function sceneFromAbove(analysed: AnalysedPlan, findings: readonly Finding[] = []): Scene {
    const { plan, lines, poles = [] } = analysed;
    const boat = plan.boat?.value;
    const marks = markFindings(findings, plan.name);
    const notes = lines.map((figures) => noteOf(figures, marks));
    const extent = extentOf(analysed);
    const gear = lines.flatMap((figures, i) => drawGear(figures, notes[i]!, boat));
    const elements: SceneElement[] = [
        ...drawWater(analysed, extent),
        drawHull(plan.boat),
        ...poles.map(drawPole),
        ...gear,
    ];
    return {
        view: 'above',
        plan: plan.name,
        at: plan.origin.place,
        title: titleOfPlan(plan),
        extent,
        rulers: rulersOf(extent),
        elements: elements.sort((a, b) => layer[a.role] - layer[b.role]),
        notes,
        marks,
        remarks: remarksOn(analysed),
        unknown: unknownOf(analysed, notes, elements),
    };
}

const layer: Readonly<Record<SceneElement['role'], number>> = {
    face: 0,
    wash: 1,
    crest: 2,
    wedge: 3,
    hull: 4,
    transom: 4,
    fan: 5,
    pole: 6,
    line: 7,
    'tow point': 8,
    standby: 9,
    lure: 10,
};

/** The scene as sentences: its title, every element that is not water, the findings, what is unknown. */
export function sceneWords(scene: Scene): string[] {
    return [
        `${scene.title.title}, seen from above.`,
        ...scene.notes.map(noteWords),
        ...scene.marks.map(({ number, severity, message }) => `Finding ${number}, ${severity}: ${message}`),
        ...scene.remarks,
        ...scene.unknown,
    ];
}

function remarksOn({ plan, waves, lines }: AnalysedPlan): string[] {
    const remarks: string[] = [];
    if (waves.known) {
        const { wavelength, speed, firstCrest, firstCrestMeasured, doubt } = waves.value;
        const kn = print(speed, plan.speed?.quantity ?? units.kn);
        remarks.push(
            `Waves ${inMetres(wavelength)} apart at ${kn}, the first crest ${inMetres(firstCrest)} astern ` +
                `(${firstCrestMeasured ? 'measured' : 'an estimate: measure it'}).`,
        );
        if (doubt) remarks.push(doubt);
    }
    const leaning = new Set(
        [waves, ...lines.map(({ wave }) => wave)].flatMap((f) => (f.known ? f.leaning : [])),
    );
    if (leaning.size > 0) remarks.push(`Estimates that figures lean on: ${[...leaning].join(' ')}`);
    return remarks;
}

function unknownOf(
    analysed: AnalysedPlan,
    notes: readonly Note[],
    elements: readonly SceneElement[],
): string[] {
    const { waves, wash, plan } = analysed;
    const hull = elements.find(({ role }) => role === 'transom');
    const told = [...(waves.known ? [] : [waves.reason]), ...(wash && !wash.known ? [wash.reason] : [])];
    return [
        ...(hull ? [hull.name] : []),
        ...told,
        ...silencesOf(notes, told),
        ...(plan.lines.length === 0 ? ['The plan has no lines yet.'] : []),
    ];
}
