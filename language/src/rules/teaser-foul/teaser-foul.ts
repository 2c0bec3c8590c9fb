import type { AnalysedPlan, LineFigures, PairFigures } from '../../plan/figures.ts';
import { cureInWords } from '../cures.ts';
import { known, swayOf } from '../neighbours.ts';
import { type Report, rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
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
    summary: 'A teaser or its line touches a lure or its line, or two teasers run in one place.',
    settings: {},

    check(analysis, _, report) {
        for (const pair of analysis.pairs) {
            oneOnTheOther(pair, analysis, report);
            const two = teaserFirst(pair);
            const [clearance, margin] = [known(pair.clearance), known(pair.swayMargin)];
            if (!two || clearance === undefined || margin === undefined || clearance >= analysis.contact)
                continue;
            const [{ line: teaser }, { line: fished }] = two;
            const like = teaser.back?.kind === 'distance' ? teaser.back.distance : undefined;
            const [touch, asked] = sayApart.angle(Math.max(margin, 0), swayOf(pair));
            report({
                at: teaser.back ?? teaser,
                what: `${teaser.position.name} and ${fished.position.name} touch ${margin > 0 ? `at ${touch} of sway` : 'without any sway'}, and this plan allows for ${asked}.`,
                why: 'A hook in a teaser takes two lines out at once, and the teaser pulls harder.',
                remedy: cureInWords(pair.cure, like),
                related: [{ at: fished, what: `${fished.position.name} runs here.` }],
                positions: [teaser, fished],
            });
        }
    },
});

/** Two teasers in one place cost no lure, only themselves. */
function oneOnTheOther({ a, b, ...pair }: PairFigures, { contact }: AnalysedPlan, report: Report): void {
    const [stagger, gap] = [known(pair.stagger), known(pair.lateralGap)];
    if (a.line.role !== 'teaser' || b.line.role !== 'teaser' || stagger === undefined || gap === undefined)
        return;
    if (stagger >= contact || gap >= contact) return;
    const back = b.line.back?.kind === 'distance' ? b.line.back.distance : known(b.astern)!;
    report({
        at: b.line.back ?? b.line,
        severity: 'hint',
        what: `${b.line.position.name} runs in the same place as ${a.line.position.name}, ${say.length(back)} back.`,
        why: 'They wind round each other, and a fish looks at one heap.',
        remedy: 'Let one of them back, or tow it from elsewhere.',
        related: [{ at: a.line, what: `${a.line.position.name} runs here.` }],
        positions: [b.line, a.line],
    });
}

function teaserFirst({ a, b }: PairFigures): readonly [LineFigures, LineFigures] | undefined {
    if (a.line.role === 'teaser' && b.line.role === 'fished') return [a, b];
    return b.line.role === 'teaser' && a.line.role === 'fished' ? [b, a] : undefined;
}
