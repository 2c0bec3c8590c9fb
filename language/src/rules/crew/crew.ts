import type { Spread } from '../../plan/model.ts';
import { fishedLines } from '../neighbours.ts';
import { isSamePerson } from '../people.ts';
import { type Report, rule } from '../rule.ts';
import { counted, listed } from '../say.ts';
import { count } from '../settings.ts';
import { practice } from '../standing.ts';

/** More lines than the hands on deck can clear, or somebody with two jobs at once. */
export const crew = rule({
    name: 'crew',
    group: 'crew',
    standing: practice('Two lines a hand is an estimate: what a hand clears before the fish turns.'),
    severity: 'warning',
    summary: 'More lines are fished than the hands on deck can clear, or one of them has two jobs at once.',
    settings: { lines: count('2', ['0.5', '10'], 'Lines that one hand clears after a strike.') },

    check(analysis, { lines }, report) {
        steeringAndFishing(analysis.plan, report);
        fightingAndLeading(analysis.plan, report);
        const hands = analysis.plan.crew;
        const fished = fishedLines(analysis).map(({ line }) => line);
        if (!hands) return;
        // Whoever is out alone leaves the helm to clear lines.
        const alone = hands.si === 0;
        const most = Math.floor((alone ? 1 : hands.si) * lines);
        if (fished.length <= most) return;
        const deck = alone ? 'one who is out alone' : `${counted(hands.si, 'hand')} besides the helm`;
        report({
            at: hands,
            what: `${counted(fished.length, 'line')} for ${deck}, who can clear ${most}.`,
            why: 'A line left out when a fish is on is a tangle or a cut line.',
            remedy: `Leave out ${counted(fished.length - most, 'line')}, or take another hand.`,
            positions: fished,
        });
    },
});

/** Whoever fights every fish cannot take its leader or gaff it as well, where there is another hand. */
function fightingAndLeading({ lines, roles, crew: hands }: Spread, report: Report): void {
    if (!hands || hands.si < 2) return;
    const fished = lines.filter(({ role }) => role === 'fished');
    const [first] = fished;
    for (const { role, name } of roles.filter(({ role }) => DECK_ROLES.has(role))) {
        if (!first?.angler || !fished.every(({ angler }) => isSamePerson(angler, name))) continue;
        const where = listed(fished.map(({ position }) => position.name));
        report({
            at: name,
            severity: 'hint',
            what: `${name.value} is the angler at ${where} and takes the ${role}.`,
            why: 'Whoever holds the rod has no hand free when the fish is beside the boat.',
            remedy: `Give the ${role} to somebody else: there are ${counted(hands.si, 'hand')}.`,
            related: [{ at: first.angler, what: `The angler at ${first.position.name} is said here.` }],
            positions: fished,
        });
    }
}

/** Whoever steers cannot fight a fish, nor take a leader. */
function steeringAndFishing({ lines, roles, crew: hands }: Spread, report: Report): void {
    const helm = roles.find(({ role }) => role === 'helm');
    // One who is out alone knows it.
    if (!helm || hands?.si === 0) return;
    const busy = [
        ...lines
            .filter(({ role, angler }) => role === 'fished' && isSamePerson(angler, helm.name))
            .map(({ position, angler }) => ({ at: angler!, does: `is the angler at ${position.name}` })),
        ...roles
            .filter(({ role, name }) => DECK_ROLES.has(role) && isSamePerson(name, helm.name))
            .map(({ role, name }) => ({ at: name, does: `takes the ${role}` })),
    ];
    if (busy.length === 0) return;
    report({
        at: [helm.name, ...busy.map(({ at }) => at)],
        what: `${helm.name.value} has the helm and ${listed(busy.map(({ does }) => does))}.`,
        why: 'Somebody has to steer and keep a lookout while a fish is fought.',
        remedy: 'Give one of the two to somebody else.',
        related: busy.map(({ at, does }) => ({ at, what: `${helm.name.value} ${does}.` })),
        positions: lines.filter(({ role, angler }) => role === 'fished' && isSamePerson(angler, helm.name)),
    });
}

const DECK_ROLES: ReadonlySet<string> = new Set(['leader', 'gaff']);
