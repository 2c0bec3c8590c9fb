import { DAY, secondsOf } from '../../units/time.ts';
import type { AnalysedPlan } from '../figures.ts';
import type { Log, LogEvent, Spread, SpreadLine } from '../model.ts';
import { planAt } from '../plan-at.ts';

/** What became of a fish, as far as it went. */
export interface Went {
    readonly raised: boolean;
    readonly bit: boolean;
    readonly hooked: boolean;
    /** Released, tagged or landed. */
    readonly boated: boolean;
    readonly released: boolean;
    readonly landed: boolean;
    readonly lost: boolean;
}

/** An event of a log with what the plan of that hour says of it. */
export interface Bite {
    readonly log: Log;
    readonly event: LogEvent;
    readonly went: Went;
    readonly plan?: Spread;
    readonly line?: SpreadLine;
    /** What was bitten: as the event says, else as the plan does. By its name. */
    readonly lure?: string;
    readonly method?: string;
    /** Of the lure, at the plan's speed. */
    readonly wave?: number;
    /** Then, or else as planned, m/s. */
    readonly speed?: number;
    readonly target?: string;
}

/** How long each position of each plan was fished. */
export interface Fished {
    readonly log: Log;
    readonly plan: Spread;
    /** s; absent where nobody said until when: see `hoursOf`. */
    readonly seconds?: number;
}

export interface Season {
    readonly logs: readonly Log[];
    readonly bites: readonly Bite[];
    readonly fished: readonly Fished[];
}

/**
 * Everything that these logs tell, in the order of the days.
 *
 * @param analyse  tells what follows from a plan: which wave a line was on
 */
export function seasonOf(logs: readonly Log[], analyse: (plan: Spread) => AnalysedPlan): Season {
    const sorted = [...logs].sort((a, b) =>
        a.date.value < b.date.value ? -1 : a.date.value > b.date.value ? 1 : 0,
    );
    const analysed = new Map<string, AnalysedPlan>();
    const analysisOf = (plan: Spread): AnalysedPlan => {
        const key = `${plan.origin.place.uri} ${plan.name}`;
        const found = analysed.get(key) ?? analyse(plan);
        analysed.set(key, found);
        return found;
    };
    return {
        logs: sorted,
        bites: sorted.flatMap((log) => log.events.map((event) => biteOf(log, event, analysisOf))),
        fished: sorted.flatMap(hoursOf),
    };
}

function biteOf(log: Log, event: LogEvent, analysisOf: (plan: Spread) => AnalysedPlan): Bite {
    const plan = planAt(log, event);
    const name = event.position?.value.name;
    const figures = plan && name !== undefined ? lineAt(analysisOf(plan), name) : undefined;
    const line = figures?.line;
    const lure = event.lure?.value ?? (line?.lure ?? line?.teaser ?? line?.bait)?.value.name;
    const method = (line?.method ?? plan?.method)?.value.name;
    const speed = event.speed?.si ?? plan?.speed?.si;
    const target = plan?.target?.value.name;
    return {
        log,
        event,
        went: wentOf(event),
        ...(plan && { plan }),
        ...(line && { line }),
        ...(lure !== undefined && { lure }),
        ...(method !== undefined && { method }),
        ...(figures?.wave.known && { wave: figures.wave.value.wave }),
        ...(speed !== undefined && { speed }),
        ...(target !== undefined && { target }),
    };
}

function lineAt({ lines }: AnalysedPlan, name: string) {
    return lines.find(({ line }) => line.position.name === name);
}

/** One word of an event brings along all that must have come before it: what was released had been hooked. */
function wentOf({ outcome }: LogEvent): Went {
    const has = (...words: string[]) => outcome.some(({ value }) => words.includes(value.split(':', 1)[0]!));
    const [released, landed, lost] = [has('released', 'tagged'), has('landed'), has('lost')];
    const boated = released || landed;
    const hooked = boated || has('hooked');
    const bit = hooked || lost || has('bite');
    return { raised: bit || has('raise'), bit, hooked, boated, released, landed, lost };
}

/**
 * The hours of a day by plan: from when one was taken up to the next; the last one until the event's lines are out. A
 * plan whose beginning or end nobody said has no hours: its bites would otherwise count for no time at all.
 */
function hoursOf(log: Log): Fished[] {
    const begun = [...log.using].sort((a, b) => (a.from?.value ?? 0) - (b.from?.value ?? 0));
    return begun.map(({ plan: { value: plan }, from }, index): Fished => {
        const until = begun[index + 1]?.from?.value ?? linesOut(plan, from?.value);
        const seconds = from && until !== undefined && until > from.value ? until - from.value : undefined;
        return { log, plan, ...(seconds !== undefined && { seconds }) };
    });
}

/** When the event has lines out, s from the log's midnight; an event through the night ends on the next day. */
function linesOut(plan: Spread, from = 0): number | undefined {
    const time = secondsOf(plan.event?.value.linesOut?.value);
    if (time === undefined) return undefined;
    return time < from ? time + DAY : time;
}
