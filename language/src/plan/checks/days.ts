import { nearest } from '../../units/nearest.ts';
import { printQuantity } from '../../units/print.ts';
import { printTime, secondsOf } from '../../units/time.ts';
import { conditionWords, hourWords } from '../day/words.ts';
import type { Finding } from '../finding.ts';
import type { Measure } from '../measure.ts';
import type { Condition, Day, Spread } from '../model.ts';
import type { Said } from '../origin.ts';
import { lights } from '../vocabulary/day.ts';
import { shorten } from '../wording.ts';
import { instead, problem } from './problem.ts';

/** Entries of a day that contradict one another, or the spread that they name. */
export function checkDay(day: Day): Finding[] {
    return [
        ...day.conditions.flatMap((condition, index) => [
            ...unreached(condition, day.conditions.slice(0, index)),
            ...unlikeItsPlan(condition),
            ...unknownLight(condition),
        ]),
        ...beyondTheEnd(day),
        ...outsideTheEvent(day),
        ...otherBoats(day),
    ];
}

/** Read from above, the first that holds is fished: one below a wider one never is. */
function unreached(condition: Condition, above: readonly Condition[]): Finding[] {
    const wider = above.find((other) => covers(other, condition));
    if (!wider) return [];
    return [
        problem('value', condition.origin.place, {
            severity: 'warning',
            what: `\`${shorten(condition.plan.value.name)}\` is never fished at ${conditionWords(condition)}: \`${shorten(wider.plan.value.name)}\` is already fished at ${conditionWords(wider)}.`,
            why: 'A day is read from above, and the first that holds counts.',
            remedy: 'Put this line above the other one, or take it out.',
            related: [{ at: wider.origin.place, what: 'The one that counts first.' }],
        }),
    ];
}

function covers({ when: wide }: Condition, { when: narrow }: Condition): boolean {
    if (wide.kind === 'light') return narrow.kind === 'light' && wide.light.value === narrow.light.value;
    if (narrow.kind !== wide.kind || narrow.side !== wide.side) return false;
    return wide.side === 'over' ? wide.bound.si <= narrow.bound.si : wide.bound.si >= narrow.bound.si;
}

/** A spread that says of itself that it is for another sea or wind than it is called for in. */
function unlikeItsPlan({ when, plan, origin }: Condition): Finding[] {
    if (when.kind === 'light') return [];
    const own = when.kind === 'sea' ? plan.value.sea : plan.value.wind?.speed;
    const fits = !own || (when.side === 'over' ? own.si >= when.bound.si : own.si <= when.bound.si);
    if (fits) return [];
    return [
        problem('value', origin.place, {
            severity: 'warning',
            what: `\`${shorten(plan.value.name)}\` is for a ${when.kind} of ${written(own)}, and is fished here when it is ${when.side} ${written(when.bound)}.`,
            why: 'All that was computed of it holds for what it says itself.',
            remedy: `Give that spread the ${when.kind} that it is for, or fish another one.`,
            related: [{ at: own.origin.place, what: `The ${when.kind} that it is for.` }],
        }),
    ];
}

function unknownLight({ when }: Condition): Finding[] {
    if (when.kind !== 'light' || (lights as readonly string[]).includes(when.light.value)) return [];
    const { value, origin } = when.light;
    const near = nearest(value, lights);
    return [
        problem('value', origin.place, {
            what: `There is no light called \`${shorten(value)}\`.`,
            why: 'Nobody could tell when it holds.',
            remedy: `It may be ${lights.slice(0, -1).join(', ')} or ${lights.at(-1)}.`,
            fixes: near ? [instead(origin.place, near)] : [],
        }),
    ];
}

function beyondTheEnd({ hours, until }: Day): Finding[] {
    const last = hours.at(-1);
    if (!until || !last || until.value > last.from.value) return [];
    return [
        problem('value', until.origin.place, {
            what: `The day ends at ${printTime(until.value)}, and a spread goes out at ${hourWords(last)}.`,
            why: 'One of the two is not what was meant.',
            remedy: 'Mend one of the two times.',
            related: [{ at: last.origin.place, what: 'The last spread.' }],
        }),
    ];
}

/** Lines out of their time cost a team its fish. */
function outsideTheEvent({ hours, until }: Day): Finding[] {
    const [first] = hours;
    const event = first?.plan.value.event?.value;
    const [opens, closes] = [secondsOf(event?.linesIn?.value), secondsOf(event?.linesOut?.value)];
    return [
        ...(first && opens !== undefined && first.from.value < opens
            ? [
                  problem('value', first.from.origin.place, {
                      severity: 'warning',
                      what: `Lines go in at ${hourWords(first)}, and ${event!.title} opens at ${event!.linesIn!.value}.`,
                      why: 'A fish that is hooked before does not count.',
                      remedy: 'Begin the day at lines in.',
                      related: [{ at: event!.linesIn!.origin.place, what: 'The event’s time.' }],
                  }),
              ]
            : []),
        ...(until && closes !== undefined && until.value > closes
            ? [
                  problem('value', until.origin.place, {
                      severity: 'warning',
                      what: `The day ends at ${printTime(until.value)}, and ${event!.title} has lines out at ${event!.linesOut!.value}.`,
                      why: 'A fish that is hooked later does not count.',
                      remedy: 'End the day at lines out.',
                      related: [{ at: event!.linesOut!.origin.place, what: 'The event’s time.' }],
                  }),
              ]
            : []),
    ];
}

function otherBoats({ hours, conditions }: Day): Finding[] {
    const all = [...hours, ...conditions].filter(({ plan }) => plan.value.boat);
    const boatOf = ({ plan }: { plan: Said<Spread> }) => plan.value.boat!.value;
    const [first] = all;
    const other = all.find((each) => boatOf(each).name !== boatOf(first!).name);
    if (!first || !other) return [];
    return [
        problem('value', other.plan.origin.place, {
            what: `\`${shorten(other.plan.value.name)}\` is for ${boatOf(other).title}, and the day began on ${boatOf(first).title}.`,
            why: 'A day is fished from one boat.',
            remedy: 'Write another day for the other one.',
            related: [{ at: first.plan.origin.place, what: 'The first spread with a boat.' }],
        }),
    ];
}

function written({ si, quantity }: Measure): string {
    return quantity ? printQuantity(quantity) : String(si);
}
