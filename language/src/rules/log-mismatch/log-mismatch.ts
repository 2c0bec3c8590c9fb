import type { Spread } from '../../plan/model.ts';
import { planAt } from '../../plan/plan-at.ts';
import { rule } from '../rule.ts';
import { listed } from '../say.ts';
import { housekeeping } from '../standing.ts';

/** A log event at a position, or on a lure, that the plan of the hour does not have. */
export const logMismatch = rule({
    name: 'log-mismatch',
    group: 'the file itself',
    standing: housekeeping,
    severity: 'warning',
    summary: 'A log event names a position or a lure that its plan does not have.',
    settings: {},

    checkFile({ logs }, _, report) {
        for (const log of logs) {
            for (const event of log.events) {
                const plan = planAt(log, event);
                if (!plan) continue;
                const { position, lure } = event;
                const names = plan.lines.map((line) => line.position.name);
                if (position && !names.includes(position.value.name)) {
                    report({
                        at: position,
                        what: `${plan.title} has no ${position.value.name}.`,
                        why: 'Figures by position count it for a line that was not fished.',
                        remedy: `Name one of its positions: ${listed(names, 'or')}.`,
                        related: [{ at: plan, what: 'The plan in use at that hour.' }],
                        judgedBy: plan,
                    });
                }
                if (lure && !luresIn(plan).includes(lure.value)) {
                    report({
                        at: lure,
                        severity: 'hint',
                        what: `${plan.title} carries no lure ${lure.value}.`,
                        why: 'Figures by lure count it for one that was not fished.',
                        remedy: 'Name it as a spare in the plan, if it was aboard.',
                        related: [{ at: plan, what: 'The plan in use at that hour.' }],
                        judgedBy: plan,
                    });
                }
            }
        }
    },
});

function luresIn({ lines, spares }: Spread): readonly string[] {
    const towed = lines.flatMap(({ lure, teaser }) => lure?.value.name ?? teaser?.value.name ?? []);
    return [...towed, ...spares.map(({ of }) => of.value.name)];
}
