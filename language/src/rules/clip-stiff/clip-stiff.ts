import { exceeds } from '../../units/compare.ts';
import { heldLure } from '../clips.ts';
import { replaceValue } from '../fixes.ts';
import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { practice } from '../standing.ts';

/** A clip that asks a fish for more than the method wants, or than the reel would. */
export const clipStiff = rule({
    name: 'clip-stiff',
    group: 'drag and strike',
    standing: practice(
        'A clip is set below hooked drag, or below what the method wants a fish to feel. Its setting is compared as it is: the way of the line to it, which makes a fish pull a little more, is left out.',
    ),
    severity: 'warning',
    summary: 'A clip asks a fish for more than the method wants, or for more than hooked drag.',
    settings: {},
    givesWayTo: ['clip-false-release'],

    check(analysis, _, report) {
        for (const figures of fishedLines(analysis)) {
            const held = heldLure(figures, analysis.plan);
            if (!held?.limit) continue;
            const { line } = figures;
            const { towing, limit } = held;
            const { setting } = held.clip;
            if (!exceeds(setting.si, limit.most.si)) continue;
            const [asked, most] = sayApart.load(setting, limit.most);
            const byMethod = limit.by === 'method';
            const torn = towing > limit.most.si;
            const method = line.method?.value.title;
            report({
                at: setting,
                what: `The clip at ${line.position.name} opens at ${asked}, and ${byMethod ? `${method} wants ${most} at most` : `hooked drag is ${most}`}.`,
                why: byMethod
                    ? 'Until it opens the fish feels the boat, and lets go.'
                    : 'Until it opens the fish is on the clip and not on the reel, and the line may slip through.',
                remedy: torn
                    ? `Below ${say.load(towing, limit.most)} the lure itself opens it: tow one that pulls less, or ${byMethod ? 'let the method ask for more' : 'fish more drag'}.`
                    : `Set it to ${most} or less.`,
                related: [
                    {
                        at: limit.most,
                        what: byMethod ? `${method} says it here.` : 'Hooked drag is said here.',
                    },
                ],
                fixes: [
                    torn
                        ? undefined
                        : replaceValue((text) => `Set the clip to ${text}`, setting, limit.most.si, 'down'),
                ],
                positions: [line],
            });
        }
    },
});
