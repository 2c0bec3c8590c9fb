import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { counted } from '../say.ts';
import { written } from '../standing.ts';

/** More lines in the water than the event allows. */
export const lineCount = rule({
    name: 'line-count',
    group: 'written rules',
    standing: written("The event's own rules."),
    severity: 'error',
    summary: 'More lines are fished than the event allows.',
    settings: {},

    check(analysis, _, report) {
        const event = analysis.plan.event;
        const most = event?.value.mostLines;
        const fished = fishedLines(analysis).map(({ line }) => line);
        if (!event || !most || fished.length <= most.si) return;
        report({
            at: event,
            what: `This plan fishes ${counted(fished.length, 'line')}, and ${event.value.title} allows ${most.si}.`,
            why: 'A fish on any of them does not count.',
            remedy: `Leave out ${counted(fished.length - most.si, 'line')}.`,
            related: [{ at: most, what: 'The rule is written here.' }],
            positions: fished,
        });
    },
});
