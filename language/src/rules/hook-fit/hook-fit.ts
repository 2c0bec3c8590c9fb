import { gearOf, hooksOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { share } from '../settings.ts';
import { practice } from '../standing.ts';

/** A hook that the head shields, or whose point is where the lure cannot keel on it. */
export const hookFit = rule({
    name: 'hook-fit',
    group: 'hooks',
    standing: practice('A gap as wide as the head, and a single point up so that the hook is the keel.'),
    severity: 'warning',
    summary: "A hook's gap is smaller than the head, or a single point is not up.",
    settings: { gap: share('100 %', ['10 %', '300 %'], "Least gap, of the head's diameter.") },

    check(analysis, { gap: least }, report) {
        for (const { line } of tackledLines(analysis)) {
            const [lure, hooks] = [line.lure?.value, hooksOf(line)];
            if (!lure || !hooks) continue;
            // On a plug the hooks hang below the head, which keeps nothing away.
            const isSkirted = gearOf(line) === 'skirted lure';
            if (isSkirted && lure.head && hooks.gap && hooks.gap.si < lure.head.si * least) {
                const [gap, head] = sayApart.length(hooks.gap, lure.head);
                report({
                    at: hooks.gap,
                    what: `The hook in ${lure.title} has a gap of ${gap}, and the head is ${head} across${least === 1 ? '' : `, of which ${say.share(least)} is asked for`}.`,
                    why: 'The head keeps the point away from the jaw.',
                    remedy: 'Rig a larger hook.',
                    related: [{ at: lure.head, what: `The head of ${lure.title}.` }],
                    positions: [line],
                });
            }
            if (hooks.count.si === 1 && hooks.point && hooks.point.value !== 'up') {
                report({
                    at: hooks.point,
                    severity: 'hint',
                    what: `The single hook in ${lure.title} stands with its point ${hooks.point.value === 'side' ? 'to the side' : hooks.point.value}.`,
                    why: 'Point up, the bend is the keel and the lure runs upright.',
                    remedy: 'Turn it so that the point is up.',
                    positions: [line],
                });
            }
        }
    },
});
