import { known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { physics } from '../standing.ts';

/** A turn that is tighter than a boat can be held to at this speed. */
export const turnTight = rule({
    name: 'turn-tight',
    group: 'layout',
    standing: physics(
        'A boat in a circle presses sideways with its weight times speed² / (g · radius).',
        'That no boat with lines out is held to more than half its weight.',
    ),
    severity: 'warning',
    summary: 'The turn that the plan allows is tighter than a boat can be held to at its speed.',
    settings: {},

    check({ plan, tightestHeld }, _, report) {
        const { turn, speed } = plan;
        const held = tightestHeld && known(tightestHeld);
        if (!turn || !speed || held === undefined || turn.si >= held) return;
        const [asked, least] = sayApart.length(turn, held);
        report({
            at: turn,
            what: `A turn of ${asked} at ${say.speed(speed)} is tighter than any boat holds: ${least} is the least.`,
            why: 'Tighter, it would press sideways with more than half its own weight, so nothing is said of the lines in such a turn.',
            remedy: 'Turn wider, slow down, or look for a slip in either number.',
            related: [{ at: speed, what: 'The speed is said here.' }],
        });
    },
});
