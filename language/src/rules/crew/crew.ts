import type { Spread } from '../../plan/model.ts';
import { fishedLines } from '../neighbours.ts';
import { type Report, rule } from '../rule.ts';
import { counted, listed } from '../say.ts';
import { count } from '../settings.ts';
import { practice } from '../standing.ts';

/** More lines than the hands on deck can clear, or a helm with its hands full. */
export const crew = rule({
    name: 'crew',
    group: 'crew',
    standing: practice('Two lines a hand is an estimate: what a hand clears before the fish turns.'),
    severity: 'warning',
    summary:
        'More lines are fished than the hands on deck can clear, or the one at the helm has another job.',
    settings: { lines: count('2', 'Lines that one hand clears after a strike.') },

    check(analysis, { lines }, report) {
        steeringAndFishing(analysis.plan, report);
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

/** Whoever steers cannot fight a fish, nor take a leader. */
function steeringAndFishing({ lines, roles, crew: hands }: Spread, report: Report): void {
    const helm = roles.find(({ role }) => role === 'helm');
    // One who is out alone knows it.
    if (!helm || hands?.si === 0) return;
    const busy = [
        ...lines
            .filter(({ role, angler }) => role === 'fished' && angler?.value === helm.name.value)
            .map(({ position, angler }) => ({ at: angler!, does: `is the angler at ${position.name}` })),
        ...roles
            .filter(({ role, name }) => DECK_ROLES.has(role) && name.value === helm.name.value)
            .map(({ role, name }) => ({ at: name, does: `takes the ${role}` })),
    ];
    if (busy.length === 0) return;
    report({
        at: [helm.name, ...busy.map(({ at }) => at)],
        what: `${helm.name.value} has the helm and ${listed(busy.map(({ does }) => does))}.`,
        why: 'Somebody has to steer and keep a lookout while a fish is fought.',
        remedy: 'Give one of the two to somebody else.',
        related: busy.map(({ at, does }) => ({ at, what: `${helm.name.value} ${does}.` })),
        positions: lines.filter(({ role, angler }) => role === 'fished' && angler?.value === helm.name.value),
    });
}

const DECK_ROLES: ReadonlySet<string> = new Set(['leader', 'gaff']);
