import { listed } from '../../plan/wording.ts';
import type { Comparison, OrderChange, PlanChange } from './comparison.ts';
import type { TurnChange } from './turns-apart.ts';

/** What every form of the comparison says in the same words. */

/** `2 plans changed, 1 is new; 3 are as they were.` */
export function summaryOf({ changed, come, gone, same }: Comparison): string {
    const told = [
        count(changed.length, 'changed', 'changed'),
        count(come.length, 'is new', 'are new'),
        count(gone.length, 'is gone', 'are gone'),
    ].filter(Boolean);
    const rest = count(same.length, 'is as it was', 'are as they were');
    if (told.length === 0) return rest ? `No plan changed: ${rest}.` : 'There is no plan to compare.';
    return `Of the plans, ${listed(told)}${rest ? `; ${rest}` : ''}.`;
}

function count(many: number, one: string, several: string): string {
    return many === 0 ? '' : `${many} ${many === 1 ? one : several}`;
}

export function headingOf({ before, after }: PlanChange): string {
    const name = before.name === after.name ? after.name : `${before.name} → ${after.name}`;
    return `${after.title} (${name}, ${after.path})`;
}

export function turnName({ to, what }: TurnChange): string {
    return what === 'clean' ? `Tightest clean turn to ${to}` : `Every lure works, turning to ${to}, down to`;
}

export function orderWords({ of, before, after }: OrderChange): { now: string; was: string } {
    const told = (positions: readonly string[]) =>
        positions.length === 0 ? 'no order is known' : positions.join(', ');
    const name = of === 'setting' ? 'Set in this order' : 'Take in in this order';
    return { now: `${name}: ${told(after)}.`, was: `It was: ${told(before)}.` };
}

export const caution =
    'What is compared is what was written and computed: the skipper, local law and the event’s rules come first.';
