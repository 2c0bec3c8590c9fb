import type {
    Condition as ConditionNode,
    Definition,
    Hour as HourNode,
    Timed,
} from '../../../grammar/generated/ast.ts';
import { DAY, secondsOf } from '../../units/time.ts';
import type { Condition, Day, Hour, Spread } from '../model.ts';
import type { Said } from '../origin.ts';
import { startingWith } from './boat.ts';
import { definedBy } from './defined.ts';
import { type Gathered, gather } from './gather.ts';
import { readSpread } from './spread.ts';
import type { Slot } from './table.ts';
import { date, measureOf, one, originOf, referred, said, texts } from './values.ts';

/** A day's plans are the very ones that were read where they stand. */
export function readDay(definition: Definition, gathered: Gathered): Day {
    const table = gather(definition, gathered);
    const planOf = (slot: Slot): Said<Spread> | undefined => {
        const fished = (slot.node as HourNode | ConditionNode).of?.ref;
        if (fished?.kind !== 'spread') return undefined;
        return referred(slot, slot.node, readSpread(fished, gathered));
    };
    const written = [...startingWith(table, 'from ')].flatMap((slot): Hour[] => {
        const from = timeOf(slot);
        const plan = planOf(slot);
        return from && plan ? [{ from, plan, origin: originOf(slot) }] : [];
    });
    // Night runs on: what is earlier than the first hour is meant after midnight.
    const first = written[0]?.from.value ?? 0;
    const counted = (time: Said<number>) => ({ ...time, value: first + ((time.value - first + DAY) % DAY) });
    const on = date(table, 'date');
    const end = one(table, 'until');
    const until = end && timeOf(end);
    return {
        ...definedBy(definition),
        kind: 'day',
        ...(on && { date: on }),
        hours: written
            .map((hour) => ({ ...hour, from: counted(hour.from) }))
            .sort((a, b) => a.from.value - b.from.value),
        conditions: [...startingWith(table, 'when ')].flatMap((slot): Condition[] => {
            const when = whenOf(slot);
            const plan = planOf(slot);
            return when && plan ? [{ when, plan, origin: originOf(slot) }] : [];
        }),
        ...(until && { until: counted(until) }),
        notes: texts(table, 'note'),
    };
}

function timeOf(slot: Slot): Said<number> | undefined {
    return said(slot, secondsOf((slot.node as HourNode | Timed).time), 'time');
}

function whenOf(slot: Slot): Condition['when'] | undefined {
    const { wind, side, height, strength, choice } = slot.node as ConditionNode;
    if (side) {
        const bound = measureOf(height ?? strength, wind ? 'speed' : 'length', slot);
        return bound && { kind: wind ? 'wind' : 'sea', side, bound };
    }
    const light = said(slot, choice, 'choice');
    return light && { kind: 'light', light };
}
