import type { Log, LogEvent } from '../../plan/model.ts';
import type { Said } from '../../plan/origin.ts';
import { planAt } from '../../plan/plan-at.ts';
import { DAY } from '../../units/time.ts';
import { type Report, rule } from '../rule.ts';
import { written } from '../standing.ts';

/** A fish in the log that the event's hours do not count. */
export const event = rule({
    name: 'event',
    group: 'written rules',
    standing: written("The event's own hours, as the team wrote them down."),
    severity: 'warning',
    summary: "A bite, a hook-up or a fish is logged outside the event's hours.",
    settings: {},

    checkFile({ logs }, _, report) {
        for (const log of logs) for (const event of log.events) outsideItsHours(log, event, report);
    },
});

/** A fish before lines may be in, or that took a lure after they must be out. */
function outsideItsHours(log: Log, event: LogEvent, report: Report): void {
    const plan = planAt(log, event);
    const rules = plan?.event?.value;
    const what = event.outcome.map(({ value }) => toldAs.get(value)).find((told) => told !== undefined);
    if (!rules || !what) return;
    const [first, last] = [secondsOf(rules.linesIn), secondsOf(rules.linesOut)];
    // An event that goes on through the night ends on the next day.
    const end = last !== undefined && first !== undefined && last < first ? last + DAY : last;
    const { value: time } = event.time;
    const early = first !== undefined && time < first;
    // A fish that was on before lines out may be landed after it.
    const late = end !== undefined && time > end && what !== LANDED;
    const limit = early ? rules.linesIn : late ? rules.linesOut : undefined;
    if (!limit) return;
    report({
        at: event.time,
        what: `${what} is logged at ${clock(time)}, and ${rules.title} has lines ${early ? 'in' : 'out'} at ${limit.value}.`,
        why: 'A fish from outside the hours does not count.',
        remedy: 'Put the time right, or leave it out of what you call in.',
        related: [{ at: limit, what: 'The hour is written here.' }],
        judgedBy: plan,
    });
}

const LANDED = 'A fish';

/** What counts, as a sentence begins; the first of them is what the time is of. */
const toldAs: ReadonlyMap<string, string> = new Map([
    ['bite', 'A bite'],
    ['hooked', 'A hook-up'],
    ['landed', LANDED],
    ['released', LANDED],
    ['tagged', LANDED],
]);

function secondsOf(said: Said<string> | undefined): number | undefined {
    const [hours, minutes] = said?.value.split(':').map(Number) ?? [];
    return hours === undefined || minutes === undefined ? undefined : hours * 3600 + minutes * 60;
}

function clock(seconds: number): string {
    const minutes = Math.floor((seconds % DAY) / 60);
    return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');
}
