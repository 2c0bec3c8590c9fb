import { hooksOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { practice } from '../standing.ts';

/** Natural bait on a hook that fish swallow. */
export const deepHooking = rule({
    name: 'deep-hooking',
    group: 'hooks',
    standing: practice(
        'On natural bait 46 % of sailfish were hooked deep with J hooks and 2 % with circle hooks (Prince, Ortiz and Venizelos, American Fisheries Society Symposium 30, 2002).',
    ),
    severity: 'hint',
    summary: 'Natural bait is fished on a hook that fish swallow: released, they may not live.',
    settings: {},
    givesWayTo: ['hook-kind'],

    check(analysis, _, report) {
        for (const { line } of tackledLines(analysis)) {
            const hooks = line.bait && hooksOf(line);
            const kind = hooks?.kind;
            if (!kind || kind.value.includes('circle')) continue;
            report({
                at: [kind, hooks, line.bait!],
                what: `${line.bait!.value.title} is on a ${kind.value} hook, and fish swallow bait.`,
                why: 'About half of the sailfish in one study were hooked deep that way, and one in fifty on circle hooks.',
                remedy: 'Rig a circle hook, and let it set itself.',
                positions: [line],
            });
        }
    },
});
