import { whereTowed } from '../gear.ts';
import { fishedLines, known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { count } from '../settings.ts';
import { physics } from '../standing.ts';

/** A line that pulls its lure up with many times the lure's weight. */
export const lift = rule({
    name: 'lift',
    group: 'layout',
    standing: physics(
        'The upward part of the pull at the lure, over its weight in air.',
        'How many times its weight a lure bears; the pull where nobody put the lure on a scale.',
    ),
    severity: 'hint',
    summary: 'The upward pull on a lure is many times its weight: it will spend too long in the air.',
    settings: { most: count('3', ['0.5', '50'], 'Most upward pull, in times the weight of the lure.') },
    givesWayTo: ['entry-angle'],

    check(analysis, { most }, report) {
        for (const { line, rest } of fishedLines(analysis)) {
            const settled = known(rest);
            const lure = line.lure?.value;
            if (!settled || !lure || lure.kind?.value === 'diver' || settled.lift <= most) continue;
            // A figure more where one would say that it is as much as is borne.
            const times = settled.lift.toFixed(settled.lift.toFixed(1) === most.toFixed(1) ? 2 : 1);
            report({
                at: whereTowed(line),
                what: `${lure.title} at ${line.position.name} is pulled up with ${times} times its weight, and ${say.count(most)} times is much.`,
                why: 'It will spend too long in the air, where no fish takes it.',
                remedy: 'Lower its clip, let it back, or tow a heavier lure here.',
                related: [{ at: lure.weight, what: `What ${lure.title} weighs is said here.` }],
                positions: [line],
            });
        }
    },
});
