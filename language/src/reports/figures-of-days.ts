import { callsOf } from '../plan/day/calls.ts';
import { changeOver, type Step } from '../plan/day/change-over.ts';
import { conditionWords, hourWords } from '../plan/day/words.ts';
import type { Day } from '../plan/model.ts';
import { printTime } from '../units/time.ts';

/** A day as JSON: which plan when, and what each change-over takes, first to last. */
export function dayJson(day: Day) {
    const { name, title, date, hours, conditions, until } = day;
    return {
        name,
        title,
        ...(date && { date: date.value }),
        hours: hours.map((hour) => ({ from: hourWords(hour), plan: hour.plan.value.name })),
        conditions: conditions.map((each) => ({ when: conditionWords(each), plan: each.plan.value.name })),
        ...(until && { until: printTime(until.value) }),
        changeOvers: callsOf(day).map(({ when, from, to }) => {
            const { steps, remarks } = changeOver(from, to);
            return { when, from: from.name, to: to.name, steps: steps.map(stepJson), remarks };
        }),
    };
}

function stepJson(step: Step) {
    switch (step.kind) {
        case 'all':
            return { kind: step.kind, changes: [changeJson(step.difference)] };
        case 'in':
            return {
                kind: step.kind,
                position: nameOf(step),
                why: step.why,
                ...(step.to && { to: step.to }),
            };
        case 'set':
            return { kind: step.kind, position: nameOf(step), ...(step.from && { from: step.from }) };
        case 'adjust': {
            const [was, is] = [step.was.astern, step.line.astern];
            return {
                kind: step.kind,
                position: nameOf(step),
                changes: step.differences.map(changeJson),
                ...(was.known && is.known && { fartherOut: is.value - was.value }),
            };
        }
    }
}

function changeJson({ path, before, after }: Extract<Step, { kind: 'all' }>['difference']) {
    return {
        property: path.join(' '),
        ...(before !== undefined && { before }),
        ...(after !== undefined && { after }),
    };
}

function nameOf({ line }: Exclude<Step, { kind: 'all' }>): string {
    return line.line.position.name;
}
