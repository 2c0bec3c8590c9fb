import { haveOneHold } from '../clips.ts';
import { fishedPairs, known, nearFirst } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { length } from '../settings.ts';
import { practice } from '../standing.ts';

/** Neighbours closer side by side than the gap. */
export const lateralGap = rule({
    name: 'lateral-gap',
    group: 'layout',
    standing: practice('Two metres or more between neighbours is usual; `stagger` judges the pair better.'),
    severity: 'off',
    summary: 'Neighbours run closer side by side at the water than the gap.',
    settings: {
        gap: length(
            '2 m',
            ['0.1 m', '50 m'],
            'Least distance between neighbours, side by side at the water.',
        ),
    },
    givesWayTo: ['stagger'],

    check(analysis, { gap }, report) {
        for (const pair of fishedPairs(analysis)) {
            const distance = known(pair.lateralGap);
            if (!pair.neighbours || distance === undefined || distance >= gap) continue;
            if (haveOneHold(pair.a.line, pair.b.line, analysis.plan)) continue;
            const [near, far] = nearFirst(pair);
            report({
                at: far.line,
                what: `${far.line.position.name} runs ${say.length(distance)} beside ${near.line.position.name}, and the least gap is ${say.length(gap)}.`,
                why: 'Lures side by side find each other in a gust or a turn.',
                remedy: 'Tow one of the two from further out, or stagger them more.',
                related: [{ at: near.line, what: `${near.line.position.name} runs here.` }],
                positions: [far.line, near.line],
            });
        }
    },
});
