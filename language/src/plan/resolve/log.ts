import type { AstNode } from 'langium';
import type {
    Event,
    EventPosition,
    EventWeight,
    Log as LogNode,
    Measured,
    Outcome,
    Referred,
    Stated,
    Using,
} from '../../../grammar/generated/ast.ts';
import { parseDate } from '../../units/date.ts';
import { pastMidnight, secondsOf } from '../../units/time.ts';
import type { Log, LogEvent, Spread } from '../model.ts';
import type { Said } from '../origin.ts';
import { placeOf } from '../place.ts';
import type { Gathered } from './gather.ts';
import { readPosition } from './position.ts';
import { readSpread } from './spread.ts';
import { type Slot, type Table, tabulate } from './table.ts';
import { measureOf, originOf, referred, said, text } from './values.ts';

/** A log, its times counted on from its own midnight: an event after midnight is later, not earlier. */
export function readLog(node: LogNode, gathered: Gathered): Log | undefined {
    if (typeof parseDate(node.date ?? '') !== 'string') return undefined;
    const table: Table = tabulate(node.entries, 'spread', node.date);
    const whole: Slot = { node, voice: 'spread', definition: node.date, inherited: false };
    const zone = text(table, 'zone');
    const slots = (table.get('at event') ?? []).filter(
        (slot) => secondsOf((slot.node as Event).time) !== undefined,
    );
    const times = pastMidnight(slots.map((slot) => secondsOf((slot.node as Event).time)!));
    return {
        date: said(whole, node.date, 'date')!,
        title: node.title ?? node.date,
        ...(zone && { zone }),
        using: (table.get('using') ?? []).flatMap((slot) => readUsing(slot, gathered)),
        events: slots.map((slot, index) => readEvent(slot, times[index]!)),
        origin: { ...originOf(whole), property: placeOf(node) },
    };
}

function readUsing(slot: Slot, gathered: Gathered): Log['using'][number][] {
    const node = slot.node as Using;
    const definition = node.of?.ref;
    if (definition?.kind !== 'spread') return [];
    const plan = referred<Spread>(slot, node, readSpread(definition, gathered))!;
    const from = said(slot, node.time === undefined ? undefined : secondsOf(node.time), 'time');
    return [{ plan, ...(from && { from }) }];
}

function readEvent(slot: Slot, seconds: number): LogEvent {
    const details = (slot.node as Event).details;
    const at = (detail: AstNode): Slot => ({ ...slot, node: detail });
    const stated = (...words: string[]): Said<string> | undefined => {
        const found = details.find(
            (each) => each.$type === 'Stated' && words.includes((each as Stated).word),
        );
        return found && said(at(found), (found as Stated).text, 'text');
    };
    const number = (word: string, reading: Parameters<typeof measureOf>[1]) => {
        const found = details.find((each) => each.$type === 'Measured' && (each as Measured).word === word);
        return found && measureOf((found as Measured).amount, reading, at(found));
    };
    const name = (word: string | undefined): Said<string> | undefined => {
        const found = details.find((each) => each.$type === 'Referred' && (each as Referred).word === word);
        return found && referred(at(found), found, (found as Referred).of?.$refText);
    };
    const outcomes = details.filter((each) => each.$type === 'Outcome') as Outcome[];
    const where = details.find((each) => each.$type === 'EventPosition') as EventPosition | undefined;
    const position = readPosition(where?.position);
    const weighed = details.find((each) => each.$type === 'EventWeight') as EventWeight | undefined;
    return Object.fromEntries(
        Object.entries({
            time: said(slot, seconds, 'time')!,
            outcome: outcomes.map(
                (each) => said(at(each), each.how ? `${each.word}: ${each.how}` : each.word, 'word')!,
            ),
            position: position && said(at(where!), position, 'position'),
            lure: name('lure'),
            species: name('species') ?? name(undefined),
            weight: weighed && measureOf(weighed.amount, 'mass', at(weighed)),
            angler: stated('by'),
            fought: number('fought', 'time'),
            speed: number('speed', 'speed'),
            sea: number('sea', 'length'),
            water: number('water', 'temperature'),
            colour: stated('colour', 'color'),
            spot: stated('place'),
            note: stated('note'),
            origin: originOf(slot),
        }).filter(([, value]) => value !== undefined),
    ) as unknown as LogEvent;
}
