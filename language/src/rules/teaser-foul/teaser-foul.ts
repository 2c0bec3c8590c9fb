import type { LineFigures, PairFigures } from '../../plan/figures.ts';
import { cureInWords } from '../cures.ts';
import { known, swayOf } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { physics } from '../standing.ts';

/** A teaser that a lure's line touches while the boat runs straight. */
export const teaserFoul = rule({
    name: 'teaser-foul',
    group: 'layout',
    standing: physics(
        'Least distance of the fans that two swaying lines sweep, each turned about its tow point.',
        'The sway, 4 deg by default, and the distance at which lines count as touching.',
    ),
    severity: 'warning',
    summary: 'A teaser or its line touches a lure or its line, at the sway that the plan allows.',
    settings: {},

    check(analysis, _, report) {
        for (const pair of analysis.pairs) {
            const two = teaserFirst(pair);
            const [clearance, margin] = [known(pair.clearance), known(pair.swayMargin)];
            if (!two || clearance === undefined || margin === undefined || clearance >= analysis.contact)
                continue;
            const [{ line: teaser }, { line: fished }] = two;
            const like = teaser.back?.kind === 'distance' ? teaser.back.distance : undefined;
            report({
                at: teaser.back ?? teaser,
                what: `${teaser.position.name} and ${fished.position.name} touch ${margin > 0 ? `at ${say.angle(margin)} of sway` : 'without any sway'}, and this plan allows for ${say.angle(swayOf(pair))}.`,
                why: 'A hook in a teaser takes two lines out at once, and the teaser pulls harder.',
                remedy: cureInWords(pair.cure, like),
                related: [{ at: fished, what: `${fished.position.name} runs here.` }],
                positions: [teaser, fished],
            });
        }
    },
});

function teaserFirst({ a, b }: PairFigures): readonly [LineFigures, LineFigures] | undefined {
    if (a.line.role === 'teaser' && b.line.role === 'fished') return [a, b];
    return b.line.role === 'teaser' && a.line.role === 'fished' ? [b, a] : undefined;
}
