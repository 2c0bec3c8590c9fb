import { inFull } from '../plan/analyse/in-full.ts';
import type { AnalysedPlan, LineFigures } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import type { Day } from '../plan/model.ts';
import { printQuantity } from '../units/print.ts';
import { dayJson } from './figures-of-days.ts';

/** Raised when a field changes its meaning or goes; new fields may appear without. */
export const figuresVersion = 1;

export interface PlansOfFile {
    readonly path: string;
    readonly plans: readonly AnalysedPlan[];
    readonly days?: readonly Day[];
}

/**
 * Every computed number of these plans as JSON, described by `figures.schema.json` beside this file: SI units,
 * the boat frame (x forward from the transom, y to port, z up from still water), each with its standing, or
 * the reason why there is none.
 */
export function figuresJson(files: readonly PlansOfFile[], version: string): string {
    const days = files.flatMap(({ path, days = [] }) => days.map((day) => ({ path, ...dayJson(day) })));
    const report = {
        format: 'layback-figures',
        version: figuresVersion,
        tool: { name: 'layback', version },
        plans: files.flatMap(({ path, plans }) => plans.map((plan) => ({ path, ...planJson(whole(plan)) }))),
        ...(days.length > 0 && { days }),
    };
    return `${JSON.stringify(report, undefined, 2)}\n`;
}

/** With what is computed only to be shown. */
export function whole(plan: AnalysedPlan): AnalysedPlan {
    return plan.clearings ? plan : inFull(plan);
}

/** Whatever is computed of a plan is shown: a figure that the analysis gains appears here by itself. */
function planJson({ plan, lines, ...figures }: AnalysedPlan) {
    return {
        name: plan.name,
        title: plan.title,
        like: plan.like,
        ...(shown(figures) as object),
        lines: lines.map(lineJson),
    };
}

function lineJson({ line, ...figures }: LineFigures) {
    const tow = line.lure ?? line.teaser ?? line.bait;
    return {
        position: line.position.name,
        role: line.role,
        ...(line.outfit && { outfit: line.outfit.value.name }),
        ...(tow && { tows: tow.value.name }),
        ...(shown(figures) as object),
    };
}

/** Numbers without what led to them: places in the text are left out, a line is called by its position. */
function shown(value: unknown): unknown {
    // JSON has no infinity: where nothing up to the largest that is judged does it, the number is null.
    if (value === Number.POSITIVE_INFINITY) return null;
    if (typeof value !== 'object' || value === null) return value;
    if (Array.isArray(value)) return value.map(shown);
    if (isLine(value)) return value.line.position.name;
    if (isMeasure(value)) return measureJson(value);
    return Object.fromEntries(
        Object.entries(value)
            .filter(([name, each]) => name !== 'origin' && each !== undefined)
            .map(([name, each]) => [name, shown(each)]),
    );
}

function isLine(value: object): value is LineFigures {
    return 'line' in value && 'towPoint' in value;
}

function isMeasure(value: object): value is Measure {
    return 'si' in value && 'origin' in value;
}

function measureJson({ si, quantity, standing }: Measure) {
    return { value: si, ...(quantity && { written: printQuantity(quantity) }), standing };
}
