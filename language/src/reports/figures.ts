import type {
    AnalysedPlan,
    DragFigure,
    Figure,
    LineFigures,
    PairFigures,
    PoleFigures,
} from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import { printQuantity } from '../units/print.ts';

/** Raised when a field changes its meaning or goes; new fields may appear without. */
export const figuresVersion = 1;

export interface PlansOfFile {
    readonly path: string;
    readonly plans: readonly AnalysedPlan[];
}

/**
 * Every computed number of these plans as JSON, described by `figures.schema.json` beside this file: SI units,
 * the boat frame (x forward from the transom, y to port, z up from still water), each with its standing, or
 * the reason why there is none.
 */
export function figuresJson(files: readonly PlansOfFile[], version: string): string {
    const report = {
        format: 'layback-figures',
        version: figuresVersion,
        tool: { name: 'layback', version },
        plans: files.flatMap(({ path, plans }) => plans.map((plan) => ({ path, ...planJson(plan) }))),
    };
    return `${JSON.stringify(report, undefined, 2)}\n`;
}

function planJson({ plan, waves, wash, poles, lines, pairs, swayAsked, contact }: AnalysedPlan) {
    return {
        name: plan.name,
        title: plan.title,
        like: plan.like,
        swayAsked: {
            known: true,
            value: swayAsked.value,
            unit: 'rad',
            standing: swayAsked.standing,
            leaning: [],
        },
        contact: { known: true, value: contact, unit: 'm', standing: 'estimated', leaning: [] },
        waves: figure(waves, (value) => ({
            ...value,
            ...(value.height && { height: scalar(value.height, 'm') }),
        })),
        ...(wash && { wash: figure(wash, (value) => value) }),
        poles: (poles ?? []).map(poleJson),
        lines: lines.map(lineJson),
        pairs: pairs.map(pairJson),
    };
}

function poleJson({ side, foot, tip, halyards }: PoleFigures) {
    return { side, foot, tip, halyards };
}

function lineJson(figures: LineFigures) {
    const { line } = figures;
    const tow = line.lure ?? line.teaser ?? line.bait;
    return {
        position: line.position.name,
        role: line.role,
        ...(line.outfit && { outfit: line.outfit.value.name }),
        ...(tow && { tows: tow.value.name }),
        towPoint: scalar(figures.towPoint, 'm'),
        ...(figures.rodTip && { rodTip: scalar(figures.rodTip, 'm') }),
        ...(figures.entry && { entry: scalar(figures.entry, 'm') }),
        astern: scalar(figures.astern, 'm'),
        lateral: scalar(figures.lateral, 'm'),
        wave: figure(figures.wave, (value) => value),
        inWash: figure(figures.inWash, (value) => value),
        pull: scalar(figures.pull, 'N'),
        sway: scalar(figures.sway, 'rad'),
        drags: figures.drags.map(dragJson),
    };
}

function dragJson({ stage, force, share, spool }: DragFigure) {
    return {
        stage,
        force: { known: true, ...measureJson(force, 'N'), leaning: [] },
        ...(share !== undefined && { share }),
        spool,
    };
}

function pairJson(pair: PairFigures) {
    return {
        a: pair.a.line.position.name,
        b: pair.b.line.position.name,
        neighbours: pair.neighbours,
        lateralGap: scalar(pair.lateralGap, 'm'),
        stagger: scalar(pair.stagger, 'm'),
        clearance: scalar(pair.clearance, 'm'),
        swayMargin: scalar(pair.swayMargin, 'rad'),
        swayAtLure: scalar(pair.swayAtLure, 'm'),
        ...(pair.cure && { cure: pair.cure }),
    };
}

function measureJson(measure: Measure, unit: string) {
    return {
        value: measure.si,
        unit,
        ...(measure.quantity && { written: printQuantity(measure.quantity) }),
        standing: measure.standing,
    };
}

function scalar<T>(value: Figure<T>, unit: string) {
    // JSON has no infinity: where nothing up to the largest that is judged does it, the value is null.
    return figure(value, (number) => (number === Number.POSITIVE_INFINITY ? null : number), unit);
}

function figure<T>(value: Figure<T>, shown: (value: T) => unknown, unit?: string) {
    if (!value.known) return { known: false, reason: value.reason };
    return {
        known: true,
        value: shown(value.value),
        ...(unit !== undefined && { unit }),
        standing: value.standing,
        leaning: value.leaning,
    };
}
