import type { PairFigures } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import { replaceValue } from '../fixes.ts';
import { fishedPairs, known, nearFirst } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { capital, listed, say } from '../say.ts';
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
    settings: { sway: angle({ otherwise: "the plan's own sway" }, 'Sway that every pair has to bear.') },

    check(analysis, { sway }, report) {
        const asked = sway ?? analysis.swayAsked.value;
        for (const pair of fishedPairs(analysis)) {
            const margin = known(pair.swayMargin);
            if (margin === undefined || margin >= asked) continue;
            const [near, far] = nearFirst(pair);
            const back = distanceOf(far.line.back) ?? distanceOf(near.line.back);
            report({
                at: far.line.back ?? far.line,
                what: `${capital(far.line.position.name)} and ${near.line.position.name} touch at ${say.angle(margin)} of sway, and this plan allows for ${say.angle(asked)}.`,
                why: 'Lures wander on their own action, in waves and in gusts.',
                remedy: remedyFor(pair, asked === analysis.swayAsked.value, back),
                related: [{ at: near.line, what: `${capital(near.line.position.name)} runs here.` }],
                fixes: [fixFor(pair, distanceOf(far.line.back))],
                positions: [far.line, near.line],
            });
        }
    },
});

function remedyFor({ cure }: PairFigures, applies: boolean, like: Measure | undefined): string {
    const ways = applies
        ? [
              cure?.stagger && `${say.length(cure.stagger, like)} more stagger`,
              cure?.height && `${say.length(cure.height, like)} more height on the longer line`,
              cure?.width && `${say.length(cure.width, like)} more width`,
          ].filter((way) => typeof way === 'string')
        : [];
    if (ways.length === 0) return 'Give the two more stagger, height or width.';
    return `${capital(listed(ways, 'or'))} would clear them.`;
}

function fixFor(pair: PairFigures, distance: Measure | undefined) {
    const more = pair.cure?.stagger;
    if (!more || !distance) return undefined;
    return replaceValue((text) => `Move the longer line to ${text}`, distance, distance.si + more, 'up');
}

function distanceOf(back: PairFigures['a']['line']['back']): Measure | undefined {
    return back?.kind === 'distance' ? back.distance : undefined;
}
