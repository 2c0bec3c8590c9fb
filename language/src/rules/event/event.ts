import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Log, LogEvent, SpreadLine } from '../../plan/model.ts';
import type { Said } from '../../plan/origin.ts';
import { planAt } from '../../plan/plan-at.ts';
import { hooksOf } from '../gear.ts';
import { fishedLines } from '../neighbours.ts';
import { type Report, rule } from '../rule.ts';
import { counted } from '../say.ts';
import { written } from '../standing.ts';

/** What the team wrote down of the event's own rules, and no pack has. */
export const event = rule({
    name: 'event',
    group: 'written rules',
    standing: written("The event's own rules, as the team wrote them down."),
    severity: 'error',
    summary:
        "The plan breaks one of the event's own rules: lines for each angler, hooks on teasers, its hours.",
    settings: {},

    check(analysis, _, report) {
        linesPerAngler(analysis, report);
        hooksOnTeasers(analysis, report);
    },

    checkFile({ logs }, _, report) {
        for (const log of logs) for (const event of log.events) outsideItsHours(log, event, report);
    },
});

/** A bite before lines may be in, or after they must be out. */
function outsideItsHours(log: Log, event: LogEvent, report: Report): void {
    const plan = planAt(log, event);
    const rules = plan?.event?.value;
    if (!rules || !event.outcome.some(({ value }) => value === 'bite')) return;
    const [first, last] = [secondsOf(rules.linesIn), secondsOf(rules.linesOut)];
    // An event that goes on through the night ends on the next day.
    const end = last !== undefined && first !== undefined && last < first ? last + DAY : last;
    const { value: time } = event.time;
    const early = first !== undefined && time < first;
    const limit = early ? rules.linesIn : end !== undefined && time > end ? rules.linesOut : undefined;
    if (!limit) return;
    report({
        at: event.time,
        severity: 'warning',
        what: `A bite is logged at ${clock(time)}, and ${rules.title} has lines ${early ? 'in' : 'out'} at ${limit.value}.`,
        why: 'A fish from outside the hours does not count.',
        remedy: 'Put the time right, or leave it out of what you call in.',
        related: [{ at: limit, what: 'The hour is written here.' }],
        judgedBy: plan,
    });
}

const DAY = 86_400;

function secondsOf(said: Said<string> | undefined): number | undefined {
    const [hours, minutes] = said?.value.split(':').map(Number) ?? [];
    return hours === undefined || minutes === undefined ? undefined : hours * 3600 + minutes * 60;
}

function clock(seconds: number): string {
    const minutes = Math.floor((seconds % DAY) / 60);
    return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');
}

function linesPerAngler(analysis: AnalysedPlan, report: Report): void {
    const rules = analysis.plan.event?.value;
    const most = rules?.mostLinesPerAngler;
    if (!most) return;
    const byAngler = new Map<string, SpreadLine[]>();
    for (const { line } of fishedLines(analysis)) {
        if (!line.angler) continue;
        byAngler.set(line.angler.value, [...(byAngler.get(line.angler.value) ?? []), line]);
    }
    for (const [angler, lines] of byAngler) {
        const over = lines[most.si];
        if (!over?.angler) continue;
        report({
            at: over.angler,
            what: `${angler} has ${counted(lines.length, 'line')}, and ${rules.title} allows ${most.si} for each angler.`,
            why: 'A fish on the line too many does not count.',
            remedy: 'Give the line to another angler, or leave it out.',
            related: [{ at: most, what: 'The rule is written here.' }],
            positions: lines,
        });
    }
}

function hooksOnTeasers({ plan, lines }: AnalysedPlan, report: Report): void {
    const hookless = plan.event?.value.teasersHookless;
    if (!hookless?.value) return;
    for (const { line } of lines) {
        const hooks = line.role === 'teaser' ? hooksOf(line) : undefined;
        if (!hooks || hooks.count.si === 0) continue;
        report({
            at: hooks,
            what: `${line.teaser?.value.title ?? line.position.name} carries hooks, and ${plan.event!.value.title} wants teasers hookless.`,
            why: 'A hooked teaser counts as one more line.',
            remedy: 'Take the hooks off.',
            related: [{ at: hookless, what: 'The rule is written here.' }],
            positions: [line],
        });
    }
}
