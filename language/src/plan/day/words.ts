import { printQuantity } from '../../units/print.ts';
import { printTime } from '../../units/time.ts';
import type { Condition, Day, Hour } from '../model.ts';

/** `sea over 1.5 m`, `dusk`, as its author wrote it. */
export function conditionWords({ when }: Condition): string {
    if (when.kind === 'light') return `light: ${when.light.value}`;
    const { kind, side, bound } = when;
    return `${kind} ${side} ${bound.quantity ? printQuantity(bound.quantity) : bound.si}`;
}

export function hourWords({ from }: Hour): string {
    return printTime(from.value);
}

/** `Saturday, 2026-02-14`. */
export function dayTitle({ title, date }: Day): string {
    return date ? `${title}, ${date.value}` : title;
}
