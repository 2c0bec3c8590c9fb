import { type Unit, units } from '../units/unit.ts';
import type { AnalysedPlan } from './figures.ts';
import type { Measure } from './measure.ts';

/** Units that a plan's own numbers are written in. */
export interface SpokenUnits {
    readonly length: Unit;
    readonly load: Unit;
    readonly speed: Unit;
}

/** What whoever wrote a plan counts in, for figures that nobody wrote: the first that says so, or else metric. */
export function spokenUnits({ plan, lines }: Pick<AnalysedPlan, 'plan' | 'lines'>): SpokenUnits {
    const unitOf = (measures: readonly (Measure | undefined)[], usual: Unit) =>
        measures
            .map((measure) => measure?.quantity?.unit)
            .find((unit) => unit?.dimension === usual.dimension) ?? usual;
    const backs = lines.map(({ line }) => (line.back?.kind === 'distance' ? line.back.distance : undefined));
    return {
        length: unitOf([...backs, plan.turn, plan.boat?.value.length], units.m),
        load: unitOf(
            lines.flatMap(({ line, drags }) => [line.clip, ...drags.map((drag) => drag.force)]),
            units.kg,
        ),
        speed: unitOf([plan.speed], units.kn),
    };
}
