import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { counted } from '../say.ts';
import { count } from '../settings.ts';
import { practice } from '../standing.ts';

/** More lines than the hands on deck can clear. */
export const crew = rule({
    name: 'crew',
    group: 'crew',
    standing: practice('Two lines a hand is an estimate: what a hand clears before the fish turns.'),
    severity: 'warning',
    summary: 'More lines are fished than the hands on deck can clear.',
    settings: { lines: count('2', 'Lines that one hand clears after a strike.') },

    check(analysis, { lines }, report) {
        const hands = analysis.plan.crew;
        const fished = fishedLines(analysis).map(({ line }) => line);
        if (!hands || fished.length <= hands.si * lines) return;
        const most = Math.floor(hands.si * lines);
        report({
            at: hands,
            what: `${counted(fished.length, 'line')} for ${counted(hands.si, 'hand')} besides the helm, who can clear ${most}.`,
            why: 'A line left out when a fish is on is a tangle or a cut line.',
            remedy: `Leave out ${counted(fished.length - most, 'line')}, or take another hand.`,
            positions: fished,
        });
    },
});
