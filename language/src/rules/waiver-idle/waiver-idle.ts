import type { Spread } from '../../plan/model.ts';
import { removeProperty } from '../fixes.ts';
import { rule, type WaiverOutcome } from '../rule.ts';
import { housekeeping } from '../standing.ts';

/** A waiver that does nothing: it has run out, it gives no reason, or there is nothing left to waive. */
export const waiverIdle = rule({
    name: 'waiver-idle',
    group: 'the file itself',
    standing: housekeeping,
    severity: 'warning',
    summary: 'A waiver does nothing: it has run out, gives no reason, or waives nothing.',
    settings: {},

    checkWaivers(plan, outcomes, report) {
        for (const outcome of outcomes) {
            // The plan that it came from has its own say on it.
            if (!outcome.idle || outcome.waiver.inherited) continue;
            const { waiver } = outcome;
            report({
                at: waiver,
                ...explain(outcome, plan),
                fixes: [removeProperty(`Take out the waiver of ${waiver.rule.value}`, waiver.origin)],
                positions: waiver.positions.map(({ value }) => ({ position: value })),
                unnecessary: outcome.idle === 'nothing to waive',
            });
        }
    },
});

function explain({ waiver, idle }: WaiverOutcome, plan: Spread) {
    const name = waiver.rule.value;
    switch (idle) {
        case 'run out':
            return {
                what: `The waiver of ${name} ran out on ${waiver.until?.value}, and this plan is for ${plan.date?.value}.`,
                why: 'What was agreed for one day may not hold on the next.',
                remedy: 'Mend what it waived, or agree on a new date.',
            };
        case 'no reason':
            return {
                what: `The waiver of ${name} gives no reason, so it waives nothing.`,
                why: 'Whoever reads the plan next has to know why the crew decided so.',
                remedy: `Add a reason: because "tested on the morning".`,
            };
        default:
            return {
                what: `The waiver of ${name} waives nothing.`,
                why: 'Left in, it would hide the next fault of its kind.',
                remedy: 'Take it out.',
            };
    }
}
