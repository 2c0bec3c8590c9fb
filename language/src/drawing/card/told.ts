import type { Figure } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import { classOf, lineClasses } from '../../units/line-class.ts';
import { print } from '../../units/print.ts';
import { massOf, type Quantity } from '../../units/quantity.ts';
import { type Dimension, type Unit, units, usualUnit } from '../../units/unit.ts';

/** A number as a card tells it: in its author's unit, and in the other system's where that has one. */
export interface Told {
    readonly own: string;
    readonly other?: string;
    /** It leans on an estimate. */
    readonly about?: true;
}

/** `12.3 m (40 ft)`; with a `~` before it where it leans on an estimate. */
export function inWords({ own, other, about }: Told): string {
    return `${about ? estimateMark : ''}${own}${other ? ` (${other})` : ''}`;
}

export const estimateMark = '~';

/**
 * @param value  SI; a load in kg
 * @param like   the quantity whose author's form is kept where it measures the same, or else a unit
 */
export function told(value: number, like: Quantity | Unit): Told {
    const { beside } = 'unit' in like ? like.unit : like;
    return { own: print(value, like), ...(beside && { other: print(value, units[beside]) }) };
}

/** A length of the plan or of its figures, m. */
export function toldLength(metres: number, like: Quantity | undefined, usual: Unit = units.m): Told {
    return told(metres, formOf(like, 'length') ?? usual);
}

/**
 * A load, N, as the scale shows it. Every load of a line is told in the unit of its class: pounds beside kilograms in
 * one row would be read for each other.
 */
export function toldLoad(
    newtons: number,
    like: Quantity | undefined,
    lineClass?: Measure,
    usual: Unit = usualUnit.load,
): Told {
    const own = formOf(like, 'load');
    const unit = formOf(lineClass?.quantity, 'load')?.unit ?? own?.unit ?? usual;
    return told(massOf(newtons), own?.unit === unit ? own : unit);
}

/** A figure, marked where it leans on an estimate; nothing where it is silent. */
export function toldFigure<T>(figure: Figure<T>, tell: (value: T) => Told): Told | undefined {
    if (!figure.known) return undefined;
    return { ...tell(figure.value), ...(figure.standing === 'estimated' && { about: true }) };
}

/** From the table of classes and never converted: 30 lb is 15 kg, in pounds first where it was said in pounds. */
export function toldClass({ si, quantity }: Measure): Told {
    const named = lineClasses.find(({ kg }) => kg === si) ?? (quantity && classOf(quantity));
    if (!named) return told(si, formOf(quantity, 'load') ?? units.kg);
    const [kg, lb] = [`${named.kg} kg`, `${named.customaryLb} lb`];
    return quantity?.unit.symbol === 'lb' ? { own: lb, other: kg } : { own: kg, other: lb };
}

/** What a drag was written as may be a share of its class: then a load is told as the plan tells others. */
function formOf(quantity: Quantity | undefined, dimension: Dimension): Quantity | undefined {
    return quantity?.unit.dimension === dimension ? quantity : undefined;
}
