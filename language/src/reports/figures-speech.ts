import { USUAL_SWAY, WIDEST_SWAY } from '../physics/sway.ts';
import type { AnalysedPlan, Figure, LineFigures, Range } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import { print } from '../units/print.ts';
import { type Unit, units } from '../units/unit.ts';
import type { Column } from './table.ts';

/** Units that a plan's own numbers are written in. */
export interface Speech {
    readonly length: Unit;
    readonly load: Unit;
    readonly speed: Unit;
}

export type Heading = Column;

/** A table with a line above it. */
export interface Rows {
    readonly title: string;
    readonly columns: readonly Heading[];
    readonly rows: readonly (readonly string[])[];
}

export const estimateMark = '~';

/** Before what was read on a scale and not computed. */
export const measuredMark = '=';

export function speechOf({ plan, lines }: AnalysedPlan): Speech {
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

/** Nothing where the figure is silent; a mark before it where it leans on an estimate. */
export function shown<T>(figure: Figure<T>, text: (value: T) => string): string {
    if (!figure.known) return '';
    const mark = { estimated: estimateMark, measured: measuredMark, computed: '', written: '' }[
        figure.standing
    ];
    return `${mark}${text(figure.value)}`;
}

/** `~1.8 kg (1.3 kg to 2.4 kg)`: in brackets what an estimate leaves open, where it reads as more than one figure. */
export function within(text: string, range: Range | undefined, told: (value: number) => string): string {
    if (!range) return text;
    const [low, high] = [told(range.low), told(range.high)];
    return low === high ? text : `${text} (${low} to ${high})`;
}

export function nameOf({ line }: LineFigures): string {
    return line.position.name;
}

/** The sway at which two lines touch, and what that is at the longer one's lure: `7.2 deg, 2.9 m`. */
export function marginWords(
    pair: {
        readonly a: LineFigures;
        readonly b: LineFigures;
        readonly swayMargin: number;
        readonly swayAtLure: number;
    },
    { length }: Pick<Speech, 'length'>,
): string {
    if (Number.isFinite(pair.swayMargin))
        return `${print(pair.swayMargin, units.deg)}, ${print(pair.swayAtLure, length)}`;
    // As far as it is looked for: to the cap, or on a short line to the widest angle.
    const capped = [pair.a, pair.b].every(
        ({ astern, towPoint }) =>
            astern.known &&
            towPoint.known &&
            (astern.value + towPoint.value[0]) * Math.sin(WIDEST_SWAY) >= USUAL_SWAY.cap,
    );
    return `not within ${capped ? print(USUAL_SWAY.cap, length) : print(WIDEST_SWAY, units.deg)}`;
}
