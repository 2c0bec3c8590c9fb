import type { PairFigures } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { haveOneHold } from '../clips.ts';
import { cureInWords } from '../cures.ts';
import { replaceValue } from '../fixes.ts';
import { fishedPairs, known, nearFirst, swayOf } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { sayApart } from '../say.ts';
import { angle } from '../settings.ts';
import { physics } from '../standing.ts';

/** Two lines touch at less sway than the plan allows, while the boat runs straight. */
export const stagger = rule({
    name: 'stagger',
    group: 'layout',
    standing: physics(
        'Least distance of the fans that two swaying lines sweep, each turned about its tow point.',
        'The sway itself, 4 deg by default, and the distance at which lines count as touching.',
    ),
    severity: 'warning',
    summary: 'Two lines touch at less sway than the plan allows, running straight.',
    givesWayTo: ['shotgun-inside'],
    settings: {
        sway: angle(
            { otherwise: "the lures' or the plan's own" },
            ['0.5 deg', '45 deg'],
            'Sway that every pair has to bear.',
        ),
    },

    check(analysis, { sway }, report) {
        for (const pair of fishedPairs(analysis)) {
            const [margin, clearance] = [known(pair.swayMargin), known(pair.clearance)];
            if (margin === undefined || clearance === undefined) continue;
            if (sway === undefined ? clearance >= analysis.contact : margin >= sway) continue;
            if (haveOneHold(pair.a.line, pair.b.line, analysis.plan)) continue;
            const [near, far] = nearFirst(pair).map(({ line }) => line) as [SpreadLine, SpreadLine];
            const [touch, asked] = sayApart.angle(Math.max(margin, 0), sway ?? swayOf(pair));
            // What would clear them was computed for the sway that the plan itself allows.
            const cure = sway === undefined ? pair.cure : undefined;
            report({
                at: [far.back ?? far, near.back ?? near],
                what: `${far.position.name} and ${near.position.name} touch ${margin > 0 ? `at ${touch} of sway` : 'without any sway'}, and this plan allows for ${asked}.`,
                why: 'Lures wander on their own action, in waves and in gusts.',
                remedy: cureInWords(cure, distanceOf(far)),
                related: [{ at: near, what: `${near.position.name} runs here.` }],
                fixes: [fixFor(cure, distanceOf(far))],
                positions: [far, near],
            });
        }
    },
});

function fixFor(cure: PairFigures['cure'], distance: Measure | undefined) {
    if (!cure?.stagger || !distance) return undefined;
    const title = (text: string) => `Let the longer line out to ${text}`;
    return replaceValue(title, distance, distance.si + cure.stagger, 'up');
}

function distanceOf({ back }: SpreadLine): Measure | undefined {
    return back?.kind === 'distance' ? back.distance : undefined;
}
