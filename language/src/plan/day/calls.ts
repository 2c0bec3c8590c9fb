import type { Day, Spread } from '../model.ts';
import { conditionWords, hourWords } from './words.ts';

/** A change-over that a day asks for, and when. */
export interface Call {
    /** `at 12:30`, `sea over 1.2 m`. */
    readonly when: string;
    readonly from: Spread;
    readonly to: Spread;
}

/** Hours one after the other, then every condition from each spread of an hour; none from a spread to itself. */
export function callsOf({ hours, conditions }: Day): Call[] {
    const byHour = hours.slice(1).map((hour, index): Call => {
        return { when: `at ${hourWords(hour)}`, from: hours[index]!.plan.value, to: hour.plan.value };
    });
    const usual = [...new Map(hours.map(({ plan }) => [plan.value.name, plan.value])).values()];
    const byCondition = conditions.flatMap((condition) =>
        usual.map((from): Call => ({ when: conditionWords(condition), from, to: condition.plan.value })),
    );
    return [...byHour, ...byCondition].filter(({ from, to }) => from.name !== to.name);
}
