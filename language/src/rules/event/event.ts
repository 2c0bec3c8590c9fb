import type { AnalysedPlan } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
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
    summary: "The plan breaks one of the event's own rules: lines for each angler, or hooks on teasers.",
    settings: {},

    check(analysis, _, report) {
        linesPerAngler(analysis, report);
        hooksOnTeasers(analysis, report);
    },
});

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
