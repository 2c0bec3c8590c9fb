import { USUAL_SWAY, WIDEST_SWAY } from '../physics/sway.ts';
import type { Figure, LineFigures } from '../plan/figures.ts';
import { type SpokenUnits, spokenUnits } from '../plan/spoken-units.ts';
import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import type { Column } from './table.ts';

export type Speech = SpokenUnits;

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

export const speechOf = spokenUnits;

/** Nothing where the figure is silent; a mark before it where it leans on an estimate. */
export function shown<T>(figure: Figure<T>, text: (value: T) => string): string {
    if (!figure.known) return '';
    const mark = { estimated: estimateMark, measured: measuredMark, computed: '', written: '' }[
        figure.standing
    ];
    return `${mark}${text(figure.value)}`;
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
    estimated: boolean,
): string {
    const mark = estimated ? estimateMark : '';
    if (Number.isFinite(pair.swayMargin))
        return `${mark}${print(pair.swayMargin, units.deg)}, ${mark}${print(pair.swayAtLure, length)}`;
    // As far as it is looked for: to the cap, or on a short line to the widest angle.
    const capped = [pair.a, pair.b].every(
        ({ astern, towPoint }) =>
            astern.known &&
            towPoint.known &&
            (astern.value + towPoint.value[0]) * Math.sin(WIDEST_SWAY) >= USUAL_SWAY.cap,
    );
    return `not within ${capped ? `${mark}${print(USUAL_SWAY.cap, length)}` : print(WIDEST_SWAY, units.deg)}`;
}
