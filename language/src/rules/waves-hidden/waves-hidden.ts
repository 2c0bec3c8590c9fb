import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { physics } from '../standing.ts';

/** A sea that hides the boat's own waves by an estimate, so that no lure is judged on them. */
export const wavesHidden = rule({
    name: 'waves-hidden',
    group: 'waves and speed',
    standing: physics(
        'A sea higher than half the waves of the boat hides them.',
        "The height of the boat's waves, from her length and beam, and the half.",
    ),
    severity: 'hint',
    summary: "By an estimate the sea hides the boat's own waves, so no lure is judged on them.",
    settings: {},

    check(analysis, _, report) {
        const { sea, boat } = analysis.plan;
        const shown = analysis.waves.known ? analysis.waves.value.shownUpTo : undefined;
        const lures = fishedLines(analysis).filter(({ line, astern }) => line.lure && astern.known);
        if (!sea || !boat || shown === undefined || lures.length === 0) return;
        const { title, origin } = boat.value;
        report({
            at: sea,
            what: `A sea of ${say.length(sea)} hides the waves of ${title}, which show in a sea up to about ${say.length(shown, sea)}.`,
            why: 'That is an estimate, and on it nothing was said of lures off their wave faces.',
            remedy: `If your crew still reads them, say so on the boat: \`waves up to ${say.length(sea)}\`.`,
            related: [{ at: origin, what: `${title} is described here.` }],
        });
    },
});
