import type { AstNode } from 'langium';
import { CompletionItemKind } from 'vscode-languageserver';
import type { Definition, Event, Log, Using } from '../../../grammar/generated/ast.ts';
import { Gathered, gather, gatherPart } from '../../plan/resolve/gather.ts';
import { parseZone, printTime, secondsOf } from '../../units/time.ts';
import type { Caret } from './caret.ts';
import type { Offer } from './item.ts';

/** The plan that was fished when an event happened; all of the log where its hour says nothing. */
export function plansFished(caret: Caret): Definition[] {
    const using = entriesOf(caret).filter((entry): entry is Using => entry.$type === 'Using');
    const spreads = using.flatMap(({ of, time }) =>
        of?.ref?.kind === 'spread' ? [{ plan: of.ref, from: secondsOf(time) ?? 0 }] : [],
    );
    const hour = secondsOf(/^at\s+(\S+)/.exec(caret.entry)?.[1]);
    const begun = spreads.filter(({ from }) => hour === undefined || from <= hour);
    // Before the first was taken up, or past midnight, nothing is told apart.
    if (hour === undefined || begun.length === 0) return spreads.map(({ plan }) => plan);
    return [begun.reduce((last, next) => (next.from >= last.from ? next : last)).plan];
}

/** What a line of a plan is called, and the name of what it tows. */
export interface Towed {
    readonly position: string;
    readonly towed: string | undefined;
}

export function towedBy(plan: Definition): Towed[] {
    const gathered = new Gathered();
    return [...gather(plan, gathered)].flatMap(([key, [slot]]) => {
        if (!key.startsWith('position ')) return [];
        const named = ['lure', 'teaser', 'bait'].map(
            (word) =>
                gatherPart(slot?.table?.get(word)?.[0], gathered)?.definition as
                    | { name?: string }
                    | undefined,
        );
        return [{ position: key.slice('position '.length), towed: named.find((each) => each?.name)?.name }];
    });
}

/** What an event names most likely, the likeliest first: lures of its plan with where they run, the plan's target. */
export function likelyNames(word: string, caret: Caret): Map<string, string> {
    const plans = plansFished(caret);
    if (word === 'lure')
        return new Map(
            plans
                .flatMap(towedBy)
                .flatMap(({ position, towed }) => (towed ? [[towed, position] as const] : [])),
        );
    const targets = plans.flatMap((plan) => {
        const slot = gather(plan, new Gathered()).get('target')?.[0];
        const name = (slot?.node as { of?: { $refText?: string } } | undefined)?.of?.$refText;
        return name ? [[name, 'the plan’s target'] as const] : [];
    });
    const seen = eventsOf(caret).flatMap(({ details }) =>
        details.flatMap((detail) => {
            const name =
                detail.$type === 'Referred' && detail.word !== 'lure' ? detail.of?.$refText : undefined;
            return name ? [[name, 'named above'] as const] : [];
        }),
    );
    return new Map([...seen, ...targets]);
}

/** The time that it is by the log's own clock, and that of the event above. */
export function timeOffers(caret: Caret, now = new Date()): Offer[] {
    if (caret.start !== caret.offset) return [];
    const zone = entriesOf(caret).find((entry) => (entry as { word?: string }).word === 'zone') as
        | { text?: string }
        | undefined;
    const east = parseZone(zone?.text?.replace(/^"|"$/g, '') ?? '');
    const minutes = typeof east === 'number' ? east : -now.getTimezoneOffset();
    const label = printTime(Math.floor(now.getTime() / 60_000 + minutes) * 60);
    const above = eventsOf(caret).filter(
        ({ $cstNode, time }) => time && ($cstNode?.offset ?? 0) < caret.start,
    );
    const before = above.at(-1)?.time;
    // What happened comes next; where a plan begins, nothing does.
    const goesOn = /^at\b/.test(caret.entry);
    const offer = (label: string, detail: string, rank: number): Offer => ({
        label,
        kind: CompletionItemKind.Value,
        detail,
        rank,
        ...(goesOn && { text: `${label} `, goesOn }),
    });
    return [
        offer(label, typeof east === 'number' ? 'Now, in the log’s zone' : 'Now', 10),
        ...(before && before !== label ? [offer(before, 'As the event above', 11)] : []),
    ];
}

function entriesOf({ blocks }: Caret): readonly AstNode[] {
    const log = blocks[0]?.node as Log | undefined;
    return log?.$type === 'Log' ? (log.entries ?? []) : [];
}

function eventsOf(caret: Caret): Event[] {
    return entriesOf(caret).filter((entry): entry is Event => entry.$type === 'Event');
}
